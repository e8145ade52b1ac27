// Links that carry what they open, their QR codes, and the page in a frame.

import { readFile } from 'node:fs/promises';
import { nothingToMend } from './axe.js';
import { expect, found, test } from './fixtures.js';
import { begin, hurry, press, read, until } from './flying.js';
import { readCode, sealed } from './passing_on.js';

const button = (page, name) => page.getByRole('button', { name });
const dialog = (page) => page.getByRole('dialog', { name: 'Share' });
const link = (page) => page.locator('#share-link');
const refused = (page) => page.locator('.refused');

// A right turn at 52° N from 330°, paused after six seconds.
async function turn(page) {
  await begin(page, { latitude: 52, heading: 330 });
  await hurry(page);
  await press(page, 'ArrowRight', 3);
  await until(page, ({ time }) => time > 6);
  await press(page, ' ');
  await expect(page.locator('#doing')).toHaveText('Paused');
  return read(page);
}

// The link that the dialog gives for this.
async function share(page, subject) {
  await button(page, /^Share/).click();
  await dialog(page).getByLabel('What to share').selectOption(subject);
  await expect(link(page)).toHaveValue(/^http/);
  return link(page).inputValue();
}

const fixture = async (name) =>
  (await readFile(new URL(`../../crates/lessons/tests/${name}.txt`, import.meta.url), 'utf8')).trim();

