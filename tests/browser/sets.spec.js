// Sets of tasks: composed and handed out, opened by a student, gathered by the instructor. The
// class, its students and what they answer are made up here.

import { execFile } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { promisify } from 'node:util';
import { nothingToMend } from './axe.js';
import { stage } from './drilling.js';
import { expect, test } from './fixtures.js';
import { readCode, sealed } from './passing_on.js';
import { across } from './fits.js';

// The program, set by `cargo xtask test browser`.
const { DIPWISE } = process.env;

const run = promisify(execFile);
const button = (page, name) => page.getByRole('button', { name, exact: true });
const field = (page, name) => page.getByRole('textbox', { name, exact: true });
const link = (page) => page.locator('#set-link');
const file = (name, text) => ({ name, mimeType: 'application/json', buffer: Buffer.from(text) });

async function save(page, name) {
  const [saved] = await Promise.all([page.waitForEvent('download'), button(page, name).click()]);
  return { name: saved.suggestedFilename(), path: await saved.path() };
}

const SET = {
  version: 1,
  title: 'Second week',
  seed: 12,
  parts: [
    { kind: 'corrections', count: 2, level: 1, tolerance_deg: 10 },
    { kind: 'predict', count: 2, level: 1, tolerance_deg: 10 },
  ],
};

// The results of a student who answers right or wrong so.
async function results(student, rights) {
  expect(DIPWISE, 'where the program is: run this by `cargo xtask test browser`').toBeTruthy();
  const tasks = async (kind) => {
    const names = ['--kind', kind, '--seed', '12', '--level', '1', '--count', '4'];
    const { stdout } = await run(DIPWISE, ['drill', ...names, '--format', 'json']);
    return JSON.parse(stdout);
  };
  const kinds = ['corrections', 'corrections', 'predict', 'predict'];
  const made = (await Promise.all(['corrections', 'predict'].map(tasks))).flat();
  const answers = rights.map((right, number) => {
    const kind = kinds[number];
    const { choices } = made.find((it) => it.kind === kind && it.number === number);
    const task = { kind, seed: 12, number, level: 1, tolerance_deg: 10 };
    return {
      record: { version: 1, task, chosen: choices.findIndex((it) => it.right === right) },
      seconds: 20 + number,
      outcome: right ? 'passed' : 'failed',
    };
  });
  return { version: 1, student, set: SET, seed: 12, answers };
}

