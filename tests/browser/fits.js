// What fits a screen and a thumb: the one measure of every spec of either.

import { expect } from './fixtures.js';

// Each of the parts seen is at least 44 px wide and high (WCAG 2.2, 2.5.5: Target Size, enhanced),
// and so many at least are seen. The 0.1 px are what rounding to a device's pixels takes.
export async function fitAThumb(parts, atLeast = 2, told = '') {
  await expect(async () => {
    // All in one go: what is shown may change while it is looked at.
    const sizes = await parts.evaluateAll((all) =>
      all
        .filter((part) => part.checkVisibility({ visibilityProperty: true }))
        .map((part) => part.getBoundingClientRect())
        .filter(({ width, height }) => width > 0 && height > 0)
        .map(({ width, height }) => Math.min(width, height)),
    );
    expect(sizes.length, told).toBeGreaterThanOrEqual(atLeast);
    expect(Math.min(...sizes), told).toBeGreaterThanOrEqual(43.9);
  }).toPass({ timeout: 20_000 });
}

// How many pixels of the page lie beyond the right edge. A phone shows all of a page that is too
// wide by showing it smaller, and `innerWidth` grows along: so the width that was laid out counts.
export const across = (page) =>
  page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    return scrollWidth - clientWidth;
  });
