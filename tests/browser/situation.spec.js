// The situation: three ways to set the field, and what is said of a wrong entry.

import AxeBuilder from '@axe-core/playwright';
import { expect, test } from './fixtures.js';
import { hurry, press, read, until } from './flying.js';

const start = (page) => page.getByRole('button', { name: 'Start a new flight' });

test('by latitude alone, by number or slider, either hemisphere', async ({ open, page }) => {
  await open();
  await press(page, 's');
  const latitude = page.getByRole('textbox', { name: 'Latitude' });
  await latitude.fill('33,5 S');
  // The dipole Earth: tan(dip) = 2 tan(latitude).
  await expect(page.locator('#gives')).toContainText('Dip 52.9° up');
  await start(page).click();
  await expect(page.locator('#place')).toHaveText('33.5° S');

  await page.getByRole('slider', { name: 'Latitude' }).fill('45');
  await expect(latitude).toHaveValue('45');
  await expect(page.locator('#gives')).toContainText('Dip 63.4° down');
  await expect(page.locator('#gives')).toContainText('No variation');
});

test('by latitude, longitude, altitude and date: variation and true heading', async ({ open, page }) => {
  await open();
  await press(page, 's');
  await page.getByRole('radio', { name: 'Place, date' }).check();
  // A row of NOAA's test values for WMM2025: 2025.0, sea level, 80° N 0°: dip 83.21, D 1.28.
  await page.getByRole('textbox', { name: 'Latitude' }).fill('80');
  await page.getByLabel('Longitude').fill('0');
  await page.getByLabel('Date', { exact: true }).fill('2025-01-01');
  await expect(page.locator('#gives')).toContainText('Dip 83.2° down');
  await expect(page.locator('#gives')).toContainText('Variation 1.3° E');
  await page.getByLabel('On heading').selectOption('90');
  await start(page).click();
  await expect(page.locator('#place')).toHaveText('80° N 0° E, 2025-01-01');
  await expect(page.locator('#true-heading')).toHaveText('True 091°');
});

test('by hand, and what a weak field is worth', async ({ open, page }) => {
  await open();
  await press(page, 's');
  await page.getByRole('radio', { name: 'By hand' }).check();
  await page.getByLabel('Dip').fill('-70');
  await page.getByLabel('Horizontal intensity').fill('5500');
  await start(page).click();
  await expect(page.locator('#warning')).toHaveText('Weak field: use with caution');
  await page.getByLabel('Horizontal intensity').fill('1500');
  await start(page).click();
  await expect(page.locator('#warning')).toHaveText('Field too weak: unreliable');
});

test('a wrong entry is named beside it, and the flight goes on', async ({ open, page }) => {
  await open();
  await hurry(page);
  await press(page, 'ArrowRight', 4);
  await until(page, ({ time }) => time > 3);
  await press(page, 's');
  await page.getByRole('radio', { name: 'Place, date' }).check();
  const latitude = page.getByRole('textbox', { name: 'Latitude' });
  const date = page.getByLabel('Date', { exact: true });
  await latitude.fill('95');
  await date.fill('2031-01-01');
  await expect(page.locator('#latitude-wrong')).toHaveText('Latitude must be from −90° to 90°, not 95°.');
  await expect(latitude).toHaveAttribute('aria-invalid', 'true');

  const before = await read(page);
  await start(page).click();
  await expect(latitude).toBeFocused();
  await latitude.fill('51.5');
  await expect(page.locator('#latitude-wrong')).toBeEmpty();
  await expect(page.locator('#date-wrong')).toHaveText(
    'Date must be from 2025-01-01 to 2029-12-31, the life of the magnetic model, not 2031-01-01.',
  );
  await start(page).click();
  await expect(date).toBeFocused();
  await expect(page.locator('#place')).toHaveText('52° N');
  await expect(page.locator('#gives')).toContainText('No field yet');
  const after = await read(page);
  expect(after.time).toBeGreaterThan(before.time);
  expect(after.bank).toBeCloseTo(20, 0);

  // Nothing that was typed is lost by looking elsewhere.
  await page.getByRole('radio', { name: 'By hand' }).check();
  await page.getByRole('radio', { name: 'Place, date' }).check();
  await expect(date).toHaveValue('2031-01-01');
  await date.fill('2029-12-31');
  await start(page).click();
  await expect(page.locator('#place')).toContainText('2029-12-31');
  // The new flight begins with wings level; how young it still is depends on the machine.
  await expect(page.locator('#bank')).toHaveText('level');
});

