// What fits a screen and a thumb: the one measure of every spec of either.

import { expect } from './fixtures.js';

// Each of the parts seen is at least 44 px wide and high (WCAG 2.2, 2.5.5: Target Size, enhanced),
// and so many at least are seen. The 0.1 px are what rounding to a device's pixels takes.
export async function fitAThumb(parts, atLeast = 2, told = '') {
  await expect.poll(() => parts.filter({ visible: true }).count(), { message: told }).toBeGreaterThanOrEqual(atLeast);
  for (const part of await parts.filter({ visible: true }).all()) {
    const box = await part.boundingBox();
    expect(Math.min(box.width, box.height), told).toBeGreaterThanOrEqual(43.9);
  }
}

// How many pixels of the page lie beyond the right edge. A phone shows all of a page that is too
// wide by showing it smaller, and `innerWidth` grows along: so the width that was laid out counts.
export const across = (page) =>
  page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    return scrollWidth - clientWidth;
  });
