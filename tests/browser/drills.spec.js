// The page of drills: each kind of task is put, answered and explained, by keyboard and by touch.

import {
  address,
  bankTo,
  goOn,
  isAsked,
  play,
  put,
  SEED,
  stage,
  stopClock,
  untilRead,
} from './drilling.js';
import { nothingToMend } from './axe.js';
import { expect, test } from './fixtures.js';
import { across, fitAThumb } from './fits.js';

test('what is chosen is answered by keyboard, explained, and tried again', async ({ open, page }) => {
  for (const kind of ['predict', 'read', 'name-the-cause', 'corrections']) {
    const asked = await put(open, page, kind);
    const right = asked.choices.findIndex((choice) => choice.right);
    if (kind === 'read') {
      await page.keyboard.press(' ');
      await expect(page.getByRole('button', { name: 'Pause' })).toBeVisible();
    }
    const wrong = (right + 1) % asked.choices.length;
    await page.keyboard.press(String(wrong + 1));
    await stage(page, 'explained');
    await expect(page.getByRole('heading', { name: 'Not right' })).toBeFocused();
    await expect(page.locator('.yours-is')).toHaveText(/^Your answer: .+ \(.+\)$/);
    await expect(page.locator('.yours-is')).toContainText(asked.choices[wrong].text);
    await expect(page.locator('.right-is')).toHaveText(`The right answer: ${asked.choices[right].text}`);
    for (const part of ['happened', 'why', 'rule']) {
      await expect(play(page)).toContainText(asked.explanation[part]);
    }

    // Another try is told what it is, and what it would have been.
    await page.keyboard.press('r');
    await stage(page, 'asked');
    await page.keyboard.press(String(right + 1));
    await expect(page.getByRole('heading', { name: 'Right' })).toBeFocused();
    await expect(page.locator('#not-counted')).toContainText('the task was answered before');

    const before = page.url();
    await page.keyboard.press('n');
    await expect.poll(() => page.url()).not.toBe(before);
    await stage(page, 'asked');
  }
});

test('a turn is flown by keyboard on the compass alone, and one by the clock', async ({ open, page }) => {
  await page.clock.install();
  for (const kind of ['roll-out', 'timed-turn']) {
    await page.clock.resume();
    const asked = await put(open, page, kind);
    await stopClock(page);
    const { bank_deg: bank, simulated_deg: reading, simulated_s: seconds } = asked.aim;
    await page.keyboard.press(' ');
    await stage(page, 'flown');
    // The reference is covered: nothing on the page says the heading.
    await expect(page.locator('#heading')).toHaveCount(0);
    await expect(page.locator('#card')).toHaveCount(kind === 'roll-out' ? 1 : 0);
    await bankTo(page, bank);
    if (kind === 'timed-turn') {
      await goOn(page, seconds);
    } else {
      await goOn(page, 8);
      await untilRead(page, reading, bank);
    }
    await page.keyboard.press('l');
    await goOn(page, 20);
    await stage(page, 'explained');
    await expect(page.getByRole('heading', { name: 'Within the tolerance' })).toBeVisible();
    await expect(page.locator('#not-counted')).toHaveCount(0);
    await expect(page.locator('#mark-scale')).toBeVisible();
    await expect(page.locator('.ideals > div')).toHaveCount(kind === 'roll-out' ? 5 : 3);
    await expect(page.locator('#heading')).toHaveText(/^\d{3}°$/);
    // Another try from the end begins in the turn.
    await page.getByRole('button', { name: 'Try the roll-out again' }).press('Enter');
    await stage(page, 'flown');
    await isAsked(page, bank);
  }
});

test('a pause without leave gives no mark, and a task begun before says so', async ({ open, page }) => {
  await page.clock.install();
  await put(open, page, 'timed-turn');
  await stopClock(page);
  await page.keyboard.press(' ');
  await goOn(page, 2.5);
  await page.keyboard.press(' ');
  await expect(page.locator('#standing')).toHaveText('Paused');
  const clock = await page.locator('#clock').textContent();
  expect(clock).toMatch(/^0:0[12]$/);
  await goOn(page, 5);
  await expect(page.locator('#clock')).toHaveText(clock);
  await page.keyboard.press(' ');
  await page.keyboard.press('f');
  await stage(page, 'explained');
  await expect(page.locator('#not-counted')).toContainText('the flight was paused');

  // A reload is no way to another mark.
  await page.clock.resume();
  await page.reload();
  await stage(page, 'asked');
  await expect(page.locator('#begun-before')).toHaveText(
    'You began this task before, so this answer gives no mark.',
  );
  await page.keyboard.press(' ');
  await stage(page, 'flown');
  await page.keyboard.press('f');
  await expect(page.locator('#not-counted')).toContainText('the task was begun before');
});

