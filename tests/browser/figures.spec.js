// Figures on the page are those of the simulation without a page: a flight flown by the keyboard,
// taken home, is flown again by `dipwise fly`.

import { execFile } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { promisify } from 'node:util';
import { expect, test } from './fixtures.js';
import { begin, hurry, press, read, rightOf, until } from './flying.js';

// The program, set by `cargo xtask test browser`.
const { DIPWISE } = process.env;
// The page's data are in hundredths, half of one off at most; the same of a degree is asked of
// every figure.
const WITHIN = 0.01;

async function takeHome(page, name) {
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name }).click(),
  ]);
  return { name: file.suggestedFilename(), path: await file.path() };
}

function rows(csv) {
  const [head, ...lines] = csv.trimEnd().split('\n');
  const names = head.split(',');
  return lines.map((line) =>
    Object.fromEntries(line.split(',').map((value, index) => [names[index], Number(value)])),
  );
}

// Flown in rough air with another float and every control used, so that everything that is taken
// home matters.
async function fly(page) {
  await press(page, 's');
  await page.locator('#air').selectOption('Moderate turbulence');
  await page.locator('#float').selectOption('Brisk');
  await page.locator('#situation').focus();
  await press(page, 's');
  await begin(page, { latitude: -35, heading: 330 });
  await page.evaluate(() => document.activeElement.blur());
  await press(page, 'g');
  await hurry(page);
  await press(page, 'ArrowRight', 4);
  await until(page, ({ time }) => time > 12);
  await press(page, 'ArrowUp', 3);
  await press(page, 'c', 2);
  await until(page, ({ time }) => time > 24);
  await press(page, 'x');
  await press(page, 'Shift+ArrowLeft', 3);
  await until(page, ({ time }) => time > 32);
  await press(page, 'l');
  await until(page, ({ time }) => time > 40);
  await press(page, ' ');
}

test('a flight taken home is flown again by the program with the same figures', async ({
  open,
  page,
}) => {
  expect(DIPWISE, 'where the program is: run this by `cargo xtask test browser`').toBeTruthy();
  await open();
  await fly(page);
  const flight = await takeHome(page, /^Flight/);
  expect(flight.name).toBe('dipwise-flight.json');
  const table = await takeHome(page, /^CSV/);
  const { stdout } = await promisify(execFile)(
    DIPWISE,
    ['fly', flight.path, '--every', '0.1'],
    { maxBuffer: 1e8 },
  );
  const flown = rows(stdout);

  // The page's own table, row by row.
  const shown = rows(await readFile(table.path, 'utf8'));
  expect(shown.length).toBeGreaterThan(400);
  expect(shown.some(({ error_deg }) => Math.abs(error_deg) > 10)).toBe(true);
  for (const [index, row] of shown.entries()) {
    const again = flown[index];
    expect(again.time_s).toBeCloseTo(row.time_s, 6);
    for (const name of ['heading_deg', 'reading_deg']) {
      expect(Math.abs(rightOf(again[name], row[name])), `${name} of row ${index}`).toBeLessThan(WITHIN);
    }
    for (const name of ['error_deg', 'bank_deg', 'airspeed_kt', 'rate_of_turn_deg_s']) {
      expect(Math.abs(again[name] - row[name]), `${name} of row ${index}`).toBeLessThan(WITHIN);
    }
  }

  // What stands on the page at times looked back at, tilt and rounded figures too.
  await press(page, 'Home');
  await page.getByRole('slider', { name: 'Time of flight' }).focus();
  for (const seconds of [0, 7, 9, 10, 10]) {
    await press(page, 'ArrowRight', seconds);
    const now = await read(page);
    const row = flown[Math.round(10 * now.time)];
    expect(now.time).toBeCloseTo(row.time_s, 2);
    expect(Math.abs(rightOf(now.heading, row.heading_deg))).toBeLessThan(WITHIN);
    expect(Math.abs(rightOf(now.compass, row.reading_deg))).toBeLessThan(WITHIN);
    expect(Math.abs(now.bank - row.bank_deg)).toBeLessThan(WITHIN);
    expect(Math.abs(now.tilt - row.tilt_deg)).toBeLessThan(WITHIN);
    expect(Math.abs(now.airspeed - row.airspeed_kt)).toBeLessThan(WITHIN);
    const spoken = (degrees) => `${String(Math.round(degrees) % 360 || 360).padStart(3, '0')}°`;
    expect(now.figures).toEqual({
      heading: spoken(row.heading_deg),
      compass: spoken(row.reading_deg),
    });
  }
});
