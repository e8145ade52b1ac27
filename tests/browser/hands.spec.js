// Flown by a stick, and the bowl gone round by keys and touch.

import { nothingToMend } from './axe.js';
import { expect, test } from './fixtures.js';
import { press } from './flying.js';

// Gives the browser a stick that the test moves: `window.pad`.
async function plugIn(page, axes = [0, 0, 0, 0]) {
  await page.evaluate((axes) => {
    const button = () => ({ pressed: false, touched: false, value: 0 });
    window.pad = {
      id: 'Test stick',
      index: 0,
      connected: true,
      mapping: '',
      axes,
      buttons: Array.from({ length: 8 }, button),
    };
    navigator.getGamepads = () => [null, window.pad];
    window.dispatchEvent(new Event('gamepadconnected'));
  }, axes);
  await expect(page.locator('#stick-name')).toHaveText('Test stick');
  await frames(page);
}

// Long enough for the page to have read the stick.
const frames = (page) =>
  page.evaluate(async () => {
    for (let i = 0; i < 3; i += 1) await new Promise(requestAnimationFrame);
  });

async function move(page, axis, to) {
  await page.evaluate(([axis, to]) => { window.pad.axes[axis] = to; }, [axis, to]);
  await frames(page);
}

async function push(page, button) {
  for (const pressed of [true, false]) {
    await page.evaluate(([button, pressed]) => {
      window.pad.buttons[button].pressed = pressed;
    }, [button, pressed]);
    await frames(page);
  }
}

const bank = (page) => page.locator('#bank');

test('a stick banks in proportion, and a throttle sets the airspeed', async ({ open, page }) => {
  await open();
  await expect(page.locator('#stick')).toHaveCount(0);
  await plugIn(page);
  await press(page, '+', 3);
  await move(page, 0, 1);
  await expect(bank(page)).toHaveText('45° right');
  // Three fifths of the way from the edge of the dead zone to the end.
  await move(page, 0, -0.64);
  await expect(bank(page)).toHaveText('27° left');
  await move(page, 0, 0.05);
  await expect(bank(page)).toHaveText('level');
  await move(page, 3, -1);
  await expect(page.locator('#airspeed')).toHaveText('150 kt');
});

test('a stick that rests leaves the aircraft to the keys', async ({ open, page }) => {
  await open();
  await plugIn(page, [0.06, 0, 0, 0.9]);
  await press(page, '+', 3);
  await press(page, 'ArrowRight', 2);
  await press(page, 'ArrowUp');
  await expect(bank(page)).toHaveText('10° right');
  await expect(page.locator('#airspeed')).toHaveText('105 kt');
  await move(page, 0, -0.04);
  await expect(bank(page)).toHaveText('10° right');
});

test('its buttons level, pause and cover', async ({ open, page }) => {
  await open();
  await plugIn(page);
  await press(page, 'ArrowRight', 2);
  await expect(bank(page)).toHaveText('10° right');
  await push(page, 0);
  await expect(bank(page)).toHaveText('level');
  await push(page, 1);
  await expect(page.locator('#doing')).toHaveText('Paused');
  await push(page, 2);
  await expect(page.locator('#compass')).toHaveText(/Covered/);
});

test('axes are found by moving them, reversed, and remembered', async ({ open, page }) => {
  await open();
  await plugIn(page);
  await press(page, '+', 3);
  await page.locator('#stick summary').click();
  await page.getByRole('button', { name: 'Find the axis for the bank' }).click();
  await expect(page.getByText('Move the stick to the right.')).toBeVisible();
  await frames(page);
  await move(page, 2, -0.9);
  await expect(page.getByRole('combobox', { name: 'Bank' })).toHaveValue('2');
  await expect(page.getByText('Move the stick to the right.')).toBeHidden();
  await move(page, 2, 0);
  await move(page, 2, -1);
  await expect(bank(page)).toHaveText('45° right');
  await page.getByRole('combobox', { name: 'Airspeed' }).selectOption('None');
  await page.getByRole('slider', { name: 'Dead zone' }).fill('25');
  await page.getByRole('checkbox', { name: 'Reversed' }).first().uncheck();
  await expect
    .poll(() => page.evaluate(() => localStorage.getItem('dipwise.stick')))
    .toBe('+2 none 25');

  await open();
  await plugIn(page);
  await press(page, '+', 3);
  await move(page, 2, -1);
  await expect(bank(page)).toHaveText('45° left');
});

for (const stored of ['', '+0 -3 900', '{"bank":0}', '-99 none 10']) {
  test(`stored nonsense is ignored: ${stored || 'nothing'}`, async ({ open, page }) => {
    await page.addInitScript((stored) => localStorage.setItem('dipwise.stick', stored), stored);
    await open();
    await plugIn(page);
    await press(page, '+', 3);
    await move(page, 0, 1);
    await expect(bank(page)).toHaveText('45° right');
  });
}

test('a stick without axes, or with none that are numbers, or pulled out, harms nothing', async ({ open, page }) => {
  await open();
  await plugIn(page, [Number.NaN, 'far']);
  await page.evaluate(() => { window.pad.axes = []; window.pad.buttons = []; });
  await frames(page);
  await page.evaluate(() => { navigator.getGamepads = () => [null, null]; });
  await expect(page.locator('#stick')).toHaveCount(0);
  await press(page, 'ArrowRight');
  await expect(bank(page)).toHaveText('5° right');
});

test('the bowl is gone round by keys that do not fly meanwhile', async ({ open, page }) => {
  await open();
  await press(page, ' ');
  await press(page, 'w');
  const bowl = page.getByRole('group', { name: /^Bowl/ });
  const picture = () => page.locator('#bowl canvas').evaluate((canvas) => canvas.toDataURL());
  await bowl.focus();
  const corner = await picture();
  await expect(bowl).toHaveCSS('outline-style', 'solid');
  for (const key of ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown']) {
    await press(page, key);
    await expect.poll(picture).not.toBe(corner);
    await press(page, 'Home');
    await expect.poll(picture).toBe(corner);
  }
  await page.locator('body').evaluate(() => document.activeElement.blur());
  await press(page, ' ');
  await press(page, 'ArrowLeft');
  await expect(bank(page)).toHaveText('5° left');
  await expect(page.locator('#airspeed')).toHaveText('100 kt');
});

test.describe('by touch', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('the bowl is gone round by a finger, up and down as well', async ({ open, page }) => {
    await open();
    await press(page, ' ');
    await press(page, 'w');
    const bowl = page.locator('#bowl canvas');
    const picture = () => bowl.evaluate((canvas) => canvas.toDataURL());
    await bowl.scrollIntoViewIfNeeded();
    await expect(page.getByRole('button', { name: 'Corner' })).toHaveAttribute('aria-pressed', 'true');
    const before = await picture();
    const box = await bowl.boundingBox();
    const finger = await page.context().newCDPSession(page);
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const touch = (type, points) =>
      finger.send('Input.dispatchTouchEvent', { type, touchPoints: points });
    await touch('touchStart', [{ x, y }]);
    for (let step = 1; step <= 5; step += 1) await touch('touchMove', [{ x, y: y - 8 * step }]);
    await touch('touchEnd', []);
    await expect.poll(picture).not.toBe(before);
    await expect(page.getByRole('button', { name: 'Corner' })).toHaveAttribute('aria-pressed', 'false');
  });
});

test('the settings of a stick bar nobody', async ({ open, page }) => {
  await open();
  await plugIn(page);
  await page.locator('#stick summary').click();
  await page.getByRole('button', { name: 'Find the axis for the airspeed' }).click();
  await nothingToMend(page);
});
