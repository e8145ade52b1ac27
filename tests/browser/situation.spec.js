// The situation: three ways to set the field, the map, float and iron, undo and reset, and what
// is said of a wrong entry.

import { nothingToMend } from './axe.js';
import { expect, test } from './fixtures.js';
import { hurry, press, read, rightOf, until } from './flying.js';
import { across } from './fits.js';

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

  await page.getByRole('button', { name: 'South' }).click();
  await expect(latitude).toHaveValue('-45');
  await expect(page.getByRole('button', { name: 'South' })).toHaveAttribute('aria-pressed', 'true');
  await expect(page.locator('#gives')).toContainText('Dip 63.4° up');
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

// The map, with its lines of dip drawn.
async function openMap(page) {
  await press(page, 's');
  await page.getByRole('radio', { name: 'Place, date' }).check();
  const map = page.getByRole('application', { name: /^Map/ });
  await expect(map).toHaveAttribute('data-lines', /^[1-9]/);
  return map;
}

test('a place is chosen on the map by pointer and by arrow keys', async ({ open, page }) => {
  await open();
  const map = await openMap(page);
  const latitude = page.getByRole('textbox', { name: 'Latitude' });
  const longitude = page.getByLabel('Longitude');
  const { width, height } = await map.boundingBox();
  // A quarter from the left and from the top: 45° N 90° W, to a pixel.
  await map.click({ position: { x: width / 4, y: height / 4 } });
  const [north, east] = [await latitude.inputValue(), await longitude.inputValue()].map(Number);
  expect(Math.abs(north - 45)).toBeLessThan(2);
  expect(Math.abs(east + 90)).toBeLessThan(2);

  await map.focus();
  await press(page, 'ArrowDown');
  await expect(latitude).toHaveValue(String(north - 5));
  await press(page, 'Shift+ArrowRight');
  await expect(longitude).toHaveValue(String(east + 1));
  await expect(page.locator('#map-place')).toContainText(/° N .*° W: dip \d+° down/);
  // The aircraft has not heard of it.
  await expect(page.locator('#bank')).toHaveText('level');

  await longitude.fill('178');
  await latitude.fill('88');
  await map.focus();
  await press(page, 'ArrowRight');
  await press(page, 'ArrowUp');
  await expect(longitude).toHaveValue('-177');
  await expect(latitude).toHaveValue('90');
  await start(page).click();
  await expect(page.locator('#place')).toContainText('90° N 177° W');
});

test('another year has other lines', async ({ open, page }) => {
  await open();
  const map = await openMap(page);
  const picture = () => map.locator('canvas').evaluate((canvas) => canvas.toDataURL());
  const date = page.getByLabel('Date', { exact: true });
  await date.fill('2025-06-01');
  const before = await picture();
  await date.fill('2029-06-01');
  await expect.poll(picture).not.toBe(before);
});

test('a number of the float is changed alone, and refused beyond its range', async ({ open, page }) => {
  await open();
  await press(page, 's');
  await page.getByText('Float, number by number').click();
  const float = page.getByLabel('Float', { exact: true });
  const period = page.getByLabel('Yaw period');
  await expect(page.locator('#yaw-period-hint')).toHaveText('0.5 to 120 s · chosen');
  await float.selectOption({ label: 'Brisk' });
  await expect(period).toHaveValue('3.5');

  await period.fill('200');
  await expect(page.locator('#yaw-period-wrong')).toHaveText(
    'Yaw period must be from 0.5 s to 120 s, not 200 s.',
  );
  await page.getByText('Float, number by number').click();
  await start(page).click();
  // It is unfolded again, as something in it is wrong.
  await expect(period).toBeFocused();
  await period.fill('9');
  await expect(float.locator('option:checked')).toHaveText('Your own');
  await expect(page.locator('#yaw-period-hint')).toContainText('your own');
  await start(page).click();
  await press(page, 's');
  await expect(page.locator('#situation')).toContainText('Float of your own');
  await press(page, 's');
  await float.selectOption({ label: 'Standard' });
  await expect(period).toHaveValue('6');
});

