// Flying by the keyboard: turns, speed, time, and what the compass makes of them.

import { expect, test } from './fixtures.js';
import { begin, hurry, press, read, rightOf, until } from './flying.js';

test('a right turn through north: the compass lags, then settles and agrees', async ({ open, page }) => {
  await open();
  await begin(page, { latitude: 52, heading: 300 });
  await expect(page.locator('#difference')).toHaveText('agrees');
  await hurry(page);
  await press(page, 'ArrowRight', 3);
  const north = await until(page, ({ heading }) => Math.abs(rightOf(heading, 0)) < 15);
  expect(north.difference).toMatch(/^lags by \d+°$/);
  expect(rightOf(north.compass, north.heading)).toBeLessThan(-10);
  expect(north.bank).toBeCloseTo(15, 0);

  await press(page, 'l');
  const settled = await until(page, ({ bank, difference }) => bank < 0.01 && difference === 'agrees');
  expect(Math.abs(rightOf(settled.compass, settled.heading))).toBeLessThan(2);
});

test('in the southern hemisphere the same turn leads', async ({ open, page }) => {
  await open();
  await begin(page, { latitude: -35, heading: 300 });
  await expect(page.locator('#place')).toHaveText('35° S');
  await hurry(page);
  await press(page, 'ArrowRight', 3);
  const north = await until(page, ({ heading }) => Math.abs(rightOf(heading, 0)) < 15);
  expect(north.difference).toMatch(/^leads by \d+°$/);
  expect(rightOf(north.compass, north.heading)).toBeGreaterThan(10);
});

test('on east, more speed reads toward north', async ({ open, page }) => {
  await open();
  await begin(page, { latitude: 52, heading: 90 });
  await press(page, '+', 2);
  await press(page, 'ArrowUp', 8);
  const faster = await until(page, ({ difference }) => difference.startsWith('reads'));
  expect(faster.difference).toMatch(/^reads \d+° less$/);
  await until(page, ({ airspeed }) => Math.round(airspeed) === 140);
});

test('words and figures agree at every look', async ({ open, page }) => {
  await open();
  await hurry(page);
  await press(page, 'ArrowLeft', 4);
  for (let look = 0; look < 40; look += 1) {
    const { bank, difference, figures } = await read(page);
    const [compass, heading] = [figures.compass, figures.heading].map((text) => {
      expect(text).toMatch(/^\d{3}°$/);
      return Number.parseInt(text, 10);
    });
    const more = rightOf(compass, heading);
    if (Math.abs(more) <= 1) {
      expect(difference).toBe('agrees');
    } else if (bank < -10) {
      expect(difference).toBe(`${more > 0 ? 'lags' : 'leads'} by ${Math.abs(more)}°`);
    }
    await page.waitForTimeout(50);
  }
});

test('pause, step and motion', async ({ open, page }) => {
  await open();
  await press(page, ' ');
  const paused = await read(page);
  expect(paused.doing).toBe('Paused');
  await page.waitForTimeout(300);
  await expect.poll(async () => (await read(page)).time).toBe(paused.time);

  await press(page, '.', 2);
  await expect.poll(async () => (await read(page)).time).toBeCloseTo(paused.time + 0.2, 1);

  await press(page, '-', 5);
  await expect(page.locator('#motion')).toHaveText('⅛×');
  await press(page, ' ');
  await expect(page.locator('#doing')).toHaveText('⅛× motion');
  await press(page, '+', 3);
  await expect(page.locator('#doing')).toBeEmpty();
  await press(page, '=', 9);
  await expect(page.locator('#motion')).toHaveText('8×');

  const from = await page.evaluate(() => [performance.now(), Number(readings.dataset.time)]);
  // Long beside a frame, which either reading may be late by.
  await page.waitForTimeout(2500);
  const to = await page.evaluate(() => [performance.now(), Number(readings.dataset.time)]);
  const factor = (1000 * (to[1] - from[1])) / (to[0] - from[0]);
  expect(factor).toBeGreaterThan(7.5);
  expect(factor).toBeLessThan(8.5);
});

