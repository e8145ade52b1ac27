// Demonstrations: their list, their player, what a class is asked, and the lesson plan.

import { nothingToMend } from './axe.js';
import { expect, test } from './fixtures.js';
import { press, read, toPage, until } from './flying.js';
import { fitAThumb } from './fits.js';

const told = (page) => page.locator('p[role=status].unseen');
const button = (page, name) => page.getByRole('button', { name, exact: true });

// The class is asked 2 s after the start, the compass then covered; at 6 s the answer is shown
// and the flight stands; from 8 s on it goes slowly, in a second chapter, until it ends at 12 s.
const OWN = {
  demonstration: 1,
  name: 'own',
  title: 'A turn of our own',
  scenario: {
    field: { latitude_deg: 45 },
    start: { heading_deg: 340, speed_kt: 100 },
    legs: [{ seconds: 2, bank_deg: 15 }, { seconds: 10 }],
  },
  views: ['track', 'timeline'],
  figures: { at_six: { lag_at: 6 } },
  headline: 'at_six',
  look_for: 'Which way the compass errs.',
  rule: 'Here the compass {at_six}.',
  cues: [
    { at_s: 0, do: { chapter: 'Into the turn' } },
    { at_s: 0, do: { caption: 'Rolling in.' } },
    { at_s: 1, do: { highlight: 'heading' } },
    { at_s: 2, do: { ask: { question: 'What does it do?', answer: { figure: 'at_six' } } } },
    { at_s: 2, do: { cover: 'compass' } },
    { at_s: 3, do: { caption: 'Wait for it.' } },
    { at_s: 6, do: 'reveal' },
    { at_s: 6, do: { caption: 'The compass {at_six}.' } },
    { at_s: 6, do: 'freeze' },
    { at_s: 8, do: { chapter: 'As far south' } },
    { at_s: 8, do: { speed: 'half' } },
    { at_s: 8, do: { compare: 'other_hemisphere' } },
  ],
  notes: [{ minutes: 1.5, say: 'Ask.' }, { minutes: 2, say: 'It {at_six}.' }],
};

const json = (content, name = 'own.json') => ({
  name,
  mimeType: 'application/json',
  buffer: Buffer.from(JSON.stringify(content)),
});

// Opens a file of the user's, as the list has a button for it.
async function openFile(page, content) {
  await page.locator('#open-file').setInputFiles(json(content));
}

async function openOwn({ open, page }) {
  await open('./#/demonstrations');
  await openFile(page, OWN);
  await expect(page.locator('#demonstration')).toHaveText(OWN.title);
  // Keys lead it once it is seen.
  await expect(page.locator('#demonstration')).toBeVisible();
}

test('it plays, asks, stands, reveals and ends, by keys alone', async ({ open, page }) => {
  await openOwn({ open, page });
  await expect(page.locator('#caption')).toHaveText('Rolling in.');
  await expect(told(page)).toContainText(OWN.look_for);
  await expect(page.locator('.desk')).toBeHidden();
  await expect(page.locator('#aside')).toHaveAttribute('data-shows', 'track');
  // Nobody has seen anything yet: the chart does not tell.
  await expect(page.locator('#strips-told')).not.toContainText(/lag/);

  await press(page, ' ');
  await expect(page.locator('.page')).toHaveAttribute('data-highlight', 'heading');
  await expect(page.locator('#question')).toHaveText('What does it do?');
  await expect(page.locator('#doing')).toHaveText('Stands still');
  await expect(told(page)).toContainText('Question: What does it do? It lags; or It leads; or It agrees?');
  await expect.poll(async () => (await read(page)).time).toBe(2);

  // The class answers; nothing says yet who is right.
  await page.getByLabel('Hands for: It lags').fill('12');
  await page.getByLabel('Hands for: It leads').fill('6');
  await page.getByLabel('Hands for: It agrees').fill('many');
  await page.keyboard.press('Tab');
  await expect(page.locator('.question [role=alert]')).toContainText('from 0 to 999, not “many”');
  await page.getByLabel('Hands for: It agrees').fill('');
  await button(page, 'It leads').focus();
  await press(page, 'Enter');
  await expect(button(page, 'It leads')).toHaveAttribute('aria-pressed', 'true');
  await expect(page.locator('[data-verdict]')).toHaveCount(0);
  await expect(page.locator('.measured')).toBeHidden();

  // A clicker leads on, even with the count in focus.
  await page.getByLabel('Hands for: It lags').focus();
  await press(page, 'PageDown');
  await expect(page.locator('#compass')).toHaveText(/Covered/);
  await expect(page.locator('#caption')).toHaveText('Wait for it.');
  await expect(page.locator('#caption')).toHaveText(/The compass lags by \d+°\./);
  await expect(page.locator('#compass')).toHaveText(/°/);
  await expect.poll(async () => (await read(page)).time).toBe(6);
  await expect(page.locator('[data-verdict=right]')).toContainText('It lags ✓ Right');
  await expect(page.locator('[data-verdict=wrong]')).toContainText('It leads ✗ Not so');
  await expect(page.locator('.measured')).toHaveText(/lags by \d+°\./);
  const bars = page.locator('.hands-bar');
  await expect(bars).toHaveText(['12 hands', '6 hands']);
  const [long, short] = await page.locator('.hands-bar .bar').evaluateAll((all) =>
    all.map((bar) => Number.parseFloat(bar.style.width)));
  expect([long, short]).toEqual([100, 50]);

  await page.locator('body').click({ position: { x: 5, y: 5 } });
  await press(page, 'PageDown');
  await expect(page.locator('.player-chapter')).toHaveText('As far south');
  await expect(page.locator('#question')).toHaveCount(0);
  await expect(page.locator('#tempo')).toHaveText('½×');
  await expect(page.locator('#other-card')).toBeVisible();
  await expect(page.locator('#rule')).toHaveText(/Here the compass lags by \d+°\./);

  // Again, and as it was at the start.
  await press(page, ' ');
  await expect(page.locator('.player-chapter')).toHaveText('Into the turn');
  await expect(page.locator('#other-card')).toHaveCount(0);
  await expect(page.locator('#tempo')).toHaveText('1×');
});

