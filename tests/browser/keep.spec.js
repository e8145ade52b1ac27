// What is kept of practice: whole through reloads, two tabs and a storage that fails, and shown
// as pictures.

import { readFile } from 'node:fs/promises';
import { nothingToMend } from './axe.js';
import { expect, test } from './fixtures.js';
import { across } from './fits.js';

// The calendar day where the browser is, as the page counts it.
const today = () => Math.floor((Date.now() - new Date().getTimezoneOffset() * 60_000) / 86_400_000);

const answer = (number, octant = 'N', manoeuvre = 'left-turn', ago = 20) => ({
  task: { kind: 'roll-out', seed: 9, number, latitude_deg: 50, level: 1, tolerance_deg: 10 },
  class: { kind: 'roll-out', octant, manoeuvre, hemisphere: 'northern' },
  outcome: number % 4 === 3 ? 'failed' : 'passed',
  seconds: 90,
  day: today() - ago,
  at_ms: 1_700_000_000_000 + number,
});

const file = (answers, settings = {}) => ({
  name: 'copy.json',
  mimeType: 'application/json',
  buffer: Buffer.from(JSON.stringify({ version: 1, settings, answers, handed: [], begun: [] })),
});

const octants = ['N', 'NE', 'E', 'S', 'SW', 'W'];
const some = octants.flatMap((octant, at) => [
  answer(2 * at, octant, 'left-turn', 3 * at),
  answer(2 * at + 1, octant, 'right-turn', 3 * at),
]);

const button = (page, name) => page.getByRole('button', { name, exact: true });
const storage = (page) => page.getByRole('alert');

async function part(page, name) {
  await page.getByRole('link', { name, exact: true }).click();
  await expect(page.getByRole('heading', { level: 2, name })).toBeVisible();
}

async function bring(page, answers, settings) {
  await part(page, 'Kept here');
  await page.locator('input[type=file]').setInputFiles(file(answers, settings));
}

// All records of the page's own database, by store.
const stored = (page) =>
  page.evaluate(
    () =>
      new Promise((done) => {
        const open = indexedDB.open('dipwise-drills');
        open.onsuccess = async () => {
          const base = open.result;
          const found = { version: base.version };
          for (const name of base.objectStoreNames) {
            found[name] = await new Promise((got) => {
              const all = base.transaction(name).objectStore(name).getAll();
              all.onsuccess = () => got(all.result);
            });
          }
          base.close();
          done(found);
        };
      }),
  );

test('saved, deleted and brought in again, with a way back from each', async ({ open, page }) => {
  await open('drills.html');
  await expect(page.locator('#what-next')).toHaveText(/^Four new\. About \w+ minutes\.$/);
  await bring(page, some, { hemisphere: 'southern', away_deg: 34 });
  await expect(page.locator('#holds')).toHaveText('12 answers.');
  await expect.poll(async () => (await stored(page)).answers?.length).toBe(12);
  await page.reload();
  await expect(page.locator('#holds')).toHaveText('12 answers.');

  const [saved] = await Promise.all([
    page.waitForEvent('download'),
    button(page, 'Save a copy').click(),
  ]);
  const copy = JSON.parse(await readFile(await saved.path(), 'utf8'));
  expect(copy.answers).toHaveLength(12);
  expect(copy.settings).toMatchObject({ hemisphere: 'southern', away_deg: 34 });

  await button(page, 'Delete it…').press('Enter');
  await expect(page.getByRole('group', { name: /Delete all/ })).toBeFocused();
  await button(page, 'Leave it as it is').click();
  await expect(page.locator('#holds')).toHaveText('12 answers.');
  await button(page, 'Delete it…').click();
  await button(page, 'Delete all of it').click();
  await expect(page.locator('#holds')).toContainText('Nothing is kept yet.');
  await expect.poll(async () => (await stored(page)).answers).toHaveLength(0);
  await button(page, 'Undo').click();
  await expect(page.locator('#holds')).toHaveText('12 answers.');
  await button(page, 'Delete it…').click();
  await button(page, 'Delete all of it').click();
  await page.locator('input[type=file]').setInputFiles(await saved.path());
  await expect(page.locator('#holds')).toHaveText('12 answers.');
  await expect.poll(async () => (await stored(page)).answers?.length).toBe(12);
  await page.reload();
  const [again] = await Promise.all([
    page.waitForEvent('download'),
    button(page, 'Save a copy').click(),
  ]);
  expect(JSON.parse(await readFile(await again.path(), 'utf8'))).toEqual(copy);

  // What is here is asked about before a file changes it.
  await page.locator('input[type=file]').setInputFiles(file([some[0], answer(90)]));
  await expect(page.getByText('The file has 2 answers; 12 are here.')).toBeVisible();
  await button(page, 'Add it').click();
  await expect(page.locator('#holds')).toHaveText('13 answers.');
  await button(page, 'Undo').click();
  await expect(page.locator('#holds')).toHaveText('12 answers.');
  await page.locator('input[type=file]').setInputFiles(file([answer(90)]));
  await button(page, 'Replace what is here').click();
  await expect(page.locator('#holds')).toHaveText('1 answer.');
  for (const [text, said] of [
    ['{"version":2}', 'version: practice files of version 1 can be read, not 2.'],
    [JSON.stringify({ version: 1, answers: [{ ...some[0], seconds: -3 }] }), 'answers[0].seconds: '],
    ['no', 'copy.json'],
  ]) {
    await page
      .locator('input[type=file]')
      .setInputFiles({ name: 'copy.json', mimeType: 'application/json', buffer: Buffer.from(text) });
    await expect(page.getByRole('status')).toContainText(said);
    await expect(page.locator('#holds')).toHaveText('1 answer.');
  }
});