test('restart gives the same start again and keeps the place', async ({ open, page }) => {
  await open();
  await begin(page, { latitude: 10, heading: 120 });
  await hurry(page);
  await press(page, 'ArrowLeft', 6);
  const turned = await until(page, ({ heading }) => Math.abs(rightOf(heading, 120)) > 30);
  await press(page, ' ');
  // The new flight begins at once: slowly, so that it is still young when it is read.
  await press(page, '-', 6);
  await press(page, 'r');
  await expect(page.locator('#heading')).toHaveText('120°');
  await expect(page.locator('#place')).toHaveText('10° N');
  await expect(page.locator('#bank')).toHaveText('level');
  expect((await read(page)).time).toBeLessThan(turned.time);
});

test('every control has its key, fine with Shift', async ({ open, page }) => {
  await open();
  await press(page, '+', 3);
  await press(page, 'ArrowRight', 2);
  await press(page, 'Shift+ArrowRight', 2);
  await expect(page.locator('#bank')).toHaveText('12° right');
  await press(page, 'Shift+ArrowLeft');
  await expect(page.locator('#bank')).toHaveText('11° right');
  await press(page, 'l');
  await expect(page.locator('#bank')).toHaveText('level');
  await press(page, 'ArrowDown', 2);
  await press(page, 'Shift+ArrowDown');
  await expect(page.locator('#airspeed')).toHaveText('89 kt');
  await press(page, 'c', 3);
  await expect(page.locator('#climb')).toHaveText('3° up');
  await press(page, 'd', 3);
  await expect(page.locator('#climb')).toHaveText('level');
  await press(page, 'x');
  await expect(page.locator('#rudder')).toHaveText('25 % right');
  await press(page, 'z');
  await expect(page.locator('#rudder')).toHaveText('centred');
});

test('standard rate is named', async ({ open, page }) => {
  await open();
  await press(page, '+', 3);
  await press(page, 'ArrowRight', 3);
  await expect(page.locator('#rate-of-turn')).toHaveText('2.9°/s');
  await expect(page.getByText('standard rate')).toBeVisible();
});

test('the key list lists every key and can be folded and switched off', async ({ open, page }) => {
  await open();
  const keys = page.getByRole('region', { name: 'Keys' });
  await expect(keys).toBeVisible();
  await expect(keys).toContainText('Bank left, right by 5°');
  await press(page, '?');
  await expect(keys).toBeHidden();
  await page.getByRole('button', { name: 'Keys' }).click();
  await page.getByLabel('Keys fly the aircraft').uncheck();
  await page.locator('#situation').focus();
  await press(page, 'ArrowRight', 3);
  await page.waitForTimeout(300);
  await expect.poll(async () => (await read(page)).bank).toBe(0);
});

test('typing and the browser’s own shortcuts do not fly', async ({ open, page }) => {
  await open();
  await press(page, 's');
  const latitude = page.getByRole('textbox', { name: 'Latitude' });
  await latitude.focus();
  await press(page, 'ArrowLeft', 3);
  await latitude.pressSequentially(' r.l');
  const kept = await page.evaluate(() => {
    const event = new KeyboardEvent('keydown', {
      key: 'ArrowRight', altKey: true, bubbles: true, cancelable: true,
    });
    document.body.dispatchEvent(event);
    return !event.defaultPrevented;
  });
  expect(kept).toBe(true);
  await page.waitForTimeout(300);
  const now = await read(page);
  expect(now.bank).toBe(0);
  expect(now.doing).toBe('');
});

test('a click leaves the space bar to the pause', async ({ open, page }) => {
  await open();
  await page.getByRole('button', { name: /^Right: bank/ }).click();
  await press(page, ' ');
  await expect(page.locator('#doing')).toHaveText('Paused');
  await page.getByRole('button', { name: 'Fly on' }).focus();
  await press(page, ' ');
  await expect(page.locator('#doing')).toBeEmpty();
});
