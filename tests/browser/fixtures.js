// The `test` of every spec here. Each test fails, whatever else it checks, when the page asked
// anything of another origin, or of its own origin outside its folder, or reported an error.

import { test as base, expect } from '@playwright/test';

export { expect };

// Waits for a fault that a test provoked, and takes the faults so far as looked at.
export async function found(faults, words) {
  await expect.poll(() => faults.join('\n')).toContain(words);
  faults.length = 0;
}

export const test = base.extend({
  // What went wrong unseen. A test that provokes a fault looks for it by `found`.
  faults: [
    async ({ context, baseURL }, use) => {
      const faults = [];
      const isOurs = (url) => url.startsWith(baseURL) || /^(blob|data):/.test(url);

      await context.route('**/*', async (route) => {
        const url = route.request().url();
        if (isOurs(url)) return route.fallback();
        faults.push(`the page asked for ${url}`);
        return route.abort('blockedbyclient');
      });
      await context.routeWebSocket(/.*/, (socket) => {
        faults.push(`the page opened a socket to ${socket.url()}`);
        return socket.close();
      });
      context.on('response', (response) => {
        if (response.status() >= 400) faults.push(`${response.status()} for ${response.url()}`);
      });
      context.on('console', (message) => {
        if (message.type() === 'error') faults.push(`console: ${message.text()}`);
      });
      context.on('weberror', (error) => faults.push(`error: ${error.error()}`));

      await use(faults);
      expect(faults, 'faults that no check looked for').toEqual([]);
    },
    { auto: true },
  ],

  // Opens the page and waits until the app runs.
  open: async ({ page }, use) => {
    await use(async (address = './') => {
      await page.goto(address);
      await expect(page.locator('html')).toHaveAttribute('data-ready', 'true');
    });
  },
});
