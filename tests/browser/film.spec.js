// Films: rendered, live, as a GIF and as stills; read back by ffprobe, which knows nothing of what
// made them.

import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import config from './playwright.config.js';
import { nothingToMend } from './axe.js';
import { expect, test } from './fixtures.js';
import { press, read, until } from './flying.js';
import { across, fitAThumb } from './fits.js';

const { launchOptions } = config.use;
test.use({
  viewport: { width: 1280, height: 720 },
  launchOptions: {
    ...launchOptions,
    // A microphone that beeps, and nobody to be asked for it.
    args: [
      ...launchOptions.args,
      '--use-fake-device-for-media-stream',
      '--use-fake-ui-for-media-stream',
    ],
  },
});

const panel = (page) => page.locator('#film');
const button = (page, name) => panel(page).getByRole('button', { name });

// What ffprobe reads of a file: its format, and its streams with every frame counted.
function probe(path) {
  const ask = ['-v', 'error', '-count_frames', '-show_streams', '-show_format', '-of', 'json'];
  const told = execFileSync(process.env.FFPROBE ?? 'ffprobe', [...ask, path], { encoding: 'utf8' });
  const { format, streams } = JSON.parse(told);
  const of = (kind) => streams.find((it) => it.codec_type === kind);
  return { seconds: Number(format.duration), video: of('video'), audio: of('audio') };
}

// Turns right for about two seconds and pauses; gives the seconds flown.
async function turn(page) {
  await press(page, 'ArrowRight', 4);
  await until(page, ({ time }) => time > 2);
  await press(page, ' ');
  await expect(page.locator('#doing')).toHaveText('Paused');
  return (await read(page)).time;
}

async function save(page, link) {
  const [download] = await Promise.all([page.waitForEvent('download'), link.click()]);
  return { name: download.suggestedFilename(), path: await download.path() };
}

const saved = (page, words) => panel(page).getByRole('link', { name: words });

for (const [format, ending, codec] of [['MP4', 'mp4', 'h264'], ['WebM', 'webm', 'vp9']]) {
  test(`a ${format} has every frame, the size and the length of the flight`, async ({ open, page }) => {
    await open();
    const time = await turn(page);
    await press(page, 'k');
    await expect(page.locator('#film-formats')).toHaveText(/^MP4 for slides \(H\.264\), WebM \(VP9\)\./);
    await panel(page).getByLabel('Size').selectOption('1280 × 720');
    await panel(page).getByLabel('Format').selectOption(format);
    await panel(page).getByLabel('Title').fill('A right turn');
    await button(page, 'Make video').click();
    const link = saved(page, `Save ${format}`);
    const progress = page.locator('#film-progress');
    const all = Number((await progress.textContent()).match(/of (\d+)/)[1]);
    // The flight ends on a step, 1/200 s, at or before the time that is read.
    expect(Math.abs(all - 30 * time)).toBeLessThan(0.7);
    await expect(link).toBeVisible({ timeout: 40_000 });

    const film = await save(page, link);
    expect(film.name).toBe(`dipwise-film.${ending}`);
    const { seconds, video, audio } = probe(film.path);
    expect([video.codec_name, video.width, video.height]).toEqual([codec, 1280, 720]);
    expect(Number(video.nb_read_frames)).toBe(all);
    expect(video.r_frame_rate).toBe('30/1');
    expect(Math.abs(seconds - all / 30)).toBeLessThan(0.002);
    expect(audio).toBeUndefined();

    const chapters = readFileSync((await save(page, saved(page, 'Save chapters'))).path, 'utf8');
    expect(chapters).toMatch(
      /^WEBVTT\n\n00:00:0\d\.\d{3} --> 00:00:0\d\.\d{3}\nright turn\n/,
    );
  });
}

test('what is rendered can be cancelled, and nothing is left of it', async ({ open, page }) => {
  await open();
  await turn(page);
  await press(page, 'k');
  await panel(page).getByLabel('Size').selectOption('3840 × 2160');
  await panel(page).getByLabel('Frames', { exact: true }).selectOption('60 a second');
  await panel(page).getByLabel('Speed').selectOption('A quarter');
  await expect(page.locator('#film-formats')).not.toBeEmpty();
  await button(page, 'Make video').click();
  await expect(page.locator('#film-progress')).toHaveText(/^Frame [1-9]\d* of \d{3}/);
  await button(page, 'Cancel').click();
  await expect(panel(page).getByText('Cancelled.')).toBeVisible();
  await expect(button(page, 'Make video')).toBeEnabled();
  await expect(page.locator('#film-done')).toHaveCount(0);
});

