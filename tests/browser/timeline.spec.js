// The timeline: looking back at what was flown, flying on from there, and taking it home.

import { readFile } from 'node:fs/promises';
import { nothingToMend } from './axe.js';
import { expect, test } from './fixtures.js';
import { begin, hurry, press, read, rightOf, until } from './flying.js';
import { across, fitAThumb } from './fits.js';

const strips = (page) => page.getByRole('slider', { name: 'Time of flight' });
const button = (page, name) => page.getByRole('button', { name });

// Flies a right turn through north by the keyboard, levels out, and pauses.
async function turn(page) {
  await begin(page, { latitude: 52, heading: 330 });
  // The space bar is the flight's, not the button's.
  await page.evaluate(() => document.activeElement.blur());
  await press(page, 'g');
  await hurry(page);
  await press(page, 'ArrowRight', 3);
  await until(page, ({ heading }) => Math.abs(rightOf(heading, 40)) < 15);
  await press(page, 'l');
  await until(page, ({ bank }) => bank < 0.1);
  await press(page, ' ');
  await expect(page.locator('#doing')).toHaveText('Paused');
  return read(page);
}

test('the keyboard looks back, and figures follow', async ({ open, page }) => {
  await open();
  const end = await turn(page);
  await press(page, ',', 10);
  const back = await read(page);
  expect(back.doing).toBe('Looking back');
  expect(back.time).toBeCloseTo(end.time - 1, 1);
  await press(page, 'Home');
  const start = await read(page);
  expect(start).toMatchObject({ time: 0, heading: 330, figures: { heading: '330°', compass: '330°' } });
  await press(page, '.', 5);
  await expect.poll(async () => (await read(page)).time).toBeCloseTo(0.5, 2);
  // What is past cannot be steered.
  await press(page, 'ArrowRight', 4);
  await expect(page.locator('p[role=status].unseen')).toContainText('This moment is past');
  await press(page, 'End');
  expect(await read(page)).toEqual(end);
});

test('the strips are a slider for the keyboard', async ({ open, page }) => {
  await open();
  const end = await turn(page);
  await strips(page).focus();
  await press(page, 'Home');
  await expect(strips(page)).toHaveAttribute('aria-valuenow', '0.0');
  await press(page, 'ArrowRight', 3);
  await expect(strips(page)).toHaveAttribute('aria-valuenow', '3.0');
  await expect(strips(page)).toHaveAttribute(
    'aria-valuetext',
    /^0:03\.0: heading \d{3}°, compass \d{3}°, (lags by \d+°|agrees)$/,
  );
  await press(page, 'ArrowLeft');
  await expect.poll(async () => (await read(page)).time).toBe(2);
  await press(page, 'PageUp');
  expect((await read(page)).time).toBeGreaterThan(2);
  await press(page, 'End');
  await expect.poll(async () => (await read(page)).time).toBe(end.time);
  await expect(strips(page)).toHaveAccessibleDescription(/Greatest lag \d+° at 0:\d\d\.\d on heading/);
});

test('the pointer drags the playhead, and figures follow', async ({ open, page }) => {
  await open();
  await press(page, 'g');
  await hurry(page);
  await press(page, 'ArrowRight', 3);
  await until(page, ({ time }) => time > 20);
  const box = await strips(page).boundingBox();
  const y = box.y + box.height / 2;
  // While it is dragged, time stands still and goes with the pointer, also beyond the strips.
  await page.mouse.move(box.x + box.width / 4, y);
  await page.mouse.down();
  const quarter = await read(page);
  expect(quarter.doing).toBe('Looking back');
  await page.mouse.move(box.x + box.width / 6, y, { steps: 4 });
  const sixth = await read(page);
  expect(sixth.time).toBeLessThan(quarter.time);
  expect(rightOf(quarter.heading, sixth.heading)).toBeGreaterThan(0);
  await page.mouse.move(box.x - 20, y - 200);
  await expect.poll(async () => (await read(page)).time).toBe(0);
  await page.mouse.up();
  // Let go, it stays where it was left, and the keys fly.
  await page.mouse.move(box.x + box.width / 2, y);
  await expect.poll(async () => (await read(page)).time).toBe(0);
  await press(page, ' ');
  await until(page, ({ time }) => time > 20);
});