test('float and air', async ({ open, page }) => {
  await open();
  await press(page, 's');
  await page.getByLabel('Float', { exact: true }).selectOption({ label: 'Lightly damped' });
  await page.getByLabel('Air', { exact: true }).selectOption({ label: 'Severe turbulence' });
  await start(page).click();
  await press(page, 's');
  await expect(page.locator('#situation')).toContainText('Lightly damped float');
  await expect(page.locator('#situation')).toContainText('Severe turbulence');
  await hurry(page);
  await until(page, ({ tilt }) => tilt > 4.2);
});

test('a place on the map, by pointer and by arrow keys', async ({ open, page }) => {
  await open();
  await press(page, 's');
  await page.getByRole('radio', { name: 'Place, date' }).check();
  const map = page.locator('.map .picture');
  const [latitude, longitude] = ['Latitude', 'Longitude'].map((name) =>
    page.getByRole('textbox', { name }),
  );
  const box = await map.boundingBox();
  // The south-east quarter of the map.
  await page.mouse.click(box.x + 0.8 * box.width, box.y + 0.7 * box.height);
  expect(Number(await latitude.inputValue())).toBeLessThan(0);
  const east = Number(await longitude.inputValue());
  expect(east).toBeGreaterThan(60);
  const south = Number(await latitude.inputValue());
  await press(page, 'ArrowUp');
  await expect(latitude).toHaveValue(String(south + 5));
  await press(page, 'Shift+ArrowRight');
  await expect(longitude).toHaveValue(String(east + 1));
  await expect(page.locator('#gives')).toContainText('up');
  // The arrows went to the map, not to the aircraft.
  expect((await read(page)).bank).toBe(0);
});

test('the float number by number, each with its range; undo and reset', async ({ open, page }) => {
  await open();
  await press(page, 's');
  await page.getByText('Float, number by number').click();
  const period = page.getByLabel('Yaw period', { exact: true });
  await expect(period).toHaveValue('6');
  await period.fill('900');
  await expect(page.locator('.place-panel')).toContainText(/Yaw period must be from 0\.5 .*120.*, not 900/);
  await period.fill('9');
  await start(page).click();
  await expect(page.locator('#situation')).toContainText('Float of your own');
  await page.getByRole('button', { name: 'Undo the last change here' }).click();
  await expect(period).toHaveValue('6');
  await page.getByRole('textbox', { name: 'Latitude' }).fill('-20');
  await page.getByRole('button', { name: 'Reset everything here' }).click();
  await expect(page.getByRole('textbox', { name: 'Latitude' })).toHaveValue('52');
  await page.locator('#situation').focus();
  await press(page, 'u');
  await expect(page.getByRole('textbox', { name: 'Latitude' })).toHaveValue('-20');
});

test('iron turns the card, and the flight before can be had again', async ({ open, page }) => {
  await open();
  await until(page, ({ time }) => time > 0.5);
  await press(page, 's');
  await page.getByLabel('On heading').selectOption('90');
  await page.getByLabel('Iron', { exact: true }).selectOption({ label: 'Magnet ahead' });
  await start(page).click();
  await expect(page.locator('#heading')).toHaveText('090°');
  await expect.poll(async () => {
    const { compass, heading } = await read(page);
    return Math.abs(compass - heading);
  }).toBeGreaterThan(2);
  await page.getByRole('button', { name: 'Flight before: return to it' }).click();
  await expect(page.locator('#heading')).toHaveText('360°');
  await expect(page.locator('#situation')).not.toContainText('Magnet');
});

for (const colorScheme of ['light', 'dark']) {
  test(`the whole form bars nobody, ${colorScheme}`, async ({ open, page }) => {
    await page.emulateMedia({ colorScheme });
    await open();
    await press(page, ' ');
    await press(page, 's');
    await page.getByRole('radio', { name: 'Place, date' }).check();
    await page.getByText('Float, number by number').click();
    await page.getByText('Iron and deviation').click();
    for (const [width, height] of [[1280, 720], [390, 844]]) {
      await page.setViewportSize({ width, height });
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations).toEqual([]);
    }
  });
}
