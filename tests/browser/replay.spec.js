// Replaying what was flown, over and over where a stretch is marked, and reading it off.

import { readFile } from 'node:fs/promises';
import { nothingToMend } from './axe.js';
import { expect, test } from './fixtures.js';
import { begin, hurry, press, read, rightOf, until } from './flying.js';
import { across, fitAThumb } from './fits.js';

const strips = (page) => page.getByRole('slider', { name: 'Time of flight' });
const button = (page, name) => page.getByRole('button', { name });
const doing = (page) => page.locator('#doing');
const told = (page) => page.locator('p[role=status].unseen');

// Flies a right turn through north at eight times real time, and pauses after twenty seconds.
async function turn(page) {
  await begin(page, { latitude: 52, heading: 330 });
  await page.evaluate(() => document.activeElement.blur());
  await press(page, 'g');
  await hurry(page);
  await press(page, 'ArrowRight', 3);
  await until(page, ({ time }) => time > 20);
  await press(page, ' ');
  await expect(doing(page)).toHaveText('Paused');
  return read(page);
}

test('a replay runs from an earlier moment to the end, pauses by key, and flies nothing', async ({
  open,
  page,
}) => {
  await open();
  const end = await turn(page);
  await press(page, 'Home');
  await press(page, '-', 2);
  await press(page, 'm');
  await expect(doing(page)).toHaveText('Replay, 2×');
  // The controls do nothing but say so.
  await press(page, 'ArrowLeft', 5);
  await expect(told(page)).toContainText('This moment is past');
  const on = await until(page, ({ time }) => time > 1);
  expect(rightOf(on.heading, 330)).toBeGreaterThanOrEqual(0);
  await press(page, ' ');
  await expect(doing(page)).toHaveText('Looking back');
  const paused = await read(page);
  await page.waitForTimeout(200);
  expect(await read(page)).toEqual(paused);
  // What a moment is in the replay, it is when it is looked at.
  await press(page, ' ');
  await expect(doing(page)).toHaveText('Replay, 2×');
  await press(page, '+', 2);
  await expect(doing(page)).toHaveText('Paused');
  expect(await read(page)).toEqual(end);
  // At the end the space bar flies on.
  await press(page, ' ');
  await until(page, ({ time }) => time > end.time);
});

test('buttons replay and pause, and the desk says what its button does', async ({ open, page }) => {
  await open();
  const end = await turn(page);
  const desk = page.locator('#pause');
  await expect(desk).toHaveText('Fly on');
  await press(page, 'Home');
  await expect(desk).toHaveText('Replay');
  await press(page, '-', 5);
  await page.locator('.time-tools').getByRole('button', { name: /^Replay/ }).click();
  await expect(doing(page)).toHaveText('Replay, ¼×');
  await expect(desk).toHaveText('Pause');
  await until(page, ({ time }) => time > 0.1);
  await page.locator('.time-tools').getByRole('button', { name: /^Pause/ }).click();
  await expect(doing(page)).toHaveText('Looking back');
  await button(page, /^End of the flight/).click();
  expect(await read(page)).toEqual(end);
});

test('a marked stretch is replayed over and over until it is cleared', async ({ open, page }) => {
  await open();
  await turn(page);
  await strips(page).focus();
  await press(page, 'Home');
  await press(page, 'ArrowRight', 5);
  await press(page, 'b');
  await expect(told(page)).toHaveText(/^Loop from 0:05\.0\. Go to another moment/);
  await press(page, 'ArrowRight', 2);
  await button(page, /^Loop to here/).click();
  await expect(told(page)).toHaveText(/^Loop from 0:05\.0 to 0:07\.0\. Replay plays it over/);
  await press(page, 'End');
  await press(page, 'm');
  // Fewer than twenty seconds are left of the flight; more than that is replayed.
  const seen = await page.evaluate(async () => {
    const times = [];
    const data = document.getElementById('readings').dataset;
    let again = 0;
    while (again < 12) {
      await new Promise((resolve) => requestAnimationFrame(resolve));
      const time = Number(data.time);
      if (time < times.at(-1)) again += 1;
      times.push(time);
    }
    return times;
  });
  expect(Math.min(...seen)).toBeGreaterThanOrEqual(5);
  expect(Math.max(...seen)).toBeLessThanOrEqual(7);
  await press(page, 'b');
  await expect(told(page)).toHaveText('Loop cleared.');
  await expect(doing(page)).toHaveText('Paused');
});