test('a link opens the flight or the situation that it was made from', async ({ open, page }) => {
  await open();
  const end = await turn(page);
  const place = await page.locator('#place').textContent();
  const flight = await share(page, 'This flight');
  expect(flight).toMatch(/#d=[\w-]+$/);
  await expect(page.locator('#share-length')).toContainText(`${flight.length} characters`);
  await page.keyboard.press('Escape');
  await expect(dialog(page)).toBeHidden();
  const situation = await share(page, 'This situation');
  expect(situation).not.toBe(flight);

  await page.goto('about:blank');
  await open(flight);
  await expect(page.locator('#doing')).toHaveText('Looking back');
  expect(await read(page)).toMatchObject({ time: 0, heading: 330 });
  await press(page, 'End');
  // The pause may have fallen between two steps of 1/200 s; a link holds whole ones.
  const again = await read(page);
  for (const name of ['time', 'heading', 'compass', 'bank', 'airspeed']) {
    expect(Math.abs(again[name] - end[name]), name).toBeLessThanOrEqual(0.06);
  }

  await page.goto('about:blank');
  await open(situation);
  await until(page, ({ time }) => time > 0.5);
  await expect.poll(async () => (await read(page)).heading).toBe(330);
  await expect(page.locator('#place')).toHaveText(place);
});

test('a demonstration has a short address in the catalogue and else is carried whole', async ({
  open,
  page,
}) => {
  await open('./#/demonstrations/north-from-west');
  await expect(page.locator('.player')).toBeVisible();
  expect(await share(page, 'This demonstration')).toMatch(/#\/demonstrations\/north-from-west$/);
  await page.keyboard.press('Escape');
  await page.evaluate(() => (location.hash = '#/demonstrations/north-from-west/-30'));
  await expect(page.locator('#place')).toContainText('30');
  expect(await share(page, 'This demonstration')).toMatch(/\/north-from-west\/-30$/);

  // One that was made elsewhere, compressed by another program; the page's own link opens it too.
  await page.goto('about:blank');
  await open(`./#d=${await fixture('first-link')}`);
  const title = page.getByRole('heading', { name: 'A right turn onto north' });
  await expect(title).toBeVisible();
  const carried = await share(page, 'This demonstration');
  expect(carried).toMatch(/#d=[\w-]+$/);
  await page.goto('about:blank');
  await open(carried);
  await expect(title).toBeVisible();
});

test('a link that is not as it was made is refused in a sentence, and nothing changes', async ({
  open,
  page,
}) => {
  await open();
  const flown = await turn(page);
  const place = await page.locator('#place').textContent();
  let before;
  const whole = await fixture('first-link');
  const other = whole[40] === 'A' ? 'B' : 'A';
  const damaged = 'This link was cut short or changed on its way; ask for it again.';
  const newer = 'made by a newer version of Dipwise';
  for (const [carried, sentence] of [
    ['', damaged],
    [whole.slice(0, -1), damaged],
    [whole.slice(0, 40) + other + whole.slice(41), damaged],
    ['%3Cscript%3E', damaged],
    [sealed({ version: 2, body: Buffer.from([4, 0]) }), newer],
    [sealed({ kind: 9, body: Buffer.from([4, 0]) }), newer],
    // A hundred million bytes in a hundred thousand; more than a link may have, and than it may hold.
    [sealed({ body: Buffer.alloc(100_000_000) }), damaged],
    [sealed({ body: Buffer.alloc(2_000_000) }), damaged],
    [sealed({ body: Buffer.from([4, 0]) }), 'cannot be opened. '],
    [sealed({ kind: 1, body: Buffer.from([4, 0]) }), 'cannot be opened. '],
  ]) {
    await page.evaluate((hash) => (location.hash = hash), `d=${carried}`);
    await expect(refused(page)).toContainText(sentence);
    // The first of them brings the rest of the program, at a whole step of 1/200 s.
    before ??= await read(page);
    expect(Math.abs(before.time - flown.time)).toBeLessThanOrEqual(0.011);
    expect(await read(page)).toEqual(before);
    await expect(page.locator('#place')).toHaveText(place);
    await expect(page.locator('#doing')).toHaveText('Paused');
    await button(page, 'Dismiss').click();
    await expect(refused(page)).toBeEmpty();
  }
});

test('a link is copied, or selected where the browser does not copy', async ({
  context,
  open,
  page,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await open();
  const text = await share(page, 'This situation');
  const copy = dialog(page).getByRole('button', { name: 'Copy' });
  await copy.first().click();
  await expect(dialog(page)).toContainText('Copied.');
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(text);
  await copy.last().click();
  await expect
    .poll(() => page.evaluate(() => navigator.clipboard.readText()))
    .toBe(await page.locator('#share-frame').inputValue());

  await page.evaluate(() => {
    navigator.clipboard.writeText = () => Promise.reject(new Error('not allowed'));
  });
  await copy.first().click();
  await expect(dialog(page)).toContainText('Selected: copy it by Ctrl+C.');
  expect(await page.evaluate(() => {
    const { id, value, selectionStart, selectionEnd } = document.activeElement;
    return [id, value.slice(selectionStart, selectionEnd)];
  })).toEqual(['share-link', text]);
  // Keys typed in the dialog do not fly.
  await press(page, 'ArrowRight', 3);
  await press(page, 'w');
  await page.keyboard.press('Escape');
  await expect(page.locator('#bank')).toHaveText('level');
  await expect(page.locator('#why')).toBeHidden();
});

test('a QR code is read back, and axe finds nothing to mend', async ({ open, page }) => {
  await open(`./#d=${await fixture('first-link')}`);
  await expect(page.locator('.player')).toBeVisible();
  const text = await share(page, 'This demonstration');
  await nothingToMend(page);
  await dialog(page).getByRole('button', { name: 'Large' }).click();
  const box = await page.locator('#qr-code').boundingBox();
  expect(Math.min(box.width, box.height)).toBeGreaterThan(600);
  expect(await readCode(page)).toBe(text);
  await nothingToMend(page);
  await page.keyboard.press('Escape');
  await expect(dialog(page)).toBeHidden();

  await page.evaluate(() => (location.hash = '#d=AQ'));
  await expect(refused(page)).toContainText('ask for it again');
  await nothingToMend(page);
  expect(await page.evaluate(() => document.documentElement.scrollHeight - innerHeight)).toBe(0);
});

test('a flight too long for a code is offered as a file', async ({ open, page }) => {
  await open();
  // A stick that is never still: more commands than a code can hold.
  await page.evaluate(() => {
    let some = 1;
    for (let i = 0; i < 900; i += 1) {
      some = (some * 48271) % 2147483647;
      const key = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'][some % 4];
      dispatchEvent(new KeyboardEvent('keydown', { key, shiftKey: some % 3 === 0 }));
      dispatchEvent(new KeyboardEvent('keydown', { key: '.' }));
    }
  });
  await share(page, 'This flight');
  await expect(dialog(page)).toContainText('No QR code: it holds 2953 characters');
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    button(page, 'Save as a file').click(),
  ]);
  expect(file.suggestedFilename()).toBe('dipwise-flight.json');
  const saved = JSON.parse(await readFile(await file.path(), 'utf8'));
  expect(saved.duration_s).toBeGreaterThanOrEqual(90);
  expect(saved.controls.length).toBeGreaterThan(500);
});

// A course page with the frame in it, as its code in the dialog has it.
async function course(page, baseURL, { hash, width, height, sandbox = '' }) {
  const address = `${baseURL}course.html`;
  await page.route(address, (route) => route.fulfill({
    contentType: 'text/html',
    body: `<!doctype html><html lang="en"><title>Course</title><body style="margin:0">
      <main aria-label="Course"><iframe src="./?embed${hash}" title="Dipwise" width="${width}" height="${height}"
        style="border:0" ${sandbox}></iframe></main>`,
  }));
  await page.goto(address);
  const frame = page.frameLocator('iframe');
  await expect(frame.locator('html')).toHaveAttribute('data-ready', 'true');
  return frame;
}

for (const [width, height] of [[320, 320], [480, 420], [720, 600]]) {
  test(`in a frame of ${width}×${height} it plays without storage`, async ({ baseURL, page }) => {
    // Whatever asks for storage is noted.
    await page.addInitScript(() => {
      globalThis.asked = [];
      for (const name of ['getItem', 'setItem', 'removeItem']) {
        const real = Storage.prototype[name];
        Storage.prototype[name] = function (...given) {
          globalThis.asked.push(name);
          return real.apply(this, given);
        };
      }
      const open = IDBFactory.prototype.open;
      IDBFactory.prototype.open = function (...given) {
        globalThis.asked.push('indexedDB');
        return open.apply(this, given);
      };
    });
    const fits = async (frame) => {
      for (const id of ['compass', 'card', 'heading']) {
        const box = await frame.locator(`#${id}`).boundingBox();
        expect(box.y, id).toBeGreaterThanOrEqual(0);
        expect(box.y + box.height, id).toBeLessThanOrEqual(height);
        expect(Math.min(box.width, box.height), id).toBeGreaterThan(25);
      }
      await expect(frame.getByText('For training only')).toBeInViewport({ ratio: 1 });
      await expect(frame.getByRole('link', { name: 'Open in full' })).toBeInViewport({ ratio: 1 });
      const over = await frame.locator('html').evaluate((it) => [
        it.scrollWidth - document.documentElement.clientWidth, it.scrollHeight - innerHeight,
      ]);
      expect(over).toEqual([0, 0]);
    };
    for (const sandbox of ['', 'sandbox="allow-scripts allow-popups"']) {
      // A flight to fly.
      let frame = await course(page, baseURL, { hash: '', width, height, sandbox });
      await frame.getByRole('button', { name: /^Right/ }).click();
      await frame.locator('#pause').click();
      await fits(frame);
      // A demonstration to play.
      const hash = `#d=${await fixture('first-link')}`;
      frame = await course(page, baseURL, { hash: `&again${hash}`, width, height, sandbox });
      await expect(frame.locator('.player')).toBeVisible();
      await fits(frame);
      const time = () => frame.locator('#readings').evaluate((it) => Number(it.dataset.time));
      await frame.locator('.player-tools .play').click();
      await expect.poll(time).toBeGreaterThan(0.5);
      const full = frame.getByRole('link', { name: 'Open in full' });
      await expect(full).toHaveAttribute('href', `${baseURL}${hash}`);
      expect(await frame.locator('html').evaluate(() => globalThis.asked)).toEqual([]);
      // In a sandbox it would have to put styles into the page, which that forbids.
      if (width === 320 && !sandbox) {
        await nothingToMend(page);
      }
    }
  });
}