test('wherever one jumps, what stands there is what the cues come to', async ({ open, page }) => {
  await openOwn({ open, page });
  const strips = page.getByRole('slider', { name: 'Time of flight' });
  await strips.focus();
  await press(page, 'End');
  await expect(page.locator('#rule')).toBeVisible();
  await press(page, 'ArrowLeft', 7);
  await expect.poll(async () => (await read(page)).time).toBe(5);
  await expect(page.locator('#compass')).toHaveText(/Covered/);
  await expect(page.locator('#caption')).toHaveText('Wait for it.');
  await expect(page.locator('#other-card')).toHaveCount(0);
  await expect(page.locator('#question')).toBeVisible();

  // From cue to cue, and by chapter.
  await press(page, 'PageUp');
  await expect.poll(async () => (await read(page)).time).toBe(3);
  await press(page, 'PageUp');
  await expect.poll(async () => (await read(page)).time).toBe(2);
  await expect(page.locator('#compass')).toHaveText(/°/);
  await page.getByRole('button', { name: 'Back to the cue before' }).click();
  await expect.poll(async () => (await read(page)).time).toBe(1);
  await page.getByRole('button', { name: /^Next/ }).click();
  await expect.poll(async () => (await read(page)).time).toBe(2);
  await page.getByLabel('Chapter').selectOption('As far south');
  await expect.poll(async () => (await read(page)).time).toBe(8);
  await expect(page.locator('#other-card')).toBeVisible();

  // The user's own tempo comes on top, and captions can be hidden.
  await page.getByRole('button', { name: '½× motion: half as fast' }).click();
  await expect(page.locator('#tempo')).toHaveText('¼×');
  await button(page, 'Captions').click();
  await expect(page.locator('#caption')).toBeEmpty();
  await button(page, 'Captions').click();
  await expect(page.locator('#caption')).toHaveText(/lags/);
});

test('the pilot takes the controls at any moment and returns to it', async ({ open, page }) => {
  await openOwn({ open, page });
  await press(page, ' ');
  await expect(page.locator('#question')).toBeVisible();
  await page.getByRole('button', { name: 'Take the controls and fly from here' }).click();
  await expect(page.locator('.desk')).toBeVisible();
  await expect(told(page)).toHaveText('You have the controls.');
  await press(page, 'ArrowLeft', 2);
  await until(page, ({ bank, time }) => bank < 15 && time > 0.5);
  await page.getByRole('button', { name: /^Return to the demonstration/ }).click();
  await expect(page.locator('#question')).toBeVisible();
  await expect.poll(async () => (await read(page)).time).toBe(2);
  await expect(page.locator('.desk')).toBeHidden();
  // By key as well, once it has ended.
  await press(page, 'End');
  await press(page, 'ArrowRight');
  await expect(page.locator('.desk')).toBeVisible();
  await press(page, 'o');
  await expect(page.locator('#rule')).toBeVisible();
});

test('what the user had is there again when it is left', async ({ open, page }) => {
  await open();
  await press(page, 'g');
  await press(page, 'ArrowRight', 2);
  await until(page, ({ bank }) => bank > 5);
  await toPage(page, 'Demonstrations');
  const before = await page.locator('#readings').evaluate((it) => it.dataset.heading);
  await openFile(page, OWN);
  await expect(page.locator('#demonstration')).toBeVisible();
  await button(page, 'Leave the demonstration').click();
  await expect(page.locator('#demonstration')).toHaveCount(0);
  await expect(page.locator('.desk')).toBeVisible();
  await expect(page.locator('#aside')).toHaveAttribute('data-shows', 'rose');
  await expect(page.locator('#time-chart')).toBeVisible();
  expect(await page.locator('#readings').evaluate((it) => it.dataset.heading)).toBe(before);
});

