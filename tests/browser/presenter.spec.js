// Presenter mode, and what is covered so that a class can guess it.

import { nothingToMend } from './axe.js';
import { expect, test } from './fixtures.js';
import { hurry, press, read, until } from './flying.js';

const root = (page) => page.locator('html');

// A turn through north in which the card lags, held still.
async function lagging(page) {
  await hurry(page);
  await press(page, 'ArrowRight', 4);
  await until(page, ({ heading, difference }) => heading > 10 && heading < 90 && /^lags/.test(difference));
  await press(page, ' ');
}

for (const [width, height] of [[1920, 1080], [1280, 720], [390, 844]]) {
  test.describe(`presenting at ${width}×${height}`, () => {
    test.use({ viewport: { width, height } });

    test('figures are a twelfth of the screen and only the middle remains', async ({ open, page }) => {
      await open();
      await press(page, 'p');
      await expect(root(page)).toHaveAttribute('data-presenting');
      for (const id of ['compass', 'heading']) {
        const figure = page.locator(`#${id}`);
        const size = await figure.evaluate((it) => Number.parseFloat(getComputedStyle(it).fontSize));
        // Figures are two thirds of the size of their type.
        expect(0.67 * size).toBeGreaterThanOrEqual(height / 12);
        await expect(figure).toBeInViewport({ ratio: 1 });
      }
      for (const shown of ['#card', '#difference', '.caution', '.presenter-time']) {
        await expect(page.locator(shown)).toBeInViewport({ ratio: 1 });
      }
      for (const gone of ['#situation', '.desk', '#keys', '#light']) {
        await expect(page.locator(gone)).toBeHidden();
      }
      const over = await page.evaluate(() => {
        const { scrollHeight, scrollWidth } = document.documentElement;
        return { down: scrollHeight - innerHeight, across: scrollWidth - document.documentElement.clientWidth };
      });
      expect(over).toEqual({ down: 0, across: 0 });
    });
  });
}

for (const key of ['p', 'Escape']) {
  test(`${key} leaves presenter mode`, async ({ open, page }) => {
    // In full screen Escape goes to the browser, which then tells the page: here it is refused.
    await page.addInitScript(() => {
      Element.prototype.requestFullscreen = () => Promise.reject(new TypeError('refused'));
    });
    await open();
    await page.getByRole('button', { name: /^Present/ }).click();
    await expect(root(page)).toHaveAttribute('data-presenting');
    await press(page, key);
    await expect(root(page)).not.toHaveAttribute('data-presenting');
    await expect(page.locator('.desk')).toBeVisible();
  });
}

test('it fills the screen, and leaving gives the screen back', async ({ open, page }) => {
  await open();
  await press(page, 'p');
  const filled = () => page.evaluate(() => document.fullscreenElement !== null);
  await expect.poll(filled).toBe(true);
  await page.getByRole('button', { name: 'Leave presenter mode' }).click();
  await expect.poll(filled).toBe(false);
  await press(page, 'p');
  await expect.poll(filled).toBe(true);
  await page.evaluate(() => document.exitFullscreen());
  await expect(root(page)).not.toHaveAttribute('data-presenting');
});

test('a browser that refuses the screen presents all the same, and says so once', async ({ open, page }) => {
  await page.addInitScript(() => {
    Element.prototype.requestFullscreen = () => Promise.reject(new TypeError('refused'));
    Object.defineProperty(navigator, 'wakeLock', {
      value: { request: () => Promise.reject(new DOMException('refused', 'NotAllowedError')) },
    });
  });
  await open();
  await press(page, 'p');
  await expect(root(page)).toHaveAttribute('data-presenting');
  const told = page.locator('p[role=status].unseen');
  await expect(told).toContainText('may go dark');
  await press(page, 'Escape');
  await expect(told).toContainText('has ended');
  await press(page, 'p');
  await expect(told).toContainText('Escape leaves');
});

