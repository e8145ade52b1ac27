// Making demonstrations: by keyboard alone, by pointer, and nothing lost whatever happens.

import { readFile } from 'node:fs/promises';
import { nothingToMend } from './axe.js';
import { expect, test } from './fixtures.js';
import { hurry, press, read, until } from './flying.js';
import { across, fitAThumb } from './fits.js';

const button = (page, name) => page.getByRole('button', { name });
const lane = (page) => page.getByRole('group', { name: 'Cues along the flight' });
const handle = (page, name) => lane(page).getByRole('slider', { name });
const field = (page, name) => page.locator('#making').getByRole('textbox', { name, exact: true });
const saved = (page) => expect(page.locator('#saved')).toHaveText('Saved in this browser');
const told = (page) => page.locator('p[role=status].unseen');

// Flies a turn of a quarter of a minute by the keyboard.
async function fly(page) {
  await page.evaluate(() => document.activeElement.blur());
  await hurry(page);
  await press(page, 'ArrowRight', 3);
  await until(page, ({ time }) => time > 15);
  await press(page, ' ');
  return read(page);
}

// Makes a demonstration of it.
async function begin(page) {
  const end = await fly(page);
  await page.evaluate(() => { location.hash = '#/make'; });
  await button(page, /^Of this flight/).click();
  await saved(page);
  return end;
}

// Puts a cue of each key where the playhead stands.
const put = (page, keys) => press(page, keys);

test('by keyboard alone, from a flight to a file that plays', async ({ open, page }) => {
  await open();
  const end = await fly(page);
  await page.evaluate(() => { location.hash = '#/make'; });
  await button(page, /^Of this flight/).focus();
  await page.keyboard.press('Enter');
  await saved(page);
  // A figure puts a cue while it plays, and the playing goes on.
  await page.evaluate(() => document.activeElement.blur());
  await press(page, '-', 3);
  await press(page, ' ');
  await until(page, ({ time }) => time > 0.5);
  await put(page, '1');
  await until(page, ({ time }) => time > 1);
  await put(page, '2');
  await put(page, '6');
  await press(page, ' ');
  await expect(lane(page).getByRole('slider')).toHaveCount(3);
  await expect(told(page)).toHaveText(/^Question at 0:0\d\.\d\./);

  // What is missing is said, and its button leads there.
  await button(page, /^Preview/).focus();
  await page.keyboard.press('Enter');
  await expect(told(page)).toHaveText(/^It cannot be played yet: the chapter has no title/);
  await button(page, /^It cannot be played yet:/).focus();
  await page.keyboard.press('Enter');
  await expect(field(page, 'Words')).toBeFocused();
  await page.keyboard.type('A turn');
  await handle(page, /^Question/).focus();
  await field(page, 'Words').fill('Lags or leads?');
  await field(page, 'Choice 1').fill('It lags');
  await field(page, 'Choice 2').fill('It leads');
  await expect(button(page, /^It cannot be played yet:/)).toBeHidden();

  // Arrow keys move a cue; a step back takes it back.
  await handle(page, /^Question/).focus();
  await press(page, 'End');
  await press(page, 'ArrowLeft', 2);
  const at = Math.round(100 * end.time) / 100 - 0.2;
  await expect(handle(page, /^Question/)).toBeFocused();
  expect(Number(await handle(page, /^Question/).getAttribute('aria-valuenow'))).toBeCloseTo(at, 1);
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  const first = await handle(page, /^Question/).getAttribute('aria-valuenow');
  expect(Number(first)).toBeLessThan(5);
  await page.keyboard.press('Control+y');
  await page.keyboard.press('Control+y');
  await saved(page);

  await button(page, /^Preview/).focus();
  await page.keyboard.press('Enter');
  await expect(page.locator('#demonstration')).toHaveText('My demonstration');
  await button(page, /^End preview/).focus();
  await page.keyboard.press('Enter');
  await expect(page.locator('#demonstration')).toBeHidden();

  const [file] = await Promise.all([
    page.waitForEvent('download'),
    button(page, /^Save file/).press('Enter'),
  ]);
  expect(file.suggestedFilename()).toBe('my-demonstration.json');
  const made = JSON.parse(await readFile(await file.path(), 'utf8'));
  expect(made.cues.map((it) => Object.keys(Object(it.do))[0])).toEqual(['chapter', 'caption', 'ask']);
  expect(made.cues[2].do.ask.answer.typed).toEqual({ choices: ['It lags', 'It leads'], right: 0 });

  // The flight that was under way comes back when the bench is left.
  await button(page, /^Close/).press('Enter');
  await expect(page.locator('#making')).toBeHidden();
  expect(Math.abs((await read(page)).time - end.time)).toBeLessThanOrEqual(0.011);
});