test('a task of the day is looked for and left, and is still to be done', async ({ open, page }) => {
  await open('drills.html');
  await bring(page, [answer(0), answer(1, 'S', 'right-turn')]);
  await part(page, 'Today');
  const next = page.locator('#what-next');
  await expect(next).toHaveText(/^Two to refresh, four new\. About \w+ minutes\.$/);
  const list = page.locator('.what-comes li');
  await expect(list.nth(0)).toContainText('refresh Roll out: ');
  await expect(list.nth(5)).toContainText('new Predict: ');
  await expect(list.nth(5)).toContainText(/easy$/);
  await button(page, 'Begin').press('Enter');
  await expect(page.getByText('6 left today')).toBeVisible();
  await button(page, 'Stop here').click();
  await expect(next).toContainText('Two to refresh, four new.');
  // In the other hemisphere nothing was practised.
  await page.getByRole('radio', { name: 'South' }).check();
  await expect(next).toContainText('Four new.');
  await page.locator('#level').selectOption('1: gentle turns');
  await expect
    .poll(async () => JSON.parse((await stored(page)).settings?.[0] ?? '{}').level)
    .toBe(1);
  await page.reload();
  await expect(page.locator('#level')).toHaveValue('1');
  await expect(next).toContainText('Four new.');
});

test('two tabs show the same and lose nothing of each other', async ({ open, page, context }) => {
  await open('drills.html');
  const other = await context.newPage();
  await other.goto('drills.html');
  await expect(other.locator('#what-next')).toBeVisible();
  await bring(page, some);
  await part(other, 'Kept here');
  await expect(other.locator('#holds')).toHaveText('12 answers.');
  // Both add at once.
  for (const [tab, number] of [[page, 50], [other, 60]]) {
    await tab.locator('input[type=file]').setInputFiles(file([answer(number)]));
  }
  await button(page, 'Add it').click();
  await expect(other.locator('#holds')).toHaveText('13 answers.');
  await button(other, 'Add it').click();
  for (const tab of [page, other]) await expect(tab.locator('#holds')).toHaveText('14 answers.');
  // One that is not heard by the other tab is not lost by what that does, nor by what it undoes.
  await page.evaluate(
    (silent) =>
      new Promise((done) => {
        const opened = indexedDB.open('dipwise-drills');
        opened.onsuccess = () => {
          const writing = opened.result.transaction('answers', 'readwrite');
          writing.objectStore('answers').put(JSON.stringify(silent), 'elsewhere');
          writing.oncomplete = () => {
            opened.result.close();
            done();
          };
        };
      }),
    answer(70),
  );
  await other.locator('input[type=file]').setInputFiles(file([answer(80)]));
  await button(other, 'Add it').click();
  await expect(page.locator('#holds')).toHaveText('16 answers.');
  await button(other, 'Undo').click();
  for (const tab of [page, other]) await expect(tab.locator('#holds')).toHaveText('15 answers.');
  await part(other, 'Today');
  await other.getByRole('radio', { name: 'South' }).check();
  await part(page, 'Today');
  await expect(page.getByRole('radio', { name: 'South' })).toBeChecked();
});

test('an older database is brought up to date and a damaged record is left alone', async ({
  open,
  page,
}) => {
  // Some page of this origin that opens no database.
  await page.goto('numbers.html');
  await page.evaluate(
    (good) =>
      new Promise((done) => {
        const opened = indexedDB.open('dipwise-drills', 1);
        opened.onupgradeneeded = () => {
          for (const name of ['answers', 'handed']) opened.result.createObjectStore(name);
        };
        opened.onsuccess = () => {
          const writing = opened.result.transaction('answers', 'readwrite');
          const answers = writing.objectStore('answers');
          answers.put(JSON.stringify(good), 'good');
          answers.put('{"task": ', 'cut short');
          answers.put(7, 'no text');
          writing.oncomplete = () => {
            opened.result.close();
            done();
          };
        };
      }),
    answer(0),
  );
  await open('drills.html#kept');
  await expect(page.locator('#holds')).toHaveText('1 answer.');
  await expect(storage(page)).toContainText('2 things that are kept here are damaged');
  const found = await stored(page);
  expect(found.version).toBe(2);
  expect(found.answers).toHaveLength(3);
  await part(page, 'Today');
  await expect(page.locator('#what-next')).toContainText('One to refresh');
});

