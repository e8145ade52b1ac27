// The page of numbers: its figures are those of the program, its address carries all of it, and
// it serves everyone.

import { execFile } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { promisify } from 'node:util';
import { nothingToMend } from './axe.js';
import { expect, test } from './fixtures.js';
import { across, fitAThumb } from './fits.js';

// The program, set by `cargo xtask test browser`.
const { DIPWISE } = process.env;

const run = promisify(execFile);
const field = (page, name) => page.getByRole('textbox', { name, exact: true });
const three = (degrees) => `${String(Math.round(degrees) % 360 || 360).padStart(3, '0')}°`;
// Until the turns all round are flown.
const flown = (page) => expect(page.locator('#rose svg')).toBeVisible({ timeout: 30_000 });

test.describe('the planner', () => {
  test.use({ permissions: ['clipboard-read', 'clipboard-write'] });

  test('gives the figures of the program and copies them', async ({ open, page }) => {
    expect(DIPWISE, 'where the program is: run this by `cargo xtask test browser`').toBeTruthy();
    await open('numbers.html#planner?by=place&lat=30&lon=-95&date=2026-06-01&bank=24');
    const { stdout } = await run(DIPWISE, [
      ...['table', '--lat', '30', '--lon=-95', '--date', '2026-06-01'],
      ...['--bank', '24', '--every', '30', '--format', 'json'],
    ]);
    const table = JSON.parse(stdout);
    const north = table.find(({ target_deg, turn }) => target_deg === 0 && turn === 'right');
    const names = ['rule_deg', 'half_rule_deg', 'steady_deg', 'float_deg'];
    await expect(page.locator('#answers dd')).toHaveText(names.map((name) => three(north[name])));

    await flown(page);
    for (const row of table) {
      const cells = page.getByRole('row', { name: new RegExp(`^${three(row.target_deg)}`) });
      const from = row.turn === 'left' ? 0 : 5;
      const shown = (await cells.getByRole('cell').allTextContents()).slice(from, from + 4);
      expect(shown).toEqual(names.map((name) => three(row[name])));
    }

    await page.getByRole('button', { name: 'Copy as CSV' }).click();
    await expect(page.getByText('Copied.')).toBeVisible();
    const csv = await page.evaluate(() => navigator.clipboard.readText());
    const program = await run(DIPWISE, [
      ...['table', '--lat', '30', '--lon=-95', '--date', '2026-06-01'],
      ...['--bank', '24', '--format', 'csv'],
    ]);
    expect(csv).toBe(program.stdout);
    await page.getByRole('button', { name: 'Copy image' }).click();
    await expect
      .poll(() =>
        page.evaluate(async () => (await navigator.clipboard.read()).flatMap(({ types }) => types)),
      )
      .toContain('image/png');
    // The lead by the rate of roll is the program's too.
    await page.getByRole('radio', { name: 'Roll rate' }).check();
    const rolled = await run(DIPWISE, [
      ...['table', '--lat', '30', '--lon=-95', '--date', '2026-06-01', '--bank', '24'],
      ...['--roll-rate', '10', '--every', '360', '--format', 'json'],
    ]);
    const onto = JSON.parse(rolled.stdout)[1];
    await expect(page.locator('#answers dd')).toHaveText(names.map((name) => three(onto[name])));
    await page.getByRole('radio', { name: '½ bank' }).check();
    await flown(page);
    await page.getByRole('button', { name: 'Copy as text' }).click();
    await expect
      .poll(() => page.evaluate(() => navigator.clipboard.readText()))
      .toMatch(/^target +left turn latitude/);
    for (const [name, file] of [['Save SVG', 'svg'], ['Save PNG', 'png']]) {
      const [saved] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name }).click(),
      ]);
      expect(saved.suggestedFilename()).toBe(`dipwise-roll-outs.${file}`);
      const bytes = await readFile(await saved.path());
      expect(bytes.length).toBeGreaterThan(5000);
      if (file === 'svg') expect(bytes.toString()).toContain('When to begin to roll out');
    }
  });

  test('is cancelled and goes on, and two latitudes stand on one rose', async ({ open, page }) => {
    await open('numbers.html#planner?bank=3&kt=200&beside=30%20S');
    await page.getByRole('button', { name: 'Cancel' }).click();
    const bar = page.getByRole('progressbar');
    const halted = await bar.getAttribute('value');
    await page.waitForTimeout(300);
    expect(await bar.getAttribute('value')).toBe(halted);
    await page.getByRole('button', { name: 'Go on' }).click();
    await expect(bar).not.toHaveAttribute('value', halted);
    await field(page, 'Bank').fill('20');
    await flown(page);
    await expect(page.locator('#rose')).toContainText('30° S');
    await expect(page.locator('#rose')).toContainText('52° N');
  });
});