test('settings too fast together are refused in a sentence', async ({ open, page }) => {
  await open();
  await press(page, 's');
  await page.getByText('Float, number by number').click();
  await page.getByLabel('Yaw period').fill('0.5');
  await page.getByLabel('Yaw damping ratio').fill('10');
  await page.getByLabel('Tilt damping ratio').fill('10');
  await page.getByLabel('Tilt in level flight').fill('0.1');
  await start(page).click();
  await expect(page.locator('.begin .wrong')).toContainText('Lengthen the yaw period');
  await page.getByRole('button', { name: 'Reset' }).click();
  await expect(page.locator('.begin .wrong')).toBeEmpty();
});

test('iron makes the compass deviate in level flight, as the form says it will', async ({ open, page }) => {
  await open();
  await press(page, 's');
  await page.getByLabel('On heading').selectOption('90');
  await page.getByText('Iron and deviation').click();
  const east = page.locator('#deviation td').nth(1);
  await expect(east).toHaveText('0°');
  await page.getByLabel('Iron', { exact: true }).selectOption({ label: 'Magnet ahead' });
  await expect(page.getByLabel('Hard iron, fore')).toHaveValue('3000');
  await expect(east).toHaveText(/° [EW]$/);
  const said = await east.textContent();
  const deviation = parseFloat(said) * (said.endsWith('W') ? -1 : 1);
  expect(Math.abs(deviation)).toBeGreaterThan(5);
  await start(page).click();
  // The float starts settled. Deviation is magnetic less compass; its tilt is not in the form's.
  const { heading, compass } = await until(page, ({ heading }) => Math.abs(heading - 90) < 0.1);
  expect(Math.abs(rightOf(heading, compass) - deviation)).toBeLessThan(2);

  await page.getByLabel('Soft iron, fore by fore').fill('0.7');
  await expect(page.locator('#soft-fore-fore-wrong')).toHaveText(
    'Soft iron, fore by fore must be from −0.5 to 0.5, not 0.7.',
  );
});

test('every change can be undone, a reset too, and a new flight gives way to the one before', async ({ open, page }) => {
  await open();
  await press(page, 's');
  const latitude = page.getByRole('textbox', { name: 'Latitude' });
  const undo = page.getByRole('button', { name: 'Undo' });
  await expect(undo).toHaveAttribute('aria-disabled', 'true');
  await latitude.fill('');
  await latitude.pressSequentially('-35');
  await page.getByLabel('On heading').selectOption('180');
  await page.getByLabel('Air', { exact: true }).selectOption({ label: 'Light turbulence' });
  await page.getByRole('button', { name: 'Reset' }).click();
  await expect(latitude).toHaveValue('52');

  await undo.click();
  await expect(latitude).toHaveValue('-35');
  await expect(page.locator('#air option:checked')).toHaveText('Light turbulence');
  // U does the same wherever nothing is typed.
  await press(page, 'u');
  await expect(page.locator('#air option:checked')).toHaveText('Still');
  await start(page).click();
  await expect(page.locator('#place')).toHaveText('35° S');
  await undo.focus();
  await press(page, 'u');
  await expect(page.locator('#start-heading option:checked')).toHaveText('360°');
  // All that was typed at one go is one change.
  await press(page, 'u');
  await expect(latitude).toHaveValue('52');
  await expect(undo).toHaveAttribute('aria-disabled', 'true');

  await page.getByRole('button', { name: 'Flight before' }).click();
  await expect(page.locator('#place')).toHaveText('52° N');
  await expect(page.locator('#doing')).toContainText('Paused');
  await page.getByRole('button', { name: 'Flight before' }).click();
  await expect(page.locator('#place')).toHaveText('35° S');
  await expect.poll(async () => (await read(page)).heading).toBeCloseTo(180, 0);
});

for (const viewport of [{ width: 1280, height: 720 }, { width: 390, height: 844 }]) {
  test.describe(`at ${viewport.width}`, () => {
    test.use({ viewport });
    test('the form bars nobody', async ({ open, page }) => {
      await open();
      await openMap(page);
      await page.getByText('Float, number by number').click();
      await page.getByText('Iron and deviation').click();
      await page.getByLabel('Vibration').fill('2');
      await page.getByLabel('Soft iron, down by down').fill('lots');
      await nothingToMend(page);
      expect(await across(page)).toBe(0);
    });
  });
}
