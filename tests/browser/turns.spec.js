// One turn by the clock, and then by the compass: flown, marked and compared.

import { address, bankTo, goOn, put, SEED, stage, stopClock, task, untilRead } from './drilling.js';
import { nothingToMend } from './axe.js';
import { expect, test } from './fixtures.js';
import { across, fitAThumb } from './fits.js';

const rows = (page) => page.locator('.turns-table tbody tr');

// How far past the target, as the page says it.
function said(past) {
  const by = Math.round(10 * Math.abs(past)) / 10;
  return by === 0 ? '0°' : `${by}° ${past < 0 ? 'short' : 'past'}`;
}

// The ways without a mistake stand last, with what the program says of them.
async function idealsAre(page, aim) {
  const ways = [aim.rule_compass_overshoot_deg, aim.bare_compass_overshoot_deg];
  const [rule, bare] = ways.map((it) => (it === null ? 'the card never shows that reading' : said(it)));
  const count = await rows(page).count();
  await expect(rows(page).nth(count - 3)).toContainText(`after ${aim.rule_s.toFixed(1)} s`);
  await expect(rows(page).nth(count - 2)).toContainText(rule);
  await expect(rows(page).nth(count - 1)).toContainText(bare);
  const told = page.locator('#turn-chart canvas');
  await expect(told).toHaveAttribute('aria-label', /1, You, by the clock: comes out on \d{3}°, /);
}

test('a timed turn is flown by keyboard, then by the compass, and both stand side by side', async ({ open, page }) => {
  test.slow();
  await page.clock.install();
  const clock = await put(open, page, 'timed-turn');
  await stopClock(page);
  await page.keyboard.press(' ');
  await stage(page, 'flown');
  await bankTo(page, clock.aim.bank_deg);
  await goOn(page, clock.aim.simulated_s);
  await page.keyboard.press('l');
  await goOn(page, 20);
  await stage(page, 'explained');
  await expect(page.getByRole('heading', { name: 'By the clock and by the compass' })).toBeVisible();
  await expect(rows(page)).toHaveCount(4);
  await idealsAre(page, clock.aim);
  await expect(page.locator('.turns')).toContainText('counts neither for what is due next nor in a set');

  // The same turn: the card is seen, the clock is not.
  const compass = await task('roll-out', '--of-timed-turn');
  await page.keyboard.press('c');
  await stage(page, 'asked');
  await goOn(page, 0.5);
  await expect(page.getByRole('heading', { name: 'The same turn by the compass' })).toBeFocused();
  await expect(page.locator('#question')).toHaveText(compass.question);
  await page.keyboard.press(' ');
  await stage(page, 'flown');
  await expect(page.locator('#card')).toHaveCount(1);
  for (const covered of ['#clock', '#rate-of-turn', '#heading']) {
    await expect(page.locator(covered)).toHaveCount(0);
  }
  await bankTo(page, compass.aim.bank_deg);
  // A turn that comes out on the target takes as long by either.
  await goOn(page, clock.aim.simulated_s - 5);
  await untilRead(page, compass.aim.simulated_deg, compass.aim.bank_deg);
  await page.keyboard.press('l');
  await goOn(page, 20);
  await stage(page, 'explained');
  await expect(page.getByRole('heading', { name: 'Within the tolerance' })).toBeVisible();
  await expect(page.locator('#not-counted')).toHaveCount(0);
  await expect(rows(page)).toHaveCount(5);
  await idealsAre(page, clock.aim);
  const own = page.locator('.turns-table .own');
  await expect(own).toHaveCount(2);
  const off = /Off by (\d+(\.\d+)?)°/.exec(await page.locator('.off').textContent())[1];
  await expect(own.nth(1)).toContainText(`${off}°`);
  await expect(page.getByRole('button', { name: 'Now by the compass' })).toHaveCount(0);

  // One answer is kept: that by the clock.
  await page.clock.resume();
  await page.goto('drills.html#kept');
  await expect(page.locator('#holds')).toHaveText(/^\S+ answer, \S+ task that was begun\.$/);
});

test('its address puts the turn by the compass alone, and does not count', async ({ open, page }) => {
  await open(address('timed-turn'));
  await stage(page, 'asked');
  await page.getByRole('link', { name: 'The same turn by the compass' }).click();
  await expect(page.getByRole('heading', { name: 'The same turn by the compass' })).toBeFocused();
  expect(page.url()).toMatch(/kind=roll-out&seed=7&level=1&tol=10&of=timed-turn$/);
  for (let again = 0; again < 2; again += 1) {
    await page.keyboard.press(' ');
    await stage(page, 'flown');
    await page.keyboard.press('f');
    await stage(page, 'explained');
    await expect(page.getByRole('heading', { name: 'Beyond the tolerance' })).toBeVisible();
    await expect(rows(page)).toHaveCount(4);
    await page.reload();
    await stage(page, 'asked');
    await expect(page.locator('.note', { hasText: 'counts neither' })).toBeVisible();
  }
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('both turns are flown by touch, and all of it fits', async ({ open, page }) => {
    await page.clock.install();
    await put(open, page, 'timed-turn');
    const side = /turn (left|right)/.exec(await page.locator('#question').textContent())[1];
    await stopClock(page);
    const fly = async () => {
      await page.getByRole('button', { name: 'Begin' }).tap();
      await stage(page, 'flown');
      await goOn(page, 1);
      for (let by = 0; by < 3; by += 1) await page.getByRole('button', { name: `5° ${side}` }).tap();
      await goOn(page, 12);
      await page.getByRole('button', { name: 'Level' }).tap();
      await goOn(page, 20);
      await stage(page, 'explained');
    };
    await fly();
    await fitAThumb(page.locator('.ways-on button'), 4);
    await page.getByRole('button', { name: 'Now by the compass' }).tap();
    await stage(page, 'asked');
    await fly();
    await expect(rows(page)).toHaveCount(5);
    expect(await across(page)).toBe(0);
    for (const part of ['#turn-chart', '.turns-table']) {
      await expect(page.locator(part)).toBeVisible();
      const box = await page.locator(part).boundingBox();
      expect(box.x >= 0 && box.x + box.width <= 390).toBe(true);
    }
  });
});

test('axe finds nothing to mend', async ({ open, page }) => {
  await open(address('timed-turn'));
  for (const kind of ['clock', 'compass']) {
    await stage(page, 'asked');
    await page.keyboard.press(' ');
    await stage(page, 'flown');
    await page.keyboard.press('f');
    await stage(page, 'explained');
    await expect(page.locator('#turn-chart canvas')).toBeVisible();
    await nothingToMend(page, kind);
    if (kind === 'clock') await page.keyboard.press('c');
  }
});
