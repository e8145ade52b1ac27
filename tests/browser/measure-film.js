// Measures how long Chromium takes to render one minute of video at 1920×1080 and 60 frames a
// second, and prints it beside the load of the machine: `cargo xtask measure --film`.

import { chromium } from '@playwright/test';
import { cpus, loadavg } from 'node:os';

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM_PATH,
  chromiumSandbox: false,
});
const page = await browser.newPage({ viewport: { width: 1280, height: 720 } });
await page.goto(process.env.BASE_URL);
await page.waitForFunction(() => document.documentElement.dataset.ready === 'true');
const press = async (key, times = 1) => {
  for (let i = 0; i < times; i += 1) await page.keyboard.press(key);
};

// A minute and a little of a turn, flown eight times as fast; then exactly a minute of it marked.
await press('ArrowRight', 3);
await press('+', 3);
await page.waitForFunction(() => Number(document.getElementById('readings').dataset.time) > 62);
await press(' ');
await press('Home');
await press('b');
await press('g');
await page.locator('#strips').focus();
await press('ArrowRight', 60);
await press('b');
await press('k');

const panel = page.locator('#film');
await panel.getByLabel('Size').selectOption('1920 × 1080');
await panel.getByLabel('Frames', { exact: true }).selectOption('60 a second');
for (const format of ['MP4', 'WebM']) {
  await panel.getByLabel('Format').selectOption(format);
  const [load] = loadavg();
  const start = performance.now();
  await panel.getByRole('button', { name: 'Make video' }).click();
  const all = (await page.locator('#film-progress').textContent()).match(/of (\d+)/)[1];
  const link = panel.getByRole('link', { name: `Save ${format}` });
  await link.waitFor({ timeout: 3_600_000 });
  const seconds = (performance.now() - start) / 1000;
  console.log(
    `${format}, 1920×1080, 60 a second: ${all} frames in ${seconds.toFixed(0)} s ` +
      `(${(all / seconds).toFixed(1)} a second); ${await link.textContent()}; ` +
      `load before ${load.toFixed(1)} on ${cpus().length} processors`,
  );
}
await browser.close();
