// The page itself: it fits, it serves everyone, it remembers, and it sleeps without losing time.

import { nothingToMend } from './axe.js';
import { expect, test } from './fixtures.js';
import { press, read, until } from './flying.js';
import { fitAThumb } from './fits.js';

const overflow = (page) =>
  page.evaluate(() => {
    const { scrollHeight, scrollWidth } = document.documentElement;
    return { down: scrollHeight - innerHeight, across: scrollWidth - document.documentElement.clientWidth };
  });

for (const [width, height] of [[1280, 720], [1920, 1080]]) {
  test.describe(`at ${width}×${height}`, () => {
    test.use({ viewport: { width, height } });

    test('the page fits without scrolling, whatever is unfolded', async ({ open, page }) => {
      await open();
      expect(await overflow(page)).toEqual({ down: 0, across: 0 });
      await press(page, 's');
      await page.getByRole('radio', { name: 'Place, date' }).check();
      expect(await overflow(page)).toEqual({ down: 0, across: 0 });
      await expect(page.getByRole('button', { name: 'Start a new flight' })).toBeInViewport();
    });

    test('the readings stand on the lubber line and are large', async ({ open, page }) => {
      await open();
      for (const id of ['compass', 'heading']) {
        const box = await page.locator(`#${id}`).boundingBox();
        expect(box.x + box.width / 2).toBeCloseTo(width / 2, -0.5);
        const size = await page
          .locator(`#${id}`)
          .evaluate((element) => Number.parseFloat(getComputedStyle(element).fontSize));
        // Figures are two thirds of the size of their type.
        expect(0.67 * size).toBeGreaterThanOrEqual(height / 20);
      }
      const card = await page.locator('#card').boundingBox();
      expect(card.x + card.width / 2).toBeCloseTo(width / 2, -0.5);
    });
  });
}

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('is flown by touch within the first view', async ({ open, page }) => {
    await open();
    expect((await overflow(page)).across).toBe(0);
    const button = (name) => page.getByRole('button', { name });
    for (const shown of [
      page.locator('#card'),
      page.locator('#compass'),
      page.locator('#heading'),
      button(/^Left: bank/),
      button(/^Right: bank/),
      button('Level the wings'),
      button('Faster by 5 knots'),
      button('Pause the flight'),
    ]) {
      await expect(shown).toBeInViewport({ ratio: 1 });
    }
    await button(/^2× motion/).tap();
    await button(/^Right: bank/).tap();
    await button(/^Right: bank/).tap();
    await expect(page.locator('#bank')).toHaveText('10° right');
    await button('Level the wings').tap();
    await expect(page.locator('#bank')).toHaveText('level');
    for (let tap = 0; tap < 3; tap += 1) await button(/^Right: bank/).tap();
    await expect(page.getByText('standard rate')).toBeVisible();
    expect((await overflow(page)).across).toBe(0);
    await button('Pause the flight').tap();
    await expect(page.locator('#doing')).toHaveText('Paused');
  });

  test('buttons are large enough for a thumb', async ({ open, page }) => {
    await open();
    await fitAThumb(page.locator('.desk button'));
  });

  test('card and rose take turns', async ({ open, page }) => {
    await open();
    await expect(page.locator('#rose')).toBeHidden();
    await page.getByRole('button', { name: 'Rose: show it large' }).tap();
    await expect(page.locator('#rose')).toBeVisible();
    await expect(page.locator('#card')).toBeHidden();
  });

  test('the place is set by touch without sideways scrolling', async ({ open, page }) => {
    await open();
    await page.locator('#situation').tap();
    await page.getByRole('radio', { name: 'Place, date' }).check();
    expect((await overflow(page)).across).toBe(0);
    await page.getByRole('button', { name: 'Start a new flight' }).tap();
    await expect(page.locator('#true-heading')).toContainText('True');
  });
});

for (const [colorScheme, light] of [['light', 'day'], ['dark', 'night']]) {
  test.describe(`in ${colorScheme} colours`, () => {
    test.use({ colorScheme });

    test('the page has them too', async ({ open, page }) => {
      await open();
      await expect(page.locator('html')).toHaveAttribute('data-light', light);
    });
  });
}

test('axe finds nothing to mend', async ({ open, page }) => {
  await open();
  await press(page, 's');
  await press(page, ' ');
  await page.getByRole('radio', { name: 'Place, date' }).check();
  await page.getByRole('textbox', { name: 'Latitude' }).fill('nowhere');
  await nothingToMend(page);
});

