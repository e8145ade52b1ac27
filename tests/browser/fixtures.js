// The `test` of every spec here. Each test fails, whatever else it checks, when the page asked
// anything of another origin, or of its own origin outside its folder, or reported an error.

import { test as base, expect } from '@playwright/test';

export { expect };

// Waits for a fault that a test provoked, and takes the faults so far as looked at.
export async function found(faults, words) {
  await expect.poll(() => faults.join('\n')).toContain(words);
  faults.length = 0;
}

// Draws every fourth frame only, about fifteen a second. What is drawn is the same, and two pages on
// two cores leave time for what is tested; `cargo xtask measure` looks at the frames themselves.
function thinFrames() {
  const [ask, cancel] = [requestAnimationFrame, cancelAnimationFrame].map((call) => call.bind(window));
  const waiting = new Map();
  let asked = 0;
  window.requestAnimationFrame = (draw) => {
    const id = (asked += 1);
    const wait = (frames) =>
      waiting.set(
        id,
        ask((now) => {
          if (frames > 1) return wait(frames - 1);
          waiting.delete(id);
          return draw(now);
        }),
      );
    wait(4);
    return id;
  };
  window.cancelAnimationFrame = (id) => {
    cancel(waiting.get(id));
    waiting.delete(id);
  };
}

export const test = base.extend({
  // What went wrong unseen. A test that provokes a fault looks for it by `found`.
  faults: [
    async ({ context, baseURL }, use) => {
      const faults = [];
      const isOurs = (url) => url.startsWith(baseURL) || /^(blob|data):/.test(url);

      // No host but this one is found (playwright.config.js), so such a request is only noted.
      context.on('request', (request) => {
        if (!isOurs(request.url())) faults.push(`the page asked for ${request.url()}`);
      });
      await context.routeWebSocket(/.*/, (socket) => {
        faults.push(`the page opened a socket to ${socket.url()}`);
        return socket.close();
      });
      await context.addInitScript(thinFrames);
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