test('a heading is held in rough air, and a gyro set, by keyboard', async ({ open, page }) => {
  await page.clock.install();
  const held = await put(open, page, 'hold-heading');
  await stopClock(page);
  await page.keyboard.press(' ');
  await goOn(page, held.aim.to_s + 1);
  await stage(page, 'explained');
  await expect(page.getByRole('heading', { name: 'Beyond the tolerance' })).toBeVisible();
  await expect(play(page)).toContainText(held.explanation.rule);

  await page.clock.resume();
  const gyro = await put(open, page, 'set-gyro');
  await stopClock(page);
  await page.keyboard.press(' ');
  for (let times = 0; times < 3; times += 1) await page.keyboard.press('+');
  let now = 0;
  for (const [from, to] of gyro.aim.good_s) {
    const at = (from + to) / 2;
    await goOn(page, (at - now) / 8);
    now = at;
    await page.keyboard.press('s');
  }
  await goOn(page, (gyro.flight.watch_to_s - now) / 8 + 1);
  await stage(page, 'explained');
  await expect(page.getByRole('heading', { name: 'Within the tolerance' })).toBeVisible();
  await expect(page.locator('#not-counted')).toHaveCount(0);

  // The flight again, from a moment of it, with the reasons.
  await page.getByRole('slider').fill(String(200 * 40));
  await expect(page.locator('.scrub output')).toHaveText('40.0 s');
  for (const view of ['Bowl', 'Torques']) {
    await page.getByRole('button', { name: view }).click();
    await expect(page.locator(`#${view.toLowerCase()} canvas`)).toBeVisible();
    await expect(page.locator('#reason')).toHaveText(/: the compass (agrees|reads)|: the card (lags|leads)/);
  }
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('a task is chosen, flown and explained by touch', async ({ open, page }) => {
    await page.clock.install();
    await open('drills.html#practise');
    for (const name of [/^Timed turn/, '1 easy', 'South']) {
      await page.getByRole('radio', { name }).tap();
    }
    await page.getByLabel('Seed').fill(String(SEED));
    await page.getByRole('button', { name: 'Start' }).tap();
    await stage(page, 'asked');
    const link = page.url();
    expect(link).toMatch(/kind=timed-turn&seed=7&lat=-\d+&level=1&tol=10$/);
    const question = await page.locator('#question').textContent();
    const [, side] = /turn (left|right)/.exec(question);
    await stopClock(page);
    await page.getByRole('button', { name: 'Begin' }).tap();
    await stage(page, 'flown');
    await goOn(page, 1);
    await fitAThumb(page.locator('.pad button'));
    for (const control of await page.locator('.pad button:visible').all()) {
      const box = await control.boundingBox();
      expect(box.y + box.height).toBeLessThanOrEqual(844);
    }
    for (let by = 0; by < 3; by += 1) await page.getByRole('button', { name: `5° ${side}` }).tap();
    await goOn(page, 10);
    await page.getByRole('button', { name: 'Level' }).tap();
    await goOn(page, 16);
    await stage(page, 'explained');
    await expect(page.getByRole('heading', { name: 'Beyond the tolerance' })).toBeVisible();
    await expect(page.locator('.parts-of-it')).toContainText('Rule of thumb: a second for every 3°');
    expect(await across(page)).toBe(0);

    // Had again by its link, it is the same.
    await page.clock.resume();
    await page.goto('about:blank');
    await page.goto(link);
    await stage(page, 'asked');
    await expect(page.locator('#question')).toHaveText(question);

    // What cannot be is said, and nothing is lost.
    await open('drills.html#practise?kind=read&seed=1&lat=5');
    const reason = page.getByRole('alert').filter({ hasText: 'at least 20° from the equator, not 5°' });
    await expect(reason).toBeVisible();
    await expect(page.getByLabel('Latitude')).toHaveValue('5');
    await expect(page.getByRole('radio', { name: /^Read the card/ })).toBeChecked();
  });
});

test('axe finds nothing to mend', async ({ open, page }) => {
  await open('drills.html#practise');
  await nothingToMend(page, 'form');
  for (const kind of ['corrections', 'set-gyro', 'roll-out']) {
    await open(address(kind));
    await stage(page, 'asked');
    await nothingToMend(page, `${kind} asked`);
    if (kind === 'set-gyro' || kind === 'roll-out') {
      await page.keyboard.press(' ');
      await page.getByText('Help', { exact: true }).click();
      await nothingToMend(page, `${kind} flown`);
      await page.keyboard.press('f');
    } else {
      await page.keyboard.press('1');
    }
    await stage(page, 'explained');
    await nothingToMend(page, `${kind} explained`);
  }
});
