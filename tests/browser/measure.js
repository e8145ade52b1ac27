// Measures the served page in Chromium and prints the figures: `cargo xtask measure`.

import { chromium } from '@playwright/test';

const address = process.env.BASE_URL;
// Each frame takes the time from the start of the page's own callback to the next callback of
// the same frame: its script with all that it set off, without layout and paint.
const watchFrames = () => {
  const ask = window.requestAnimationFrame.bind(window);
  let started = 0;
  window.frameTimes = [];
  window.frameStarts = [];
  window.requestAnimationFrame = (callback) =>
    ask((now) => {
      started = performance.now();
      window.frameStarts.push(started);
      callback(now);
      // Asked for after the page's own next callback, so it comes after it.
      ask(ended);
    });
  const ended = () => {
    if (started > 0) window.frameTimes.push(performance.now() - started);
    started = 0;
  };
};

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM_PATH,
  chromiumSandbox: false,
});
const page = await browser.newPage({ viewport: { width: 1920, height: 1080 } });
await page.addInitScript(watchFrames);
await page.goto(address);
await page.waitForFunction(() => document.documentElement.dataset.ready === 'true');

const speed = await page.evaluate(async () => {
  const script = [...document.querySelectorAll('link[rel=modulepreload], script')]
    .map((element) => element.href || element.src)
    .find((url) => /\/web-[^/]*\.js$/.test(url));
  const { fly_for } = await import(script);
  fly_for(60);
  const seconds = 1200;
  const start = performance.now();
  fly_for(seconds);
  return seconds / ((performance.now() - start) / 1000);
});
console.log(`simulation in the browser: ${speed.toFixed(0)} seconds of flight a second`);

for (const [what, key] of [['card and rose', null], ['with the reasons', 'w']]) {
  if (key) await page.keyboard.press(key);
  for (let i = 0; i < 3; i += 1) await page.keyboard.press('ArrowRight');
  await page.waitForTimeout(2000);
  await page.evaluate(() => {
    window.frameTimes.length = 0;
    window.frameStarts.length = 0;
  });
  await page.waitForTimeout(10_000);
  const { times, starts } = await page.evaluate(() => ({
    times: window.frameTimes,
    starts: window.frameStarts,
  }));
  const sorted = times.toSorted((a, b) => a - b);
  const at = (share) => sorted[Math.floor(share * (sorted.length - 1))].toFixed(2);
  const rate = (starts.length - 1) / ((starts.at(-1) - starts[0]) / 1000);
  console.log(
    `${what}, 1920×1080, in a turn: script of a frame ${at(0.5)} ms median, ` +
      `${at(0.95)} ms 95th percentile; ${rate.toFixed(1)} frames a second`,
  );
}
await browser.close();