test.describe('at 200 % zoom', () => {
  test.use({ viewport: { width: 640, height: 360 }, deviceScaleFactor: 2 });

  test('nothing is cut off', async ({ open, page }) => {
    await open();
    expect((await overflow(page)).across).toBe(0);
    await page.getByRole('button', { name: 'Restart' }).scrollIntoViewIfNeeded();
    await expect(page.getByRole('button', { name: 'Restart' })).toBeInViewport();
  });
});

test('pictures say in words what they show', async ({ open, page }) => {
  await open();
  await press(page, '+', 3);
  await press(page, 'ArrowRight', 4);
  const card = page.getByRole('img', { name: /^Floating card/ });
  await expect(card).toHaveAccessibleName(/the compass (lags|leads) by \d+°/);
  await expect(page.getByRole('img', { name: /^Rose from above/ })).toBeVisible();
});

test('the situation is told on demand', async ({ open, page }) => {
  await open();
  const told = page.locator('p[role=status].unseen');
  await expect(told).toBeEmpty();
  await press(page, 't');
  await expect(told).toHaveText(/^Magnetic heading 360°, compass 360°: the compass agrees\./);
});

test('every control can be reached and used by Tab and Enter', async ({ open, page }) => {
  await open();
  // Seen only while the keyboard is on it.
  const tell = page.getByRole('button', { name: 'Tell the situation' });
  const told = () => tell.evaluate((it) => it === document.activeElement);
  for (let tabs = 0; tabs < 12 && !(await told()); tabs += 1) await press(page, 'Tab');
  await expect(tell).toBeFocused();
  await expect(tell).toBeInViewport({ ratio: 1 });
  await page.getByRole('button', { name: /^Right: bank/ }).focus();
  await press(page, 'Enter');
  await expect(page.locator('#bank')).toHaveText('5° right');
});

test('light and view are remembered', async ({ open, page }) => {
  await open();
  await press(page, 'n');
  await expect(page.locator('html')).toHaveAttribute('data-light', 'night');
  await press(page, 'v');
  await page.waitForTimeout(100);
  await open();
  await expect(page.locator('html')).toHaveAttribute('data-light', 'night');
  await expect(page.locator('main')).toHaveAttribute('data-view', 'aside');
});

test('a stored word that means nothing is ignored', async ({ open, page }) => {
  await page.addInitScript(() => {
    localStorage.setItem('dipwise.light', '{"dusk":1}');
    localStorage.setItem('dipwise.view', '');
    localStorage.setItem('dipwise.keys-fly', 'perhaps');
  });
  await open();
  await expect(page.locator('main')).toHaveAttribute('data-view', 'card');
  await press(page, 'ArrowRight');
  await expect(page.locator('#bank')).toHaveText('5° right');
});

test('a browser that keeps nothing flies all the same', async ({ open, page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(window, 'localStorage', {
      get() {
        throw new DOMException('refused', 'SecurityError');
      },
    });
  });
  await open();
  await press(page, 'n');
  await expect(page.locator('html')).toHaveAttribute('data-light', 'night');
});

test('a page out of sight pauses its flight', async ({ open, page }) => {
  await open();
  await until(page, ({ time }) => time > 0.2);
  await page.evaluate(() => {
    Object.defineProperty(document, 'visibilityState', { get: () => 'hidden', configurable: true });
    document.dispatchEvent(new Event('visibilitychange'));
  });
  await expect(page.locator('#doing')).toHaveText('Paused: out of sight');
  const { time } = await read(page);
  await page.waitForTimeout(300);
  await expect.poll(async () => (await read(page)).time).toBe(time);
});

test('a page that is held up loses no time and jumps none', async ({ open, page }) => {
  await open();
  await until(page, ({ time }) => time > 0.2);
  const before = (await read(page)).time;
  await page.evaluate(() => {
    const end = performance.now() + 2500;
    while (performance.now() < end);
  });
  await expect(page.locator('#doing')).toHaveText('Paused: out of sight');
  const held = (await read(page)).time;
  expect(held - before).toBeLessThan(1);
  await press(page, ' ');
  const later = await until(page, ({ time }) => time > held);
  expect(later.time - held).toBeLessThan(1);
});