test('the pointer reads the flight off', async ({ open, page }) => {
  await open();
  await turn(page);
  const box = await strips(page).boundingBox();
  const readOff = page.locator('#read-off');
  await expect(readOff).toBeHidden();
  await page.mouse.move(box.x + 0.2 * box.width, box.y + box.height / 2);
  await expect(readOff).toHaveText(
    /^0:\d\d\.\d: heading \d{3}°, compass \d{3}°, (lags by \d+°|leads by \d+°|agrees)$/,
  );
  // It is what is read there.
  const said = await readOff.textContent();
  await page.mouse.down();
  await page.mouse.up();
  const { figures, difference } = await read(page);
  const headings = said.match(/\d{3}(?=°)/g).map(Number);
  expect(Math.abs(rightOf(headings[0], parseInt(figures.heading)))).toBeLessThanOrEqual(1);
  expect(Math.abs(rightOf(headings[1], parseInt(figures.compass)))).toBeLessThanOrEqual(1);
  expect(difference.split(' ')[0]).toBe(said.split(', ')[2].split(' ')[0]);
  // Beyond the end of the flight there is nothing to read.
  await page.mouse.move(box.x + 0.8 * box.width, box.y + box.height / 2);
  await expect(readOff).toBeHidden();
});

test('the chart is taken home as dots', async ({ open, page }) => {
  await open();
  await turn(page);
  const [file] = await Promise.all([page.waitForEvent('download'), button(page, /^PNG/).click()]);
  expect(file.suggestedFilename()).toBe('dipwise-flight.png');
  const bytes = await readFile(await file.path());
  expect(bytes.subarray(1, 4).toString()).toBe('PNG');
  // Its width and height stand in its header; it is not blank if it does not shrink to nothing.
  expect([bytes.readUInt32BE(16), bytes.readUInt32BE(20)]).toEqual([2360, 840]);
  expect(bytes.length).toBeGreaterThan(20_000);
});

test('axe finds nothing to mend with a loop marked and replayed', async ({ open, page }) => {
  await open();
  await turn(page);
  await press(page, 'Home');
  await press(page, 'b');
  await press(page, '.', 30);
  await press(page, 'b');
  await press(page, '-', 6);
  await press(page, 'm');
  await expect(doing(page)).toHaveText('Replay, ⅛×');
  await nothingToMend(page);
  expect(
    await page.evaluate(() => document.documentElement.scrollHeight - innerHeight),
  ).toBe(0);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('chart and tools stand together, and a loop is made by touch', async ({ open, page }) => {
    await open();
    await page.getByRole('button', { name: 'Timeline' }).tap();
    await button(page, '2× motion').tap();
    await button(page, '2× motion').tap();
    await until(page, ({ time }) => time > 6);
    const chart = await strips(page).boundingBox();
    const tools = await page.locator('.time-tools').boundingBox();
    expect(tools.y - (chart.y + chart.height)).toBeGreaterThanOrEqual(0);
    expect(tools.y - (chart.y + chart.height)).toBeLessThan(24);

    await strips(page).tap({ position: { x: 70, y: 60 } });
    await button(page, /^Loop from/).tap();
    await button(page, /^End of the flight/).tap();
    await button(page, /^Loop to/).tap();
    await page.locator('.time-tools').getByRole('button', { name: /^Replay/ }).tap();
    await expect(doing(page)).toHaveText(/^Replay/);
    await fitAThumb(page.locator('.time-tools button'));
    expect(await across(page)).toBe(0);
  });
});
