// Two at once: the same flight in another situation beside this one.

import { holdInTurnThroughNorth, press, rightOf } from './flying.js';
import { nothingToMend } from './axe.js';
import { expect, test } from './fixtures.js';

const other = async (page) =>
  Number.parseInt(await page.locator('#other-compass').textContent(), 10);

test('the other hemisphere leads where this one lags, also when it is asked late', async ({ open, page }) => {
  await open();
  const now = await holdInTurnThroughNorth(page);
  expect(now.difference).toMatch(/^lags/);
  await press(page, 'y');
  await expect(page.locator('#other-difference')).toHaveText(/^leads by \d+°$/);
  await expect(page.locator('#other-dip')).toHaveText(/up$/);

  // What is said of the two is what is shown of the two.
  const compass = Number.parseInt(now.figures.compass, 10);
  const apart = Math.abs(rightOf(await other(page), compass));
  await expect(page.locator('#apart')).toHaveText(`compasses ${apart}° apart`);

  // Looking back looks at both; at the start both agree.
  await press(page, 'Home');
  await expect(page.locator('#apart')).toHaveText(/^(both compasses alike|compasses 1° apart)$/);
  await press(page, 'End');
  await expect(page.locator('#apart')).toHaveText(`compasses ${apart}° apart`);
  await press(page, 'y');
  await expect(page.locator('#beside')).toHaveCount(0);
});

test('each change of the list is flown at once', async ({ open, page }) => {
  await open();
  await holdInTurnThroughNorth(page);
  await press(page, 'y');
  const list = page.getByLabel('There', { exact: true });

  await list.selectOption({ label: 'Another latitude' });
  await expect(page.getByRole('slider', { name: 'Latitude there' })).toBeVisible();
  await expect(page.locator('#other-dip')).toHaveText('Dip 0.0° down');
  const level = await other(page);
  await page.getByRole('slider', { name: 'Latitude there' }).fill('80');
  await expect(page.locator('#other-dip')).toHaveText(/^Dip 8[45]\.\d° down$/);
  await expect.poll(() => other(page)).not.toBe(level);

  await list.selectOption({ label: 'No vertical field' });
  // As on the dip equator, but for the weaker field, in which the liquid drags the card further.
  await expect.poll(async () => Math.abs(rightOf(await other(page), level))).toBeLessThanOrEqual(5);
  for (const label of ['No swirl in the liquid', 'Iron put in or taken out', 'Sluggish float']) {
    const before = await other(page);
    await list.selectOption({ label });
    await expect.poll(() => other(page)).not.toBe(before);
  }
});

test('two at once bar nobody', async ({ open, page }) => {
  await open();
  await press(page, 'y');
  await press(page, ' ');
  for (const [width, height] of [[1280, 720], [390, 844]]) {
    await page.setViewportSize({ width, height });
    const [wide, high] = await page.evaluate(() => {
      const { scrollWidth, scrollHeight } = document.documentElement;
      return [scrollWidth, scrollHeight];
    });
    expect(wide).toBe(width);
    if (width > 1000) expect(high).toBe(height);
    await nothingToMend(page);
  }
});