test('a cue is dragged in one step, and a trimmed part plays', async ({ open, page }) => {
  await open();
  await begin(page);
  await put(page, '3');
  const cue = handle(page, /^Speed/);
  const before = await cue.getAttribute('aria-valuenow');
  const box = await cue.boundingBox();
  const y = box.y + box.height / 2;
  await page.mouse.move(box.x + 10, y);
  await page.mouse.down();
  await page.mouse.move(box.x + 60, y, { steps: 5 });
  await page.mouse.move(box.x + 90, y + 80, { steps: 5 });
  await page.mouse.up();
  const after = Number(await cue.getAttribute('aria-valuenow'));
  expect(after).toBeGreaterThan(Number(before) + 3);
  // Under the playhead's own axis: the strips and the lane agree.
  await cue.focus();
  await expect(field(page, 'At')).toHaveValue(String(after));
  await page.keyboard.press('Control+z');
  await expect(cue).toHaveAttribute('aria-valuenow', before);
  await page.keyboard.press('Control+Shift+Z');
  await expect(cue).toHaveAttribute('aria-valuenow', String(after));

  await page.getByText('Start, end and place').click();
  await field(page, 'Starts at').fill('2');
  await field(page, 'Ends at').fill('1');
  await expect(page.locator('#made-to-wrong')).toContainText('The end must be after the start');
  await saved(page);
  await field(page, 'Ends at').fill('soon');
  await expect(page.locator('#made-to-wrong')).toContainText('not "soon"');
  await field(page, 'Ends at').fill('9.5');
  await field(page, 'Latitude').fill('-40');
  await field(page, 'Latitude').blur();
  await expect(page.locator('#making')).toContainText('Starts at');
  await button(page, /^Preview/).click();
  await expect.poll(async () => (await read(page)).time).toBe(2);
  await press(page, 'End');
  await expect.poll(async () => (await read(page)).time).toBeCloseTo(9.5, 2);
});

test('nothing is lost by a reload, a killed page, or another tab', async ({ context, open, page }) => {
  await open();
  await begin(page);
  await put(page, '4');
  await field(page, 'Title').fill('Half done');
  await saved(page);
  await page.reload();
  await expect(field(page, 'Title')).toHaveValue('Half done');
  await expect(handle(page, 'Freeze')).toBeVisible();

  // Killed: closed without a word of farewell.
  await field(page, 'Title').fill('Half done, killed');
  await saved(page);
  await page.close({ runBeforeUnload: false });
  const one = await context.newPage();
  await one.goto('./#/make');
  await expect(field(one, 'Title')).toHaveValue('Half done, killed');

  // Two tabs change the same one: both are kept.
  const other = await context.newPage();
  await other.goto('./#/make');
  await field(other, 'Title').fill('From the other');
  await saved(other);
  await field(one, 'Title').fill('From the one');
  await expect(told(one)).toHaveText(/^Another tab changed this/);
  await saved(one);
  await expect(field(one, 'Title')).toHaveValue('From the one (copy)');
  await one.reload();
  await one.locator('#shelf summary').click();
  await expect(button(one, 'From the one (copy)').first()).toBeVisible();
  await button(one, 'From the other').first().click();
  await expect(field(one, 'Title')).toHaveValue('From the other');

  // What is deleted can be put back; what cannot be read is kept.
  await button(one, 'Delete From the other').click();
  await expect(button(one, 'Delete From the other')).toBeHidden();
  await button(one, /^Put back/).click();
  await expect(button(one, 'Delete From the other')).toBeVisible();
  await one.evaluate(() => {
    localStorage.setItem('dipwise.made.torn', 'dipwise made 4 Torn\n{"demonstr');
    localStorage.setItem('dipwise.made.odd', 'odd');
  });
  await one.reload();
  await one.locator('#shelf summary').click();
  await button(one, 'Torn').first().click();
  await expect(one.getByRole('alert').filter({ hasText: 'cannot be read' })).toBeVisible();
  await expect(button(one, /^Cannot be read/)).toBeVisible();
  const kept = await one.evaluate(() => localStorage.getItem('dipwise.made.torn'));
  expect(kept).toBe('dipwise made 4 Torn\n{"demonstr');
});