test('a set is composed by the keyboard, and every change is undone', async ({ open, page }) => {
  await open('sets.html');
  await expect(link(page)).toHaveValue(/drills\.html#set=[\w-]+$/);
  await field(page, 'Title').fill('Onto north');
  await page.locator('#add-part').press('Enter');
  await expect(page.locator('#kind-2')).toBeFocused();
  await page.keyboard.type('Timed');
  const third = page.getByRole('group', { name: 'Part 3' });
  await expect(third.locator('#kind-2')).toHaveValue('timed-turn');
  await field(third, 'Latitude').fill('33 S');
  await third.getByRole('button', { name: 'Earlier' }).press('Enter');
  const second = page.getByRole('group', { name: 'Part 2' });
  await expect(field(second, 'Latitude')).toHaveValue('33 S');
  await expect(second.getByRole('button', { name: 'Earlier' })).toBeFocused();
  await page.getByRole('group', { name: 'Part 1' }).getByRole('button', { name: 'Remove' }).press('Enter');
  await expect(page.locator('.set-part')).toHaveCount(2);
  await expect(page.locator('#undo')).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.locator('.set-part')).toHaveCount(3);
  await page.locator('#redo').press('Enter');
  await expect(page.locator('.set-part')).toHaveCount(2);
  await page.getByRole('radio', { name: 'Mixed' }).press('Space');
  await page.getByRole('checkbox', { name: 'Slow motion' }).press('Space');

  // Nothing is lost by a reload, nor by coming back without the address.
  await expect(page).toHaveURL(/title=Onto\+north.*order=mixed.*help=slow-motion.*lat=33\+S/);
  for (const again of [() => page.reload(), () => open('sets.html')]) {
    await again();
    await expect(field(page, 'Title')).toHaveValue('Onto north');
    await expect(field(page.getByRole('group', { name: 'Part 1' }), 'Latitude')).toHaveValue('33 S');
    await expect(page.getByRole('checkbox', { name: 'Slow motion' })).toBeChecked();
  }

  for (const [name, wrong, said] of [
    ['Time limit, minutes', '0', 'Time limit in minutes must be from 1 to 1440, not 0.'],
    ['Seed', 'x', 'Seed must be a whole number, such as 7, or empty for fresh tasks, not “x”.'],
    ['Title', 'y'.repeat(121), 'Title can have at most 120 characters, not 121.'],
  ]) {
    await field(page, name).fill(wrong);
    await expect(page.locator('.set-fields')).toContainText(said);
    await expect(link(page)).toBeHidden();
    await field(page, name).fill('');
  }
  for (const [name, wrong, said] of [
    ['How many', '2.5', 'How many must be a whole number, such as 5, not “2.5”.'],
    ['Latitude', '71', 'Latitude must be from −70° to 70°, not 71°.'],
    ['Within ±°', '0', 'Tolerance must be from 1° to 30°, not 0°.'],
  ]) {
    const input = field(page.getByRole('group', { name: 'Part 1' }), name);
    const right = await input.inputValue();
    await input.fill(wrong);
    await expect(page.locator('.set-parts')).toContainText(said);
    await input.fill(right);
  }
  await expect(link(page)).toBeVisible();
});

test('what it asks is shown: one task with its answer, and all questions', async ({ open, page }) => {
  await open('sets.html#compose?title=x&seed=12&kind=corrections&count=2&level=1&within=10');
  await button(page, 'Show me one').click();
  await expect(page.locator('.one-task .right')).toHaveCount(1);
  await button(page, 'Show all questions').click();
  const { stdout } = await run(DIPWISE, [
    ...['drill', '--kind', 'corrections', '--seed', '12', '--level', '1', '--count', '2'],
    ...['--format', 'json'],
  ]);
  const asked = JSON.parse(stdout).map((it) => `Corrections ${it.question}`);
  await expect(page.locator('.questions li')).toHaveText(asked);
});

