// What a thumb can hit, the one measure of every spec of touch.

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
