// The page starts, from any folder of a static host, and asks nothing of anyone else.

import { nothingToMend } from './axe.js';
import { expect, found, test } from './fixtures.js';

test('the app starts and answers', async ({ open, page }) => {
  await open();
  await expect(page).toHaveTitle(/Dipwise/);
  await expect(page.getByRole('alert')).toBeHidden();
  await page.getByRole('button').first().press('Enter');
  await expect(page.getByRole('main')).toBeVisible();
});

test('a page that cannot start says so', async ({ faults, page }) => {
  await page.route('**/*.wasm', (route) => route.fulfill({ body: 'no module' }));
  await page.goto('./');
  await expect(page.getByRole('alert')).toContainText('could not start');
  await expect(page.locator('html')).toHaveAttribute('data-ready', 'false');
  await found(faults, 'CompileError');
});

test('the font of the page is its own', async ({ open, page }) => {
  await open();
  const loaded = () => [...document.fonts].filter((font) => font.status === 'loaded').length;
  await expect.poll(() => page.evaluate(loaded)).toBeGreaterThan(0);
});

test('the module comes compressed and may be kept', async ({ open, page }) => {
  const module = page.waitForResponse(/web_bg-[0-9a-f]{16}\.wasm$/);
  await open();
  const headers = await (await module).allHeaders();
  expect(headers).toMatchObject({
    'content-type': 'application/wasm',
    'content-encoding': 'br',
    'cache-control': 'public, max-age=31536000, immutable',
  });
});

test('no code from elsewhere runs in the page', async ({ faults, open, page }) => {
  await open();
  const ran = await page.evaluate(async () => {
    const script = document.createElement('script');
    script.textContent = 'window.ranInline = true;';
    document.head.append(script);
    await new Promise(requestAnimationFrame);
    return window.ranInline === true;
  });
  expect(ran).toBe(false);
  await found(faults, 'Content Security Policy');
});

test.describe('were the page to allow it', () => {
  test.use({ bypassCSP: true });

  test('a request to another origin is refused and found', async ({ faults, open, page }) => {
    await open();
    const answered = await page.evaluate(() =>
      fetch('http://elsewhere.example/data').then(() => true, () => false));
    expect(answered).toBe(false);
    await found(faults, 'the page asked for http://elsewhere.example/data');
  });
});

test('axe finds nothing to mend', async ({ open, page }) => {
  await open();
  await nothingToMend(page);
});