test('the screen is held awake while it runs, and asked for again after it was out of sight', async ({ open, page }) => {
  await page.addInitScript(() => {
    window.locks = [];
    Object.defineProperty(navigator, 'wakeLock', {
      value: {
        request: async (kind) => {
          window.locks.push(kind);
          return { release: async () => window.locks.push('released') };
        },
      },
    });
  });
  await open();
  await press(page, 'p');
  const locks = () => page.evaluate(() => window.locks.join(' '));
  await expect.poll(locks).toBe('screen');
  for (const state of ['hidden', 'visible']) {
    await page.evaluate((state) => {
      Object.defineProperty(document, 'visibilityState', { get: () => state, configurable: true });
      document.dispatchEvent(new Event('visibilitychange'));
    }, state);
    await expect.poll(locks).toBe(
      state === 'hidden' ? 'screen released' : 'screen released screen',
    );
  }
  await press(page, 'p');
  await expect.poll(locks).toBe('screen released screen released');
});

test('a slide clicker leads the lesson', async ({ open, page }) => {
  await open();
  await press(page, 'p');
  const compass = page.locator('#compass');
  await press(page, 'PageDown');
  await expect(page.locator('#doing')).toHaveText('Paused');
  await press(page, 'PageUp');
  await expect(compass).toHaveText(/Covered/);
  await press(page, 'PageUp');
  await expect(compass).toHaveText(/Covered/);
  await press(page, 'PageDown');
  await expect(compass).toHaveText('360°');
  await expect(page.locator('#doing')).toHaveText('Paused');
  await press(page, 'PageDown');
  await expect(page.locator('#doing')).toBeEmpty();

  const curtain = page.locator('#curtain');
  for (const key of ['.', 'b', 'PageDown']) {
    await press(page, '.');
    await expect(curtain).toBeVisible();
    // Nothing behind it is read out.
    await expect(page.locator('main')).toHaveAttribute('inert');
    await press(page, key);
    await expect(curtain).toBeHidden();
    await expect(page.locator('main')).not.toHaveAttribute('inert');
  }
  await press(page, '.');
  await curtain.click();
  await expect(curtain).toBeHidden();

  // The keys are listed where they are needed.
  await press(page, '?');
  await expect(page.locator('.presenter-keys')).toContainText('Page Down');
});

test('a clicker works without the keys that fly, and with the chart in focus', async ({ open, page }) => {
  await page.addInitScript(() => localStorage.setItem('dipwise.keys-fly', 'false'));
  await open();
  await page.getByRole('button', { name: 'Timeline' }).click();
  await page.getByRole('button', { name: /^Present/ }).click();
  await page.getByRole('slider', { name: 'Time of flight' }).focus();
  await press(page, 'PageUp');
  await expect(page.locator('#compass')).toHaveText(/Covered/);
  await press(page, 'PageDown');
  await expect(page.locator('#compass')).toHaveText('360°');
  await press(page, 'ArrowRight', 1);
  await press(page, 'Escape');
  await expect(page.locator('#bank')).toHaveText('level');
});

test('without presenter mode its keys mean what they always mean', async ({ open, page }) => {
  await open();
  await press(page, 'PageUp');
  await press(page, 'Escape');
  await press(page, '.');
  await expect(page.locator('#curtain')).toHaveCount(0);
  await expect(page.locator('#doing')).toHaveText('Paused');
  await expect(page.locator('#compass')).toHaveText('360°');
});

test('the pointer follows and rests unseen', async ({ open, page }) => {
  await page.clock.install();
  await open();
  const pointer = page.locator('#pointer');
  await page.mouse.move(100, 100);
  await expect(pointer).toHaveCount(0);
  await press(page, 'p');
  await page.mouse.move(400, 300);
  await expect(pointer).toBeVisible();
  const box = await pointer.boundingBox();
  expect(box.x + box.width / 2).toBeCloseTo(400, 0);
  expect(box.y + box.height / 2).toBeCloseTo(300, 0);
  expect(box.width).toBeGreaterThanOrEqual(56);
  await page.clock.runFor(3100);
  await expect(pointer).toBeHidden();
  await page.mouse.move(500, 300);
  await expect(pointer).toBeVisible();
});