test('from the greatest lag another way, and back to the old flight', async ({ open, page }) => {
  await open();
  const end = await turn(page);
  await press(page, 'Home');
  const told = page.locator('p[role=status].unseen');
  await press(page, ']');
  await expect(told).toHaveText(/^A right turn begins\./);
  await press(page, ']');
  await expect(told).toHaveText(/^The greatest lag of the turn\. .* lags by \d+°\.$/);
  const lag = await read(page);
  expect(lag.difference).toMatch(/^lags by \d+°$/);

  await expect(button(page, /^Return to the old flight/)).toBeHidden();
  await press(page, 'f');
  await press(page, 'ArrowLeft', 6);
  const other = await until(page, ({ bank, time }) => bank < -14 && time > lag.time);
  expect(other.doing).toBe('8× motion');
  await button(page, /^Return to the old flight/).click();
  expect(await read(page)).toEqual(end);
  await press(page, 'o');
  expect((await read(page)).bank).toBeLessThan(-14);
  // The buttons do what the keys do.
  await button(page, /^Event before this/).click();
  await button(page, /^Fly on from here/).click();
  await expect(page.locator('#doing')).toHaveText('8× motion');
});

test('the flight is taken home as a table and as a picture', async ({ open, page }) => {
  await open();
  const end = await turn(page);
  const save = async (name) => {
    const [file] = await Promise.all([page.waitForEvent('download'), button(page, name).click()]);
    return [file.suggestedFilename(), await readFile(await file.path(), 'utf8')];
  };
  const [table, rows] = await save(/^CSV/);
  expect(table).toBe('dipwise-flight.csv');
  const lines = rows.trimEnd().split('\n');
  expect(lines[0]).toBe(
    'time_s,heading_deg,reading_deg,error_deg,bank_deg,airspeed_kt,rate_of_turn_deg_s',
  );
  expect(lines[1]).toMatch(/^0\.000000,330\.000000,3(29\.9|30\.0)\d+,/);
  // The time that is read is rounded, so it may stand just past a row that is not yet there.
  const rowsAtMost = Math.floor(10 * end.time + 1e-6) + 2;
  expect(rowsAtMost - lines.length).toBeGreaterThanOrEqual(0);
  expect(rowsAtMost - lines.length).toBeLessThanOrEqual(1);
  const [picture, svg] = await save(/^SVG/);
  expect(picture).toBe('dipwise-flight.svg');
  expect(svg).toMatch(/^<svg .*<title id="flight-title">Timeline</s);
});

test('it is shown and hidden by key and button', async ({ open, page }) => {
  await open();
  await expect(strips(page)).toBeHidden();
  await press(page, 'g');
  await expect(strips(page)).toBeVisible();
  await button(page, 'Timeline').click();
  await expect(strips(page)).toBeHidden();
});

test('axe finds nothing to mend while looking back', async ({ open, page }) => {
  await open();
  await turn(page);
  await press(page, '[');
  await nothingToMend(page);
  const overflow = await page.evaluate(
    () => document.documentElement.scrollHeight - innerHeight,
  );
  expect(overflow).toBe(0);
  const card = await page.locator('#card').boundingBox();
  const chart = await strips(page).boundingBox();
  expect(card.height).toBeGreaterThan(chart.height);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('it is folded until asked for, and its buttons fit a thumb', async ({ open, page }) => {
    await open();
    await expect(strips(page)).toBeHidden();
    await button(page, 'Timeline').tap();
    await page.waitForTimeout(1500);
    await strips(page).tap({ position: { x: 70, y: 60 } });
    await expect(page.locator('#doing')).toHaveText(/Looking back|Paused/);
    await fitAThumb(page.locator('.time-tools button'));
    expect(await across(page)).toBe(0);
  });
});