test('a file that cannot be played is refused in a sentence, and what was open stays', async ({ open, page }) => {
  await openOwn({ open, page });
  await toPage(page, 'Demonstrations');
  for (const [content, sentence] of [
    [{ ...OWN, cues: [{ at_s: 99, do: 'reveal' }] }, 'cues[0].at_s: the time must be from 0 to 12 s'],
    [{ ...OWN, demonstration: 7 }, 'only version 1 can be read here'],
    [{ start: {} }, 'field'],
  ]) {
    await openFile(page, content);
    await expect(page.locator('#fault')).toContainText(sentence);
  }
  await toPage(page, 'Fly');
  await expect(page.locator('#demonstration')).toHaveText(OWN.title);

  // A flight is opened as well.
  await toPage(page, 'Demonstrations');
  await openFile(page, OWN.scenario);
  await expect(page.locator('#demonstration')).toHaveCount(0);
  await expect(page.locator('#heading')).toHaveText('340°');
});

test('the list says what each comes to at the latitude of the address', async ({ open, page }) => {
  await open('./#/demonstrations@-45');
  await expect(page.locator('.measuring')).toBeEmpty({ timeout: 40_000 });
  const item = page.locator('.demonstration').filter({ hasText: 'Right turn from west onto north' }).first();
  await expect(item.locator('.headline')).toHaveText(/^Leads by \d+°$/);
  await expect(page.getByRole('slider', { name: 'At latitude' })).toHaveValue('-45');
  await button(page, 'Each where it was made').click();
  await expect(page).toHaveURL(/#\/demonstrations$/);
  await expect(item.locator('.headline')).toHaveText(/^Lags by \d+°$/);
  await page.getByRole('slider', { name: 'At latitude' }).focus();
  await press(page, 'ArrowLeft');
  await expect(page).toHaveURL(/@44$/);
  await item.getByRole('link').click();
  await expect(page).toHaveURL(/#\/demonstrations\/north-from-west\/44$/);
  await expect(page.locator('#caption')).toContainText('44° N');

  // An address that names none leaves the list, and says so.
  await page.goto('./#/demonstrations/nowhere');
  await expect(page.locator('#fault')).toContainText('called “nowhere”');
  await page.goto('./#/demonstrations/north-from-west/999');
  await expect(page.locator('#fault')).toContainText('999');
});

test('before a class, what is said and asked is large, and a clicker leads', async ({ open, page }) => {
  await openOwn({ open, page });
  await press(page, 'p');
  await press(page, 'PageDown');
  await expect(page.locator('#question')).toBeInViewport({ ratio: 1 });
  await expect(page.locator('.player-tools')).toBeHidden();
  const size = await page.locator('#question').evaluate((it) => Number.parseFloat(getComputedStyle(it).fontSize));
  expect(size).toBeGreaterThanOrEqual(28);
  await page.locator('#advance').click();
  await expect(page.locator('[data-verdict=right]')).toBeInViewport({ ratio: 1 });
  expect(await page.evaluate(() => document.documentElement.scrollHeight - innerHeight)).toBe(0);
  await press(page, 'PageUp');
  await expect.poll(async () => (await read(page)).time).toBe(3);
});

test.describe('on a phone, by touch', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('it is led by the thumb', async ({ open, page }) => {
    await openOwn({ open, page });
    await page.locator('#play').tap();
    await expect(page.locator('#question')).toBeVisible();
    await button(page, 'It lags').tap();
    await fitAThumb(page.locator('.player :is(button, input, select)'));
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    await page.locator('#play').tap();
    await expect(page.locator('[data-verdict=right]')).toBeVisible();
    await nothingToMend(page);
  });
});

test.describe('in dark colours', () => {
  test.use({ colorScheme: 'dark' });

  test('list, question, answer and plan bar nobody; the plan prints black on white', async ({ open, page }) => {
    await openOwn({ open, page });
    await press(page, ' ');
    await expect(page.locator('#question')).toBeVisible();
    await nothingToMend(page);
    await press(page, 'PageDown');
    await expect(page.locator('[data-verdict=right]')).toBeVisible();
    await nothingToMend(page);

    await button(page, 'Lesson plan: read it, print it').click();
    const sheet = page.locator('#plan');
    await expect(sheet).toContainText('3.5 minutes in all');
    await expect(sheet).toContainText('☑ It lags');
    await expect(sheet).toContainText(/It lags by \d+°\./);
    await expect(sheet).toContainText('never for navigation');
    await nothingToMend(page);
    await page.emulateMedia({ media: 'print' });
    await expect(page.locator('.plan-tools')).toBeHidden();
    await expect(page.locator('.top')).toBeHidden();
    const colours = await page.locator('body').evaluate((it) => {
      const { color, backgroundColor } = getComputedStyle(it);
      return [color, backgroundColor];
    });
    expect(colours).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
    await page.emulateMedia({ media: 'screen' });
    await button(page, 'Back to the demonstration').click();
    await expect(page.locator('#question')).toBeVisible();

    await toPage(page, 'Demonstrations');
    await expect(page.locator('.demonstration').first()).toBeVisible();
    await nothingToMend(page);
  });
});