test('H covers compass, heading, nothing; the buttons cover one', async ({ open, page }) => {
  await open();
  const [compass, heading] = [page.locator('#compass'), page.locator('#heading')];
  await press(page, 'h');
  await expect(compass).toHaveText(/Covered/);
  await expect(heading).toHaveText(/°/);
  await press(page, 'h');
  await expect(compass).toHaveText(/°/);
  await expect(heading).toHaveText(/Covered/);
  await press(page, 'h');
  await expect(heading).toHaveText(/°/);
  const button = page.getByRole('button', { name: 'Cover the compass' });
  await button.click();
  await expect(button).toHaveAttribute('aria-pressed', 'true');
  await expect(compass).toHaveText(/Covered/);
  await page.getByRole('button', { name: 'Cover the magnetic heading' }).click();
  await expect(compass).toHaveText(/°/);
  await expect(heading).toHaveText(/Covered/);
  await page.getByRole('button', { name: 'Cover the magnetic heading' }).click();
  await expect(heading).toHaveText(/°/);
});

for (const [what, presses] of [['compass', 1], ['heading', 2]]) {
  test(`what is covered is told nowhere: ${what}`, async ({ open, page }) => {
    await open();
    await press(page, 'g');
    await lagging(page);
    await press(page, 't');
    const shown = await read(page);
    const [answer] = shown.figures[what].match(/\d{3}/);
    const [error] = shown.difference.match(/\d+/);
    await press(page, 'w');
    await press(page, 'h', presses);
    await press(page, 't');
    await expect(page.locator('p[role=status].unseen')).toContainText('covered');

    const data = await page.locator('#readings').evaluate((it) => ({ ...it.dataset }));
    expect(data[what]).toBeUndefined();
    // Whatever a screen reader meets on the page, and whatever is seen as text.
    const tree = await page.locator('body').ariaSnapshot();
    const text = await page.locator('body').innerText();
    for (const told of [tree, text]) {
      expect(told).toContain('overed');
      expect(told).not.toContain(`${answer}°`);
      expect(told).not.toMatch(new RegExp(`\\b(lags|leads|less|more)( by)? ?${error}°`));
      expect(told).not.toContain(`by ${error}°`);
    }
    await expect(page.getByRole('slider', { name: 'Time of flight' })).toHaveCount(0);
    await expect(page.locator('#why-sentence')).toHaveCount(0);

    // An event is not named: its name says how the card errs.
    await press(page, '[');
    await expect(page.locator('p[role=status].unseen')).not.toContainText(/lag|lead/);
    await press(page, 'End');

    await press(page, 'h', 3 - presses);
    await expect.poll(async () => (await read(page)).difference).toBe(shown.difference);
    await expect(page.locator('#why-sentence')).toBeVisible();
  });
}

test('what is covered is drawn in neither picture', async ({ open, page }) => {
  await open();
  await lagging(page);
  // Neither hue of the compass is left; the heading's is.
  const hues = (id) =>
    page.locator(`#${id} canvas`).evaluate((canvas) => {
      const { data } = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height);
      let [blue, vermilion] = [0, 0];
      for (let i = 0; i < data.length; i += 4) {
        const [r, g, b, a] = data.subarray(i, i + 4);
        if (a > 200 && b - r > 100) blue += 1;
        if (a > 200 && r - b > 100) vermilion += 1;
      }
      return { blue: blue > 0, vermilion: vermilion > 0 };
    });
  for (const [blue, vermilion] of [[true, true], [true, false], [false, true]]) {
    await expect.poll(() => hues('rose')).toEqual({ blue, vermilion });
    // The card itself is the compass; with the heading covered no error is marked on it.
    await expect.poll(() => hues('card')).toEqual({ blue, vermilion: vermilion && blue });
    await press(page, 'h');
  }
});

test('presenter mode bars nobody', async ({ open, page }) => {
  await open();
  await press(page, 'g');
  await press(page, 'p');
  await expect(root(page)).toHaveAttribute('data-presenting');
  await nothingToMend(page);
  await press(page, 'PageUp');
  await press(page, '?');
  await nothingToMend(page);
  await press(page, '.');
  await expect(page.locator('#curtain')).toBeVisible();
  await nothingToMend(page);
});

test('covers bar nobody', async ({ open, page }) => {
  await open();
  await press(page, 'w');
  await press(page, 'g');
  for (let turn = 0; turn < 2; turn += 1) {
    await press(page, 'h');
    await expect(page.locator('.why-covered .cover-word')).toBeVisible();
    await nothingToMend(page);
  }
});