test('all of it is in the address, whatever an address says', async ({ open, page }) => {
  await open('numbers.html');
  await field(page, 'Bank').fill('22');
  await page.getByRole('radio', { name: 'Left' }).check();
  await expect(page).toHaveURL(/#planner\?bank=22&turn=left$/);
  const answers = page.locator('#answers dd').first();
  await expect(answers).not.toHaveText('…');
  const before = await page.locator('#answers dd').allTextContents();
  await page.reload();
  await expect(page.locator('#answers dd')).toHaveText(before);

  // What all parts have in common goes with the user.
  await field(page, 'Latitude').fill('41 S');
  await page.getByRole('link', { name: 'Compass swing' }).click();
  await expect(page).toHaveURL(/#swing\?lat=41/);
  await expect(field(page, 'Latitude')).toHaveValue('41 S');
  await page.goBack();
  await expect(field(page, 'Bank')).toHaveValue('22');

  for (const [address, said] of [
    ['#planner?bank=95', 'Bank must be from 3° to 60°, not 95°.'],
    ['#planner?lat=NaN', 'Latitude must be a number of degrees, such as 52 or 33 S, not “NaN”.'],
    ['#planner?turn=%3Cscript%3E', 'Turn must be “left” or “right”, not “<script>”.'],
    ['#planner?turning=rate&rate=9&kt=250', 'Rate of turn at this airspeed takes 64° of bank'],
    ['#planner?kt=1e999', 'Airspeed must be'],
    ['#planner?beside=%E0%A4%A', 'Second latitude must be'],
    ['#corrections?d000=20&d045=-39', 'changes faster than the heading'],
    ['#corrections?variation=west', 'Variation must be a number of degrees'],
    ['#hand-outs?sheet=worksheet&seed=1.5', 'Number must be a whole number, such as 7'],
    ['#swing?ns=9000', 'N–S adjuster must be from −6000 nT to 6000 nT, not 9000 nT.'],
    ['#swing?step=9', 'Step must be 0 to 4, not “9”.'],
    ['#swing?swung=maybe', 'Swung must be “yes” or “no”, not “maybe”.'],
    [`#${'a?'.repeat(3000)}`, ''],
  ]) {
    await page.evaluate((to) => {
      window.location.hash = to;
    }, address);
    if (said) await expect(page.locator('main')).toContainText(said);
    await expect(page.getByRole('heading', { level: 2 })).toBeVisible();
  }
});

test('a link by place names its day, so that it gives the same on another', async ({ open, page }) => {
  await open('numbers.html#planner?by=place&lat=30&lon=-95');
  const day = await page.locator('#date').inputValue();
  expect(day).toMatch(/^\d{4}-\d\d-\d\d$/);
  await expect(page).toHaveURL(new RegExp(`date=${day}`));
  await page.getByRole('link', { name: 'Hand-outs' }).click();
  await expect(page).toHaveURL(new RegExp(`#hand-outs\\?.*date=${day}`));
});

test('what is wrong in a field that is not there stops nothing', async ({ open, page }) => {
  await open('numbers.html#hand-outs?sheet=deviation&bank=x&lead=roll&roll=y&beside=z');
  const mend = page.locator('.mend');
  await expect(page.locator('.paper svg')).toContainText('Deviation card');
  await expect(mend).toHaveCount(0);
  const sheet = (name) => page.locator('#sheet').getByRole('radio', { name });
  await sheet('Memory aids').check();
  await expect(field(page, 'Airspeed')).toBeVisible();
  await expect(field(page, 'Bank')).toHaveCount(0);
  await expect(page.locator('.paper svg')).toContainText('Memory aids');
  await sheet('Worksheet').check();
  await expect(mend).toBeVisible();
  await field(page, 'Bank').fill('20');
  await expect(mend).toHaveCount(0);
  await expect(page.locator('.paper svg')).toHaveCount(2);
  await sheet('Roll-outs').check();
  await expect(page.locator('main')).toContainText('Rate of roll must be a number');
  await expect(page.locator('main')).toContainText('Second latitude must be');
  await page.evaluate(() => {
    window.location.hash = '#swing?iron=set&seed=x';
  });
  await expect(page.locator('#ramp-deviation')).toHaveText(/°/);
  await expect(mend).toHaveCount(0);
});

test('the corrections show their working, by typed figures and by place', async ({ open, page }) => {
  await open('numbers.html#corrections');
  // Worked by hand in crates/lessons/src/corrections.rs: 085° magnetic, 2.8° W of deviation.
  await expect(page.locator('#steer')).toHaveText(/For 075° true steer 088° by compass/);
  const lines = page.locator('.working tbody td');
  await expect(lines).toHaveText(['075.0°', '10° W', '085.0°', '2.8° W', '087.8°']);
  await page.getByRole('radio', { name: 'Magnetic' }).check();
  await field(page, 'Heading').fill('85');
  await expect(lines).toHaveText(['085.0°', '2.8° W', '087.8°', '10° W', '075.0°']);
  await expect(page.locator('.working tbody th').nth(1)).toHaveText(/west: add$/);
  await expect(page.locator('.working tbody th').nth(3)).toHaveText(/west: take away$/);
  await page.getByRole('radio', { name: 'Compass' }).check();
  await field(page, 'Heading').fill('90');
  await expect(lines).toHaveText(['090.0°', '3° W', '087.0°', '10° W', '077.0°']);
  // A 3–4–5 triangle of wind, by hand: 60 kt from the right take 36.9° and leave 80 kt.
  await page.getByRole('radio', { name: 'Track' }).check();
  for (const [name, text] of [['True track', '360'], ['Wind from', '90'], ['Wind speed', '60']]) {
    await field(page, name).fill(text);
  }
  await expect(lines).toHaveText([
    ...['000.0°', '36.9° right', '036.9°', '10° W', '046.9°', /°/, /°/, '80 kt'],
  ]);
  await field(page, 'Wind speed').fill('100');
  await expect(page.locator('main')).toContainText(
    'wind speed must be below the airspeed of 100 kt, not 100 kt',
  );
  await page.getByRole('radio', { name: 'Compass' }).check();
  await page.getByRole('radio', { name: 'Place, date' }).check();
  await field(page, 'Latitude').fill('30');
  await field(page, 'Longitude').fill('95 W');
  const { stdout } = await run(DIPWISE, ['field', '--lat', '30', '--lon=-95', '--date', '2026-06-01']);
  const east = Number(/variation\D*?(-?[\d.]+)/i.exec(stdout)[1]);
  await page.locator('#date').fill('2026-06-01');
  await expect(lines.nth(3)).toHaveText(`${Math.abs(Math.round(east * 10) / 10)}° ${east < 0 ? 'W' : 'E'}`);
});

test('a swing done by the keyboard alone ends within the limit', async ({ open, page }) => {
  await open('numbers.html#swing?seed=4');
  const button = (name) => page.getByRole('button', { name, exact: true });
  const swing = button('Swing it all round');
  const degrees = async (id) => Number.parseFloat(await page.locator(id).textContent());
  const greatest = async () =>
    Number(/deviation ([\d.]+)°/.exec(await page.locator('#verdict').textContent())[1]);
  await swing.press('Enter');
  const asFound = await greatest();
  await button('North').focus();
  const found = {};
  for (const [key, take] of [
    ['n', 'Take out all on north'],
    ['e', 'Take out all on east'],
    ['s', 'Take out half on south'],
    ['w', 'Take out half on west'],
  ]) {
    await button('North').focus();
    await page.keyboard.press(key);
    found[key] = await degrees('#ramp-deviation');
    await button(take).focus();
    await page.keyboard.press('Enter');
    const left = await degrees('#ramp-deviation');
    expect(Math.abs(left - (key === 's' || key === 'w' ? found[key] / 2 : 0))).toBeLessThan(0.11);
  }
  await expect(page.locator('#next')).toContainText('Adjusted.');
  await expect(page.locator('#verdict')).toContainText('within the limit of 10°');
  expect(await greatest()).toBeLessThan(asFound);
  await expect(page.locator('.paper svg')).toContainText('Deviation card');
  await page.getByRole('radio', { name: 'Letter' }).check();
  await expect(page.locator('.papers')).toHaveAttribute('data-paper', 'letter');
  await expect(page).toHaveURL(/paper=letter/);
  const off = await page.locator('#verdict').textContent();
  await page.getByRole('radio', { name: 'On', exact: true }).focus();
  await page.keyboard.press('Space');
  await expect(page.locator('#verdict')).not.toHaveText(off);
  // The sliders of the adjusters are for the keyboard too.
  const slider = page.getByRole('slider', { name: 'N–S adjuster, slider' });
  const before = await slider.inputValue();
  await slider.press('ArrowRight');
  expect(Number(await slider.inputValue())).toBeGreaterThan(Number(before));
});

test.describe('tables of the swing', () => {
  test.use({ permissions: ['clipboard-read', 'clipboard-write'] });

  test('are each copied as text, as CSV and as image', async ({ open, page }) => {
    await open('numbers.html#swing?seed=4&swung=yes');
    for (const [name, csv] of [
      ['Coefficients', /^coefficient,means,least squares\r\nA,-?[\d.]+,-?[\d.]+\r\nB,/],
      ['In the bank: heeling error', /^heading,30 left,15 left,level,15 right,30 right\r\nNorth,/],
    ]) {
      const group = page.getByRole('group', { name });
      await group.getByRole('button', { name: 'Copy as CSV' }).click();
      await expect.poll(() => page.evaluate(() => navigator.clipboard.readText())).toMatch(csv);
      await group.getByRole('button', { name: 'Copy as text' }).click();
      await expect
        .poll(() => page.evaluate(() => navigator.clipboard.readText()))
        .not.toMatch(csv);
      await group.getByRole('button', { name: 'Copy image' }).click();
      await expect
        .poll(() =>
          page.evaluate(async () =>
            (await navigator.clipboard.read()).flatMap(({ types }) => types),
          ),
        )
        .toContain('image/png');
    }
  });
});

test('iron set by hand is swung, banked and flown', async ({ open, page }) => {
  await open('numbers.html#swing');
  await page.getByText('Worked examples').click();
  await page.getByRole('button', { name: 'Iron below the card' }).click();
  await expect(page).toHaveURL(/iron=set/);
  await expect(field(page, 'R')).toHaveValue('5000');
  const row = page.getByRole('row', { name: /^North/ });
  const level = await row.getByRole('cell').nth(2).textContent();
  expect(Number.parseFloat(level)).toBeLessThan(0.2);
  await page.getByRole('radio', { name: 'Wing down, straight' }).check();
  await expect(row.getByRole('cell').nth(4)).toHaveText(/^\d+(\.\d)?° W$/);
  expect(Number.parseFloat(await row.getByRole('cell').nth(4).textContent())).toBeGreaterThan(3);
  await expect(page.locator('#heeling-chart svg desc')).toContainText('banked 30° right');
  // A magnet is taken away by magnets: the adjusters bring the swing to nothing.
  await field(page, 'R').fill('60000');
  await expect(page.locator('main')).toContainText('R must be from −50000 nT to 50000 nT');
  await field(page, 'R').fill('0');
  await page.getByRole('button', { name: 'Fly it' }).click();
  await page.waitForURL(/index\.html#d=/);
  await expect(page.locator('html')).toHaveAttribute('data-ready', 'true');
});

test('in print a sheet stands alone on its paper', async ({ open, page }) => {
  await page.addInitScript(() => {
    window.print = () => {
      document.documentElement.dataset.printed = 'true';
    };
  });
  await open('numbers.html#hand-outs?sheet=worksheet&seed=9&paper=letter');
  await expect(page.locator('.paper svg')).toHaveCount(2);
  await expect(page.locator('.paper svg').nth(1)).toContainText('Seed 9');
  await page.getByRole('button', { name: 'Print' }).click();
  await expect(page.locator('html')).toHaveAttribute('data-printed', 'true');
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(2);
  expect(pdf).toMatch(/\/MediaBox\s*\[0 0 612 792\]/);
  await page.emulateMedia({ media: 'print' });
  for (const hidden of ['.top', '.parts', '.form', '.paper-tools', '.caution']) {
    await expect(page.locator(hidden)).toBeHidden();
  }
  await expect(page.locator('.paper').first()).toBeVisible();
  await page.emulateMedia({ media: 'screen' });
  for (const [sheet, words] of [
    ['Memory aids', 'Memory aids'],
    ['Deviation card', 'The swing'],
    ['Roll-outs', 'When to begin to roll out'],
  ]) {
    await page.locator('#sheet').getByRole('radio', { name: sheet }).check();
    await expect(page.locator('.paper svg').first()).toContainText(words, { timeout: 30_000 });
  }
});

test('axe finds nothing to mend', async ({ open, page }) => {
  for (const part of [
    'planner?beside=40%20S&bank=x',
    'hand-outs?sheet=aids',
    'hand-outs?sheet=plan',
    'corrections?wind=typed',
    'swing?swung=yes&swing=45&iron=set',
  ]) {
    await open('numbers.html');
    await page.evaluate((to) => {
      window.location.hash = to;
    }, part);
    await expect(page.locator('main')).toHaveAttribute('data-part', part.split('?')[0]);
    if (part.startsWith('planner')) {
      await field(page, 'Bank').fill('15');
      await flown(page);
      await field(page, 'Bank').fill('x');
    }
    await nothingToMend(page, part);
  }
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('every part is used by touch without sideways scrolling', async ({ open, page }) => {
    await open('numbers.html');
    await flown(page);
    for (const [part, name] of [
      ['planner', 'Roll-outs'],
      ['hand-outs', 'Hand-outs'],
      ['corrections', 'Corrections'],
      ['swing', 'Compass swing'],
    ]) {
      await page.getByRole('link', { name, exact: true }).tap();
      await expect(page.locator('main')).toHaveAttribute('data-part', part);
      expect(await across(page), part).toBe(0);
      await fitAThumb(page.locator('main :is(button, a, .segments span)'), 2, part);
    }
  });
});
