// What stands beside the card, and the chart against heading.

import { holdInTurnThroughNorth, press, rightOf, until } from './flying.js';
import { nothingToMend } from './axe.js';
import { expect, test } from './fixtures.js';

const dial = async (page) => {
  const label = await page.getByRole('img', { name: /^Heading indicator/ }).getAttribute('aria-label');
  return Number.parseInt(/: (\d{3})°/.exec(label)[1], 10);
};

test('a key goes through rose, track and indicator, and the choice is remembered', async ({ open, page }) => {
  await open();
  const picture = (name) => page.getByRole('img', { name });
  await expect(picture(/^Rose from above/)).toBeVisible();
  await press(page, 'a');
  await expect(picture(/^Track from above, magnetic north up/)).toBeVisible();
  await press(page, 'a');
  await expect(picture(/^Heading indicator/)).toBeVisible();
  await page.reload();
  await expect(page.locator('html')).toHaveAttribute('data-ready', 'true');
  await expect(picture(/^Heading indicator/)).toBeVisible();
  await page.getByRole('button', { name: 'Track', exact: true }).click();
  await expect(picture(/^Track from above/)).toBeVisible();
  await press(page, 'a', 2);
  await expect(picture(/^Rose from above/)).toBeVisible();
});

test('an indicator set while the card swings keeps the error it took over', async ({ open, page }) => {
  await open();
  await press(page, 'a', 2);
  const swung = await holdInTurnThroughNorth(page);
  const error = page.locator('#indicator-error');
  await expect(error).toHaveText('Shows the real heading.');
  await press(page, 'i');
  const taken = Math.round(rightOf(swung.compass, swung.heading));
  expect(taken).toBeLessThan(-10);
  // Each of the figures is rounded by itself, and the Earth turns on by tenths of a degree.
  const less = new RegExp(`^Shows (${[-1, 0, 1].map((by) => by - taken).join('|')})° less than the real heading\\.$`);
  await expect(error).toHaveText(less);

  // Wings level, the card settles; the indicator goes on wrong.
  await press(page, 'l');
  await press(page, ' ');
  await until(page, ({ bank, difference }) => Math.abs(bank) < 1 && difference === 'agrees');
  await press(page, ' ');
  await expect(error).toHaveText(less);

  // Looked back at the start, it shows what it showed then.
  await press(page, 'Home');
  await expect(error).toHaveText('Shows the real heading.');
  // Said at most once a second.
  await expect.poll(async () => Math.abs(rightOf(await dial(page), 330))).toBeLessThanOrEqual(1);
  await press(page, 'End');
  await expect(error).toHaveText(less);
});

test('the track shows both rays, and true north where the variation is known', async ({ open, page }) => {
  await open();
  await press(page, 'a');
  const now = await holdInTurnThroughNorth(page);
  const track = page.locator('#track canvas');
  await expect(track).toHaveAttribute(
    'aria-label',
    new RegExp(`Ray of the heading ${now.figures.heading}, ray of the compass ${now.figures.compass}`),
  );
  await expect(track).not.toHaveAttribute('aria-label', /True north/);
  await press(page, 's');
  await page.getByRole('radio', { name: 'Place, date' }).check();
  await page.getByRole('button', { name: 'Start a new flight' }).click();
  await expect(track).toHaveAttribute('aria-label', /True north lies \d+° (left|right) of magnetic north\./);
});

test('errors against heading are read off by key and by pointer', async ({ open, page }) => {
  await open();
  await press(page, 'g');
  await press(page, 'e');
  await expect(page.locator('#errors-caption')).toHaveText('Turn, or change speed: the errors are drawn here.');
  await holdInTurnThroughNorth(page);
  await expect(page.locator('#errors-caption')).toContainText('Right turn');
  const chart = page.getByRole('slider', { name: 'Heading to read the errors on' });
  await chart.focus();
  await press(page, 'Home');
  await expect(chart).toHaveAttribute('aria-valuenow', '0');
  // On north the rule of thumb is the latitude.
  await expect(chart).toHaveAttribute('aria-valuetext', /rule of thumb[^,.;]*50°/i);
  await press(page, 'ArrowRight', 2);
  await expect(chart).toHaveAttribute('aria-valuenow', '10');
  const box = await chart.boundingBox();
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await expect(chart).not.toHaveAttribute('aria-valuenow', '10');
  await press(page, 'e');
  await expect(chart).toHaveCount(0);
});

test('track, indicator and errors bar nobody', async ({ open, page }) => {
  await open();
  await press(page, 'g');
  await press(page, 'e');
  await press(page, ' ');
  for (const [width, height] of [[1280, 720], [390, 844]]) {
    await page.setViewportSize({ width, height });
    for (let view = 0; view < 2; view += 1) {
      await press(page, 'a');
      const across = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(across).toBe(width);
      await nothingToMend(page);
    }
  }
});