test('the link, the code and the file open the same set', async ({ open, page }) => {
  await open('sets.html#compose?title=Second+week&minutes=5&kind=predict&count=3&lat=-40&level=1&within=10&kind=roll-out&count=1&lat=&level=2&within=5');
  await expect(link(page)).toHaveValue(/^http/);
  const address = await link(page).inputValue();
  expect(address.length).toBeLessThan(271);
  expect(await readCode(page)).toBe(address);
  const saved = await save(page, 'Save the set’s file');
  expect(saved.name).toBe('dipwise-set.json');
  const text = await readFile(saved.path, 'utf8');
  expect(JSON.parse(text)).toMatchObject({ version: 1, title: 'Second week', time_limit_s: 300 });

  const asks = ['Predict: 3 tasks at 40° S', 'Roll out: 1 task, within ±5°'];
  const shown = async () => {
    await expect(page.getByRole('heading', { level: 2 })).toHaveText('Second week');
    for (const it of asks) await expect(page.locator('.handed ul')).toContainText(it);
    await expect(page.locator('.handed')).toContainText('Time limit: 5 min.');
  };
  await open(address);
  await shown();
  await open('drills.html#set=');
  await page.locator('.handed input[type=file]').setInputFiles(file('s.json', '{"version": 1}'));
  await expect(page.getByRole('alert').filter({ hasText: 'missing field' })).toBeVisible();
  await page.locator('.handed input[type=file]').setInputFiles(file('s.json', text));
  await shown();
  await expect(page).toHaveURL(address);

  // The instructor can go on from the file too.
  await open('sets.html#compose?title=other&kind=read&count=1&lat=&level=1&within=10');
  await page.locator('.form input[type=file]').setInputFiles(file('s.json', text));
  await expect(link(page)).toHaveValue(address);

  const code = address.split('#set=')[1];
  for (const [other, said] of [
    [code.slice(0, -1), 'was cut short or changed'],
    [sealed({ version: 2, kind: 4, body: Buffer.from([4, 0]) }), 'made by a newer version'],
    [sealed({ kind: 4, body: Buffer.from([4, 0]) }), 'cannot be opened. missing field'],
  ]) {
    await open(`drills.html#set=${other}`);
    await expect(page.getByRole('alert').filter({ hasText: said })).toBeVisible();
  }
  // A set’s link among those of flights leads here.
  await page.goto(`index.html#d=${code}`);
  await page.waitForURL(/drills\.html#set=/);
  await shown();
});

test('a set goes on after a reload, and its time with it', async ({ open, page }) => {
  await page.clock.install();
  await open(
    'sets.html#compose?title=Short&minutes=2&kind=corrections&count=2&lat=&level=1&within=10',
  );
  await expect(async () => {
    await page.clock.runFor(500);
    expect(await link(page).inputValue()).toMatch(/^http/);
  }).toPass({ timeout: 20_000 });
  await open(await link(page).inputValue());
  await page.getByRole('textbox', { name: 'Your name, if you like' }).fill('A. Invented');
  await page.locator('#begin-set').press('Enter');
  await expect(page.locator('#handed-at')).toHaveText('Task 1 of 2');
  await expect(page.locator('#handed-left')).toHaveText(/^(2 min|1 min 5\d s) left$/);
  await page.getByRole('group', { name: 'Answers' }).getByRole('button').first().press('Enter');
  await button(page, 'Next task').press('Enter');
  await expect(page.locator('#handed-at')).toHaveText('Task 2 of 2');
  await page.clock.runFor(70_000);
  await expect(page.locator('#handed-left')).toHaveText(/^(4\d|50) s left$/);
  await expect(page.getByText('Less than a minute is left.')).toBeVisible();

  await page.reload();
  await expect(page.getByText('begun this set before: 1 of 2 tasks are answered')).toBeVisible();
  await page.locator('#begin-set').press('Enter');
  await expect(page.locator('#handed-at')).toHaveText('Task 2 of 2');
  await expect(page.locator('#handed-left')).toHaveText(/^\d\d s left$/);
  await page.clock.runFor(60_000);
  await expect(page.getByRole('heading', { level: 2 })).toHaveText('Time is up');
  await expect(page.locator('#handed-score')).toHaveText(
    /^[01] passed of 1 answered; the set asks 2\.$/,
  );

  const saved = await save(page, 'Save results');
  const results = JSON.parse(await readFile(saved.path, 'utf8'));
  expect(results).toMatchObject({ version: 1, student: 'A. Invented' });
  expect(results.answers[0].record.task).toMatchObject({ kind: 'corrections', number: 0 });
  expect(results.seed).toBeGreaterThan(0);
  const csv = await save(page, 'Save as CSV');
  expect(await readFile(csv.path, 'utf8')).toContain('\nA. Invented,Short,corrections,');
  const statements = await save(page, 'Save xAPI statements');
  const said = await readFile(statements.path, 'utf8');
  expect(JSON.parse(said)).toHaveLength(2);
  expect(said).not.toContain('Invented');
});

test('of two tabs with a set the first answer to a task counts', async ({ open, page, context }) => {
  await open('sets.html#compose?title=Two&seed=12&kind=corrections&count=2&lat=&level=1&within=10');
  await expect(link(page)).toHaveValue(/^http/);
  const address = await link(page).inputValue();
  const { stdout } = await run(DIPWISE, [
    ...['drill', '--kind', 'corrections', '--seed', '12', '--level', '1', '--format', 'json'],
  ]);
  const right = JSON.parse(stdout)[0].choices.findIndex((it) => it.right);
  const other = await context.newPage();
  await other.goto(address);
  await open(address);
  for (const tab of [page, other]) {
    await tab.locator('#begin-set').click();
    await expect(tab.locator('#handed-at')).toHaveText('Task 1 of 2');
    await expect(tab.getByRole('group', { name: 'Answers' }).getByRole('button')).toHaveCount(4);
  }
  // One tab finds out what is right, the other knows it then.
  const answer = async (tab, at) => {
    await stage(tab, 'asked');
    await tab.keyboard.press(String(at + 1));
  };
  await answer(page, (right + 1) % 4);
  await expect(page.getByRole('heading', { name: 'Not right' })).toBeVisible();
  await expect(other.locator('#begun-before')).toHaveText(/gives no mark/);
  await answer(other, right);
  await expect(other.locator('#not-counted')).toContainText('the task was begun before');
  await button(other, 'Next task').click();
  await expect(other.locator('#handed-at')).toHaveText('Task 2 of 2');
  await answer(other, 0);
  await button(other, 'Next task').click();
  await expect(other.getByRole('heading', { name: 'The set is done' })).toBeFocused();
  const saved = await save(other, 'Save results');
  const { answers } = JSON.parse(await readFile(saved.path, 'utf8'));
  expect(answers.map((it) => it.record.task.number)).toEqual([0, 1]);
  expect(answers[0].outcome).toBe('failed');
  // The first tab does not ask again what the other has answered.
  await button(page, 'Next task').click();
  await expect(page.getByRole('heading', { name: 'The set is done' })).toBeVisible();
});

test('a class is gathered: bad files are refused, changed marks put right', async ({ open, page }) => {
  const [anna, ben, cleo] = await Promise.all([
    results('Anna Invented', [true, true, true, true]),
    results('', [true, false, false, true]),
    results('Cleo Invented', [false, true, false, true]),
  ]);
  // Ben, who typed no name, says of a wrong answer that it passed; Cleo’s file is damaged.
  ben.answers[1].outcome = 'passed';
  cleo.answers[2].record.task.number = 9;
  await open('sets.html#class');
  await expect(page.locator('.about')).toContainText('nothing is sent anywhere');
  const input = page.locator('.drop input');
  await input.setInputFiles([
    file('anna.json', JSON.stringify(anna)),
    file('ben.json', JSON.stringify(ben)),
    file('cleo.json', JSON.stringify(cleo)),
    file('note.txt', 'not a file of results'),
    file('again.json', JSON.stringify(anna)),
  ]);
  const refused = page.locator('.refused-files li');
  await expect(refused).toHaveCount(3, { timeout: 30_000 });
  await expect(refused.nth(0)).toHaveText(
    'cleo.json: answers[2].record.task: the set does not ask for this task, or not twice.',
  );
  await expect(refused.nth(1)).toContainText('note.txt: it is no JSON: ');
  await expect(refused.nth(2)).toHaveText('again.json: it holds the same as anna.json.');
  await expect(page.locator('.kept-files li')).toContainText([
    'anna.json: 4 answers',
    'ben.json: 4 answers; 1 mark was not what its record gives, and is put right',
  ]);
  const rows = page.locator('.class-table tbody tr, .class-table tfoot tr');
  await expect(rows.nth(0)).toHaveText('Anna Invented2 of 22 of 24 of 40');
  await expect(rows.nth(1)).toHaveText('ben1 of 21 of 22 of 40');
  await expect(rows.nth(2)).toHaveText('All students3 of 43 of 46 of 80');
  await expect(page.locator('.mistakes li')).toHaveCount(2);

  const csv = await save(page, 'Save table as CSV');
  const lines = (await readFile(csv.path, 'utf8')).trim().split('\n');
  expect(lines[1]).toBe('Anna Invented,2,2,2,2,4,4,4');
  const json = await save(page, 'Save table as JSON');
  expect(JSON.parse(await readFile(json.path, 'utf8')).all.total).toEqual({ answered: 8, passed: 6 });
  const xapi = await save(page, 'Save xAPI statements');
  const statements = JSON.parse(await readFile(xapi.path, 'utf8'));
  expect(statements).toHaveLength(10);
  const accounts = new Set(statements.map(({ actor }) => actor.account.name));
  expect(accounts.size).toBe(2);
  expect(JSON.stringify(statements)).not.toContain('Invented');
  const scores = statements.flatMap(({ result }) => result.score?.raw ?? []);
  expect(scores).toEqual([4, 2]);

  // What takes long is shown as it goes on, and can be ended.
  const long = { ...anna, student: 'Dora Invented', set: structuredClone(SET) };
  long.set.parts = [{ kind: 'name-the-cause', count: 400, level: 3, tolerance_deg: 10 }];
  long.answers = Array.from({ length: 400 }, (_, number) => {
    const task = { kind: 'name-the-cause', seed: 12, number, level: 3, tolerance_deg: 10 };
    return { record: { version: 1, task, chosen: 0 }, seconds: 5, outcome: 'failed' };
  });
  await input.setInputFiles(file('dora.json', JSON.stringify(long)));
  await expect(page.getByRole('progressbar')).toHaveAttribute('value', /[1-9]/);
  await button(page, 'Cancel').click();
  await expect(page.getByText('Cancelled: the files that were not finished')).toBeVisible();
  await expect(rows).toHaveCount(3);

  await page.getByRole('button', { name: 'Take anna.json out' }).press('Enter');
  await expect(rows).toHaveCount(2);
  await button(page, 'Clear the table').click();
  await expect(page.locator('.class-table')).toBeHidden();
});

test('the package for a course platform holds the tasks in words', async ({ open, page }) => {
  await open('sets.html#compose?title=Q&seed=3&kind=predict&count=2&lat=&level=1&within=10&kind=roll-out&count=2&lat=&level=1&within=10');
  await expect(page.locator('.package')).toContainText('has 2 tasks, asked in words, the same for all students. 2 need the motion');
  const zip = await save(page, 'Save for a course platform (QTI 2.1)');
  expect(zip.name).toBe('dipwise-qti.zip');
  const { stdout: tested } = await run('unzip', ['-t', zip.path]);
  expect(tested).toContain('No errors detected');
  const { stdout: names } = await run('unzip', ['-Z1', zip.path]);
  const items = ['task-001.xml', 'task-002.xml'];
  expect(names.trim().split('\n')).toEqual(['imsmanifest.xml', 'test.xml', ...items]);
  const { stdout: xml } = await run('unzip', ['-p', zip.path, 'task-001.xml']);
  const read = await page.evaluate((text) => {
    const item = new DOMParser().parseFromString(text, 'application/xml').documentElement;
    const choices = item.querySelectorAll('simpleChoice').length;
    return [item.localName, choices, item.querySelector('prompt').textContent];
  }, xml);
  expect(read).toEqual(['assessmentItem', 3, expect.stringContaining('At latitude ')]);
});

test.describe('for everyone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test('axe finds nothing to mend and nothing is cut off', async ({ open, page }) => {
    const clean = async (what) => {
      await nothingToMend(page, what);
      expect(await across(page), what).toBe(0);
    };
    await open('sets.html#compose?title=x&seed=3&kind=corrections&count=1&lat=99&level=1&within=10');
    await clean('a fault');
    await field(page, 'Latitude').fill('');
    await expect(link(page)).toHaveValue(/^http/);
    await button(page, 'Show me one').click();
    await expect(page.locator('.one-task')).toBeVisible();
    await clean('handed out');
    const address = await link(page).inputValue();
    await open('sets.html#class');
    await page.locator('.drop input').setInputFiles([
      file('a.json', JSON.stringify(await results('A. Invented', [true, false, true]))),
      file('b.json', '{}'),
    ]);
    await expect(page.locator('.class-table tbody tr')).toHaveCount(1);
    await clean('class');
    await open(address);
    await expect(page.locator('#begin-set')).toBeVisible();
    await clean('handed');
  });
});