test('a GIF has ten frames a second; stills show the moment', async ({ open, page }) => {
  await open();
  const time = await turn(page);
  await press(page, 'k');
  await button(page, 'GIF').click();
  await expect(saved(page, 'Save GIF')).toBeVisible({ timeout: 40_000 });
  const gif = probe((await save(page, saved(page, 'Save GIF'))).path);
  expect([gif.video.codec_name, gif.video.width, gif.video.height]).toEqual(['gif', 960, 540]);
  expect(Math.abs(Number(gif.video.nb_read_frames) - 10 * time)).toBeLessThan(0.6);

  const { figures, difference } = await read(page);
  const still = async (name) => {
    const [file] = await Promise.all([page.waitForEvent('download'), button(page, name).click()]);
    return file.path();
  };
  const svg = readFileSync(await still('SVG'), 'utf8');
  for (const figure of [figures.heading, figures.compass]) {
    expect(svg).toContain(`>${figure.replace('°', '')}<`);
  }
  expect(svg).toContain(`>${difference}<`);
  const png = probe(await still('PNG')).video;
  expect([png.codec_name, png.width, png.height]).toEqual(['png', 3840, 2160]);
});

test('a live recording has picture and sound, and its length', async ({ open, page }) => {
  await open();
  await press(page, 'k');
  await panel(page).getByLabel('Size').selectOption('1280 × 720');
  await button(page, 'Record').click();
  const level = panel(page).getByRole('meter', { name: 'Microphone level' });
  // The browser's microphone for tests only beeps now and then, so every frame is looked at.
  await expect(level).toBeVisible();
  await page.waitForFunction((it) => it.value > 0.01, await level.elementHandle());
  // The page is flown meanwhile.
  await press(page, 'ArrowRight', 3);
  await until(page, ({ bank }) => bank > 10);
  await button(page, 'Pause').click();
  await expect(panel(page).getByText('Recording paused')).toBeVisible();
  await button(page, 'Go on').click();
  await page.waitForTimeout(500);
  await button(page, 'Stop').click();
  const link = saved(page, 'Save');
  await expect(link).toBeVisible();
  const { seconds, video, audio } = probe((await save(page, link)).path);
  expect([video.width, video.height]).toEqual([1280, 720]);
  expect(audio.codec_name).toBe('opus');
  expect(Number(video.nb_read_frames)).toBeGreaterThan(3);
  expect(seconds).toBeGreaterThan(0.5);
});

test('a narration goes under the video', async ({ open, page }) => {
  await open();
  await turn(page);
  await press(page, 'k');
  await button(page, 'Narrate first').click();
  // The flight is replayed while one speaks.
  await expect(page.locator('#doing')).toHaveText(/Replay/);
  await until(page, ({ time }) => time > 1);
  await button(page, 'Stop').click();
  await expect(panel(page).getByText(/^Narration of 0:0/)).toBeVisible();
  await panel(page).getByLabel('Size').selectOption('1280 × 720');
  await button(page, 'Make video').click();
  await expect(saved(page, 'Save MP4')).toBeVisible({ timeout: 40_000 });
  const { seconds, video, audio } = probe((await save(page, saved(page, 'Save MP4'))).path);
  expect(audio.codec_name).toMatch(/aac|opus/);
  expect(Number(audio.nb_read_frames)).toBeGreaterThan(10);
  expect(Math.abs(seconds - Number(video.nb_read_frames) / 30)).toBeLessThan(0.1);
});

test('by keyboard alone, and axe finds nothing to mend', async ({ open, page }) => {
  await open();
  await turn(page);
  await press(page, 'k');
  await expect(panel(page)).toBeFocused();
  await expect(page.locator('#film-formats')).not.toBeEmpty();
  await nothingToMend(page);
  const focused = () => page.evaluate(() => document.activeElement.textContent.trim());
  for (let i = 0; i < 14 && (await focused()) !== 'GIF'; i += 1) await press(page, 'Tab');
  expect(await focused()).toBe('GIF');
  await press(page, 'Enter');
  await expect(saved(page, 'Save GIF')).toBeVisible({ timeout: 40_000 });
  await nothingToMend(page);
  await press(page, 'Escape');
  await expect(panel(page)).toBeHidden();
  const over = await page.evaluate(() => document.documentElement.scrollHeight - innerHeight);
  expect(over).toBe(0);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('its parts fit a thumb, and what is flown is seen while it is recorded', async ({ open, page }) => {
    await open();
    await press(page, 'k');
    // The key goes on to the program that has films, which asks the browser for its formats.
    await expect(page.locator('#film-formats')).not.toBeEmpty();
    await fitAThumb(panel(page).locator(':is(button, select, input:not([type=checkbox]), .film-check)'), 5);
    expect(await across(page)).toBe(0);
    await button(page, 'Record').tap();
    await expect(panel(page).getByText('Recording')).toBeVisible();
    await expect(page.locator('#card')).toBeInViewport({ ratio: 0.9 });
    await button(page, 'Stop').tap();
    await expect(saved(page, 'Save')).toBeVisible();
  });
});
