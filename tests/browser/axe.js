// What axe finds to mend on a page, in both of its colours.

import AxeBuilder from '@axe-core/playwright';
import { expect } from './fixtures.js';

// The page as it stands: by every rule in the colours it has, then by contrast alone in its others,
// since nothing else differs there.
export async function nothingToMend(page, what = '') {
  expect(await violations(page), what).toEqual([]);
  // Where the system has its own colours, the page has no others.
  if (await page.evaluate(() => matchMedia('(forced-colors: active)').matches)) return;
  const own = await colours(page);
  const other = own === 'night' ? 'day' : 'night';
  await colours(page, other);
  expect(await violations(page, ['color-contrast']), `${what}, by ${other}`).toEqual([]);
  await colours(page, own);
}

async function violations(page, rules) {
  const axe = new AxeBuilder({ page }).options({ resultTypes: ['violations'] });
  if (rules) axe.withRules(rules);
  // Without frames nothing has to be gathered in a page of its own, which would hide this one.
  axe.setLegacyMode(page.frames().length === 1);
  return (await axe.analyze()).violations;
}

// Gives the page the colours of day or night, as `web/src/light.rs` does, and waits out their
// transitions; tells which it has.
function colours(page, light) {
  return page.evaluate(async (asked) => {
    const { dataset } = document.documentElement;
    if (asked) dataset.light = asked;
    await Promise.allSettled(document.getAnimations().map(({ finished }) => finished));
    return dataset.light;
  }, light);
}