for (const [what, spoil, said, kept] of [
  [
    'refused',
    () => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('not here', 'SecurityError');
      };
    },
    'This browser lets the page keep nothing',
    false,
  ],
  [
    'full',
    () => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('no room', 'QuotaExceededError');
      };
    },
    'This browser has no room left',
    true,
  ],
  [
    'broken',
    () => {
      const { transaction } = IDBDatabase.prototype;
      IDBDatabase.prototype.transaction = function broken(names, mode) {
        if (mode === 'readwrite') throw new DOMException('broken', 'UnknownError');
        return transaction.call(this, names, mode);
      };
    },
    'This browser’s storage broke down',
    true,
  ],
]) {
  test(`a storage that is ${what} is said, and practice goes on`, async ({ open, page }) => {
    await open('drills.html');
    await bring(page, some);
    await expect.poll(async () => (await stored(page)).answers?.length).toBe(12);
    await page.evaluate(spoil);
    if (kept) {
      await page.locator('input[type=file]').setInputFiles(file([answer(90)]));
      await button(page, 'Replace what is here').click();
      await expect(storage(page)).toContainText(said);
      await expect(page.locator('#holds')).toHaveText('1 answer.');
      await part(page, 'Progress');
      await expect(page.locator('#skill-rose svg')).toBeVisible();
      // What was kept before stays, since clearing and writing are one.
      await page.reload();
      await part(page, 'Kept here');
      await expect(page.locator('#holds')).toHaveText('12 answers.');
      await expect(storage(page)).toBeEmpty();
    } else {
      await page.addInitScript(spoil);
      await page.reload();
      await expect(storage(page)).toContainText(said);
      await bring(page, [answer(90)]);
      await expect(page.locator('#holds')).toHaveText('1 answer.');
      await part(page, 'Today');
      await expect(page.locator('#what-next')).toContainText('to refresh');
    }
  });
}

test('a tab with an older page blocks nothing but the storage', async ({ open, page, context }) => {
  const older = await context.newPage();
  await older.goto('numbers.html');
  await older.evaluate(
    () =>
      new Promise((done) => {
        const opened = indexedDB.open('dipwise-drills', 1);
        opened.onupgradeneeded = () => {
          for (const name of ['answers', 'handed']) opened.result.createObjectStore(name);
        };
        opened.onsuccess = () => {
          globalThis.held = opened.result;
          done();
        };
      }),
  );
  await open('drills.html');
  await expect(storage(page)).toContainText('Another tab with an older page');
  await bring(page, some);
  await expect(page.locator('#holds')).toHaveText('12 answers.');
  await older.close();
  await expect(storage(page)).toBeEmpty();
  await expect.poll(async () => (await stored(page)).answers?.length).toBe(12);
  // A page that is newer still takes over: this one lets go and says so.
  const newer = await context.newPage();
  await newer.goto('numbers.html');
  await newer.evaluate(
    () =>
      new Promise((done) => {
        const opened = indexedDB.open('dipwise-drills', 99);
        opened.onsuccess = () => done();
      }),
  );
  await expect(storage(page)).toContainText('made by a newer page');
  await expect(page.locator('#holds')).toHaveText('12 answers.');
});

test('pictures with their figures, and nothing for axe to mend', async ({ open, page }) => {
  await open('drills.html#progress');
  await expect(page.getByText('Nothing practised yet.')).toBeVisible();
  await bring(page, some);
  await part(page, 'Progress');
  await expect(page.locator('.what-next')).toContainText('12 answers on 6 days.');
  await expect(page.locator('.what-next')).toContainText('asked harder');
  await expect(page.locator('#weakest')).toContainText('“Roll out” goes least well: 9 of 12');
  await expect(page.getByRole('link', { name: 'Practise it' })).toHaveAttribute(
    'href',
    '#practise?kind=roll-out',
  );
  await expect(page.locator('#skill-rose svg desc')).toContainText('Least sure:');
  for (const figures of await page.locator('.figures summary').all()) await figures.click();
  await expect(page.getByRole('row', { name: /^north / })).toContainText('100 %');
  await expect(page.getByRole('row', { name: /^north-west/ })).toContainText('not yet');
  await page.getByRole('combobox').first().selectOption('Predict');
  await expect(page.getByRole('row', { name: /^north / })).toContainText('not yet');
  await page.getByRole('combobox').nth(1).selectOption('Roll out: right turn, west');
  await expect(page.getByRole('row', { name: /^in 30 days/ })).toContainText('%');
  for (const name of ['Progress', 'Today', 'Kept here']) {
    await part(page, name);
    if (name === 'Kept here') await button(page, 'Delete it…').click();
    if (name === 'Today') {
      await page.locator('#away').fill('5');
      await page.locator('#tolerance').fill('5');
      await expect(page.locator('#away-wrong')).toHaveText(
        'It must be from 20° to 70°, not “5”.',
      );
    }
    await nothingToMend(page, name);
    expect(await across(page), name).toBe(0);
  }
});
