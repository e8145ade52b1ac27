// Why the card does what it does: the sentence, the bowl and the torques.

import { nothingToMend } from './axe.js';
import { expect, test } from './fixtures.js';
import { begin, hurry, press, read, rightOf, until } from './flying.js';
import { across } from './fits.js';

const sentence = (page) => page.locator('#why-sentence');

for (const [latitude, wing, does] of [
  [52, 'low', 'lags'],
  [-35, 'high', 'leads'],
]) {
  test(`at ${latitude}° the sentence names the wing and agrees with the figures`, async ({ open, page }) => {
    await open();
    await begin(page, { latitude, heading: 300 });
    await press(page, 'w');
    await expect(sentence(page)).toHaveText('Nothing turns the card: the compass agrees.');
    await hurry(page);
    await press(page, 'ArrowRight', 3);
    await until(page, ({ heading }) => Math.abs(rightOf(heading, 0)) < 10);
    // A step pauses, whatever has the focus.
    await press(page, '.');
    const { difference } = await read(page);
    expect(difference).toMatch(new RegExp(`^${does} by`));
    await expect(sentence(page)).toHaveText(
      `The vertical field, through 15° of bank, pulls the north mark toward the ${wing} wing: the card ${difference}.`,
    );
  });
}

test('the bowl turns by drag and by button, and its parts switch off', async ({ open, page }) => {
  await open();
  await press(page, ' ');
  await page.getByRole('button', { name: /^Why/ }).click();
  const bowl = page.locator('#bowl canvas');
  const picture = () => bowl.evaluate((canvas) => canvas.toDataURL());
  await expect(page.getByRole('button', { name: 'Corner' })).toHaveAttribute('aria-pressed', 'true');
  const corner = await picture();

  const box = await bowl.boundingBox();
  const middle = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(...middle);
  await page.mouse.down();
  await page.mouse.move(middle[0] + 60, middle[1], { steps: 4 });
  await page.mouse.up();
  await expect.poll(picture).not.toBe(corner);
  await page.getByRole('button', { name: 'Corner' }).click();
  await expect.poll(picture).toBe(corner);

  await page.getByText('Shown in the picture').click();
  await page.getByRole('checkbox', { name: 'Bowl' }).uncheck();
  await expect.poll(picture).not.toBe(corner);
});

for (const viewport of [{ width: 1280, height: 720 }, { width: 390, height: 844 }]) {
  test.describe(`at ${viewport.width}`, () => {
    test.use({ viewport });
    test('the reasons bar nobody', async ({ open, page }) => {
      await open();
      await press(page, 'w');
      await expect(page.locator('#ledger canvas')).toHaveAttribute('aria-label', /net/);
      await nothingToMend(page);
      expect(await across(page)).toBe(0);
    });
  });
}
