// What the specs of flying share: reading the page in one go, and starting flights.

import { expect } from './fixtures.js';

// Everything the page shows of one instant. The data are in hundredths, the rest as seen.
export const read = (page) =>
  page.evaluate(() => {
    const data = document.getElementById('readings').dataset;
    const text = (id) => document.getElementById(id).textContent.trim();
    const numbers = ['time', 'heading', 'compass', 'bank', 'airspeed', 'tilt'];
    return {
      ...Object.fromEntries(numbers.map((name) => [name, Number(data[name])])),
      figures: { heading: text('heading'), compass: text('compass') },
      difference: text('difference'),
      doing: text('doing'),
    };
  });

// Waits until what is read passes, and gives it.
export async function until(page, passes) {
  let last;
  await expect
    .poll(async () => passes((last = await read(page))), { timeout: 20_000, intervals: [50] })
    .toBe(true);
  return last;
}

// Starts a flight at a latitude on a heading, then hands the keyboard back to the aircraft.
export async function begin(page, { latitude, heading }) {
  await page.keyboard.press('s');
  await page.getByRole('textbox', { name: 'Latitude' }).fill(String(latitude));
  await page.getByLabel('On heading').selectOption(String(heading));
  await page.getByRole('button', { name: 'Start a new flight' }).click();
  await page.locator('#situation').focus();
  await page.keyboard.press('s');
  await expect(page.getByRole('button', { name: 'Start a new flight' })).toBeHidden();
  // A button in focus would take the space bar for itself.
  await page.locator('#situation').blur();
}

export async function press(page, key, times = 1) {
  for (let i = 0; i < times; i += 1) await page.keyboard.press(key);
}

// Eight times as fast as real time.
export const hurry = (page) => press(page, '+', 3);

// How far a heading lies to the right of another, from −180 to 180.
export const rightOf = (heading, other) => ((heading - other + 540) % 360) - 180;

// A right turn through north at 50° N, held while the card lags.
export async function holdInTurnThroughNorth(page) {
  await begin(page, { latitude: 50, heading: 330 });
  await hurry(page);
  await press(page, 'ArrowRight', 3);
  await until(page, ({ heading }) => heading > 350 || heading < 60);
  await press(page, ' ');
  return read(page);
}

// Goes to another page by the list of pages, which stands in a line where there is room.
export async function toPage(page, name) {
  const list = page.getByRole('button', { name: 'Pages', exact: true });
  if (await list.isVisible()) await list.click();
  await page.getByRole('navigation', { name: 'Pages' }).getByRole('link', { name }).click();
}
