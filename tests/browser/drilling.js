// How a task is put and flown: what the specs of drills share.

import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { expect } from './fixtures.js';

// The program, set by `cargo xtask test browser`.
const { DIPWISE } = process.env;

const run = promisify(execFile);
export const SEED = 7;

export const play = (page) => page.locator('.play');
export const stage = (page, name) =>
  expect(play(page)).toHaveAttribute('data-stage', name);
export const address = (kind, more = 'level=1&tol=10') =>
  `drills.html#practise?kind=${kind}&seed=${SEED}&${more}`;

// The same task as the program gives it.
export async function task(kind, ...more) {
  expect(DIPWISE, 'where the program is: run this by `cargo xtask test browser`').toBeTruthy();
  const { stdout } = await run(DIPWISE, [
    ...['drill', '--kind', kind, '--seed', String(SEED), '--level', '1', '--count', '1'],
    ...['--format', 'json', ...more],
  ]);
  return JSON.parse(stdout)[0];
}

export async function put(open, page, kind) {
  await open(address(kind));
  await stage(page, 'asked');
  const asked = await task(kind);
  await expect(page.locator('#question')).toHaveText(asked.question);
  return asked;
}

// From now on the page's clock stands unless it is told to go on.
export async function stopClock(page) {
  const now = await page.evaluate(() => Date.now());
  await page.clock.pauseAt(now + 1000);
}

// Lets the page's own clock go on, frame by frame, so that a flight of minutes takes seconds.
export async function goOn(page, seconds) {
  for (let gone = 0; gone < seconds - 1e-6; gone += 0.5) {
    await page.clock.fastForward(Math.min(500, Math.round(1000 * (seconds - gone))));
  }
}

// As steep a bank is asked for, in whole degrees.
const steepness = (bank) => Math.round(Math.abs(bank));
export const isAsked = (page, bank) =>
  expect(page.locator('.instruments')).toContainText(`asked: ${steepness(bank)}°`);

// Banks by the keyboard, from level to whole degrees, right positive.
export async function bankTo(page, bank) {
  const key = bank < 0 ? 'ArrowLeft' : 'ArrowRight';
  const steep = steepness(bank);
  for (let by = 0; by < Math.floor(steep / 5); by += 1) await page.keyboard.press(key);
  for (let by = 0; by < steep % 5; by += 1) await page.keyboard.press(`Shift+${key}`);
  await isAsked(page, bank);
}

// Flies on until the card, in a turn to that side, comes to a reading: what a screen reader is told.
export async function untilRead(page, reading, bank) {
  const past = async () => {
    await page.keyboard.press('t');
    const told = await page.locator('.play > [role=status]').textContent();
    const read = Number(/Compass (\d{3})/.exec(told)[1]);
    return Math.sign(bank) * (((read - reading + 540) % 360) - 180);
  };
  for (let at = 0; at < 200 && !((await past()) >= -0.5 && (await past()) < 45); at += 1) {
    await goOn(page, 0.5);
  }
}
