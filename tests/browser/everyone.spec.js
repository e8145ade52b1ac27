// For everyone: colours of the system, large text, spaced-out text, no motion.

import { nothingToMend } from './axe.js';
import { expect, test } from './fixtures.js';
import { press } from './flying.js';
import { across } from './fits.js';

for (const colorScheme of ['light', 'dark']) {
  test.describe(`in the system's own ${colorScheme} colours`, () => {
    test.use({ colorScheme, contextOptions: { forcedColors: 'active' } });

    test('pictures keep a ground to be seen on, and what is pressed shows', async ({ open, page }) => {
      await open();
      await press(page, 'g');
      await press(page, 'w');
      for (const id of ['card', 'strips', 'bowl', 'ledger']) {
        const style = await page.locator(`#${id}`).evaluate((it) => {
          const { forcedColorAdjust, backgroundColor } = getComputedStyle(it);
          return { forcedColorAdjust, backgroundColor };
        });
        expect(style.forcedColorAdjust).toBe('none');
        expect(style.backgroundColor).toBe(
          colorScheme === 'light' ? 'rgb(250, 246, 238)' : 'rgb(27, 32, 38)',
        );
      }
      const ground = (name) =>
        page.getByRole('button', { name }).evaluate((it) => getComputedStyle(it).backgroundColor);
      expect(await ground('Corner')).not.toBe(await ground('Behind'));
      for (const button of await page.locator('button:visible').all()) {
        expect(await button.evaluate((it) => Number.parseFloat(getComputedStyle(it).borderTopWidth)))
          .toBeGreaterThan(0);
      }
      await nothingToMend(page);
    });
  });
}

for (const viewport of [{ width: 640, height: 360 }, { width: 960, height: 540 }, { width: 320, height: 568 }]) {
  test.describe(`enlarged to ${viewport.width}×${viewport.height}`, () => {
    test.use({ viewport, deviceScaleFactor: 2 });

    test('everything is reached by scrolling one way', async ({ open, page }) => {
      await open();
      for (const key of ['g', '?', 's', 'w', 'h', 'h', 'h']) {
        await press(page, key);
        expect(await across(page), `after ${key}`).toBe(0);
      }
      await press(page, ' ');
      expect(await across(page), 'paused').toBe(0);
      // The button that tells is seen only while the keyboard is on it.
      for (const button of await page.locator('button:not(.tell, [aria-disabled=true]):visible').all()) {
        await button.scrollIntoViewIfNeeded();
        // Its middle can be clicked: nothing lies over it or cuts it off.
        await button.click({ trial: true });
      }
      await press(page, 'p');
      expect(await across(page), 'presenting').toBe(0);
      for (const id of ['compass', 'heading', 'card', 'difference', 'advance']) {
        await expect(page.locator(`#${id}`)).toBeInViewport({ ratio: 1 });
      }
    });
  });
}

for (const viewport of [{ width: 1280, height: 720 }, { width: 390, height: 844 }]) {
  test.describe(`spaced-out text at ${viewport.width}`, () => {
    test.use({ viewport });

    // WCAG 2.2, 1.4.12.
    test('loses nothing', async ({ open, page }) => {
      await open();
      await page.evaluate(() => {
        const sheet = new CSSStyleSheet();
        sheet.replaceSync(`
          * { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; }
          p { margin-bottom: 2em !important; }
        `);
        document.adoptedStyleSheets = [sheet];
      });
      expect(await across(page)).toBe(0);
      const cut = await page.evaluate(() =>
        [...document.querySelectorAll('.desk button, .page-buttons button:not(.tell), .value-text, .difference')]
          .filter((it) => it.scrollWidth > it.clientWidth + 1 && getComputedStyle(it).display !== 'inline')
          .map((it) => it.textContent));
      expect(cut).toEqual([]);
      const card = await page.locator('#card').boundingBox();
      expect(Math.min(card.width, card.height)).toBeGreaterThan(120);
      for (const id of ['compass', 'heading', 'difference']) {
        await expect(page.locator(`#${id}`)).toBeInViewport({ ratio: 1 });
      }
    });
  });
}

test.describe('for those who ask for less motion', () => {
  test.use({ contextOptions: { reducedMotion: 'reduce' } });

  test('nothing moves but what flies', async ({ open, page }) => {
    await open();
    await press(page, 'g');
    await press(page, 'w');
    await press(page, 'p');
    await press(page, 'p');
    await press(page, ' ');
    const moving = await page.evaluate(() => {
      const styled = [...document.querySelectorAll('*')].filter((it) => {
        const style = getComputedStyle(it);
        const lasts = (list) => list.split(',').some((time) => Number.parseFloat(time) > 0);
        return lasts(style.transitionDuration) || lasts(style.animationDuration);
      });
      return [styled.length, document.getAnimations().length];
    });
    expect(moving).toEqual([0, 0]);
  });
});
