// After the first visit the page works without a network.

import { expect, found, test } from './fixtures.js';

test.use({ serviceWorkers: 'allow' });

// Runs in the page: the names of the caches, and the addresses in them.
const kept = async () => {
  await navigator.serviceWorker.ready;
  const names = await caches.keys();
  const requests = await Promise.all(
    names.map(async (name) => (await caches.open(name)).keys()));
  return { names, addresses: requests.flat().map((request) => request.url) };
};

test('the page starts again without a network', async ({ context, faults, open, page }) => {
  await open();
  await page.evaluate(() => navigator.serviceWorker.ready);
  await context.setOffline(true);
  const network = () => fetch('./fonts/OFL.txt').then(() => true, () => false);
  expect(await page.evaluate(network)).toBe(false);
  await found(faults, 'ERR_INTERNET_DISCONNECTED');
  await open();
});

test('one build is kept, whole, from the page\'s own folder', async ({ baseURL, open, page }) => {
  await open();
  const { names, addresses } = await page.evaluate(kept);
  expect(names).toHaveLength(1);
  expect(addresses).toContain(baseURL);
  for (const kind of ['js', 'wasm', 'css', 'woff2', 'svg', 'webmanifest']) {
    const hashed = new RegExp(`-[0-9a-f]{16}\\.${kind}$`);
    expect(addresses.filter((address) => hashed.test(address)), kind).not.toHaveLength(0);
  }
  expect(addresses.filter((address) => !address.startsWith(baseURL))).toEqual([]);
});

test('an older build goes, and what others keep stays', async ({ baseURL, open, page }) => {
  await open();
  await page.evaluate(async (base) => {
    await navigator.serviceWorker.ready;
    const registration = await navigator.serviceWorker.getRegistration();
    await registration.unregister();
    await caches.open(`dipwise ${base} older`);
    await caches.open('of another page');
  }, baseURL);
  await open();
  const names = () => page.evaluate(() => caches.keys());
  await expect.poll(names).not.toContain(`dipwise ${baseURL} older`);
  expect(await names()).toContain('of another page');
});