test('without storage it is said, and the work goes on', async ({ open, page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(window, 'localStorage', {
      get() { throw new DOMException('blocked', 'SecurityError'); },
    });
  });
  await open();
  await fly(page);
  await page.evaluate(() => { location.hash = '#/make'; });
  await button(page, /^Of this flight/).click();
  await expect(page.locator('#saved')).toContainText('this browser keeps nothing for this page');
  await put(page, '4');
  await expect(handle(page, 'Freeze')).toBeVisible();
  await field(page, 'Title').fill('By file');
  const [file] = await Promise.all([page.waitForEvent('download'), button(page, /^Save file/).click()]);
  const text = await readFile(await file.path(), 'utf8');
  expect(JSON.parse(text).title).toBe('By file');

  // A file that is none is refused with the field, and what is open stays.
  const choose = async (name, content) => page.locator('#making input[type=file]').setInputFiles({
    name, mimeType: 'application/json', buffer: Buffer.from(content),
  });
  const refused = page.locator('#not-opened');
  await choose('bad.json', text.replace('"at_s"', '"at"'));
  await expect(refused).toContainText('cues[0]');
  await choose('bad.json', text.replace('"latitude_deg": 52', '"latitude_deg": 152'));
  await expect(refused).toContainText('scenario.field.latitude_deg');
  await expect(field(page, 'Title')).toHaveValue('By file');
  await choose('good.json', text.replace('By file', 'Opened'));
  await expect(field(page, 'Title')).toHaveValue('Opened');
  await expect(refused).toBeEmpty();
});

test('no room left is said', async ({ open, page }) => {
  await open();
  await begin(page);
  await page.evaluate(() => {
    Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); };
  });
  await put(page, '2');
  await expect(page.locator('#saved')).toContainText('there is no room left in this browser');
  await expect(handle(page, 'Caption')).toBeVisible();
});

test('axe finds nothing to mend on the bench', async ({ open, page }) => {
  await open();
  await begin(page);
  await put(page, '1');
  await put(page, '6');
  for (const summary of await page.locator('#making summary').all()) await summary.click();
  await button(page, /^Add a note/).click();
  await nothingToMend(page);
  expect(await page.evaluate(() => document.documentElement.scrollHeight - innerHeight)).toBe(0);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('it is reached from the demonstrations, and fits a thumb', async ({ open, page }) => {
    await open();
    await fly(page);
    await page.evaluate(() => { location.hash = '#/demonstrations'; });
    await page.getByRole('link', { name: 'Make a demonstration' }).tap();
    await button(page, /^Of this flight/).tap();
    await saved(page);
    await button(page, 'Freeze').tap();
    await expect(handle(page, 'Freeze')).toBeVisible();
    await fitAThumb(page.locator('#making button, .cue-handle'));
    expect(await across(page)).toBe(0);
  });
});
