// The page of maps: its maps are computed by workers, its figures are those of the program, its
// address carries all of it, and it serves everyone.

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
const map = (page) => page.locator('#map');
// Until its lines are drawn.
const drawn = (page) => expect(map(page)).not.toHaveAttribute('data-lines', '0', { timeout: 30_000 });

test('the figures at the point are those of the program', async ({ open, page }) => {
  expect(DIPWISE, 'where the program is: run this by `cargo xtask test browser`').toBeTruthy();
  await open('maps.html#maps?lat=30&lon=-95&date=2026-06-01&show=steady&bank=18');
  await drawn(page);
  const place = ['--lat', '30', '--lon=-95', '--date', '2026-06-01', '--format', 'json'];
  const here = JSON.parse((await run(DIPWISE, ['field', ...place])).stdout);
  await expect(page.locator('#at-dip')).toContainText(`${here.dip_deg.toFixed(1)}° down`);
  await expect(page.locator('#at-variation')).toContainText(
    `${Math.abs(here.variation_deg).toFixed(1)}° ${here.variation_deg < 0 ? 'W' : 'E'}`,
  );
  const horizontal = (await page.locator('#at-horizontal').textContent()).replace(/\D/g, '');
  expect(Number(horizontal)).toBe(Math.round(here.horizontal_nt));
  await expect(page.locator('#at-zone')).toContainText(here.zone);
  const turn = ['--dip', String(here.dip_deg), '--bank', '18', '--heading', '0'];
  const [steady] = JSON.parse(
    (await run(DIPWISE, ['steady', ...turn, '--format', 'json'])).stdout,
  );
  await expect(page.locator('#at-steady')).toContainText(`lags ${(-steady.error_deg).toFixed(1)}°`);
  await expect(page.locator('#at-rule')).toContainText('lags 30.0°');
  await expect(page.locator('#at-simulated')).toContainText(/lags \d/);
});

test('the turns are flown by workers, and can be cancelled', async ({ open, page }) => {
  await open('maps.html#maps?show=simulated&bank=30');
  const bar = page.getByRole('progressbar', { name: 'Flying turns onto north' });
  await expect(bar).toBeVisible({ timeout: 30_000 });
  await page.getByRole('button', { name: 'Cancel' }).click();
  const halted = await bar.getAttribute('value');
  await page.waitForTimeout(300);
  expect(await bar.getAttribute('value')).toBe(halted);
  const before = Number(await map(page).getAttribute('data-lines'));
  await page.getByRole('button', { name: 'Go on' }).click();
  await expect(page.locator('#took')).toContainText(/turns flown in/, { timeout: 60_000 });
  expect(Number(await map(page).getAttribute('data-lines'))).toBeGreaterThan(before);
});

test('point and globe move by the keyboard, and all of it is in the address', async ({ open, page }) => {
  await open('maps.html');
  await drawn(page);
  await map(page).focus();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Shift+ArrowLeft');
  await expect(field(page, 'Latitude')).toHaveValue('57');
  await expect(field(page, 'Longitude')).toHaveValue('-1');
  await expect(page.locator('#point-said')).toContainText(/Dip 7\d/);
  await page.getByRole('radio', { name: 'Globe' }).check();
  await page.getByRole('button', { name: 'Turn to the east' }).press('Enter');
  await expect(page).toHaveURL(/view=globe.*by=15/);
  await page.getByRole('radio', { name: 'Variation' }).check();
  const address = page.url();
  await expect(page).toHaveURL(/show=variation/);
  await page.reload();
  await drawn(page);
  await expect(page.getByRole('radio', { name: 'Variation' })).toBeChecked();
  await expect(page.getByRole('radio', { name: 'Globe' })).toBeChecked();
  await expect(field(page, 'Latitude')).toHaveValue('57');
  expect(address).toContain('lon=-1');
  for (const [to, said] of [
    ['#maps?lat=95', 'Latitude must be from −90° to 90°, not 95°.'],
    ['#maps?date=2031-01-01', 'the life of the magnetic model'],
    ['#maps?show=steady&bank=90', 'Bank must be from 3° to 60°, not 90°.'],
    ['#maps?view=%3Cb%3E', 'View must be “flat” or “globe”, not “<b>”.'],
    ['#maps?view=globe&over=NaN&by=1e999', ''],
    [`#${'a?'.repeat(3000)}`, ''],
  ]) {
    await page.evaluate((hash) => {
      window.location.hash = hash;
    }, to);
    if (said) await expect(page.locator('main')).toContainText(said);
    await expect(page.getByRole('heading', { level: 2 })).toBeVisible();
  }
});

test('a map is taken home as picture and as figures', async ({ open, page }) => {
  await open('maps.html#maps?show=steady&date=2026-06-01');
  await drawn(page);
  for (const [name, file, holds] of [
    ['Save SVG', 'svg', 'over-leads'],
    ['Save PNG', 'png', ''],
    ['Save CSV', 'csv', 'latitude_deg,longitude_deg,dip_deg'],
  ]) {
    const [saved] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name }).click(),
    ]);
    expect(saved.suggestedFilename()).toBe(`dipwise-map-steady.${file}`);
    const bytes = await readFile(await saved.path());
    expect(bytes.length).toBeGreaterThan(5000);
    expect(bytes.toString()).toContain(holds);
  }
  await page.getByText('The map in figures').click();
  await expect(page.getByRole('row')).toHaveCount(10);
});

test.describe('what is copied', () => {
  test.use({ permissions: ['clipboard-read', 'clipboard-write'] });

  test('is the table as text and as CSV, and the picture', async ({ open, page }) => {
    for (const [address, ready, csv] of [
      ['maps.html#maps?show=dip&date=2026-06-01', () => drawn(page), /^latitude,180 W,120 W,/],
      [
        'maps.html#dip?date=2026-06-01',
        () => expect(page.locator('#dipole svg')).toBeVisible(),
        /^latitude,rule,dipole,WMM2025\r\n/,
      ],
    ]) {
      await open(address);
      await ready();
      const clip = () => page.evaluate(() => navigator.clipboard.readText());
      await page.getByRole('button', { name: 'Copy as CSV' }).click();
      await expect.poll(clip).toMatch(csv);
      await page.getByRole('button', { name: 'Copy as text' }).click();
      await expect.poll(clip).toMatch(/^latitude {2,}/);
      await page.getByRole('button', { name: 'Copy image' }).click();
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

test('a link names its day, and the lags at the point their bank', async ({ open, page }) => {
  await open('maps.html#maps?bank=x');
  await expect(page).toHaveURL(/date=\d{4}-\d\d-\d\d/);
  // A map of the dip has no bank to mend.
  await expect(page.getByRole('heading', { name: /at 15° of bank/ })).toBeVisible();
  await expect(page.locator('#at-steady')).toContainText(/lags \d/);
  await page.getByRole('radio', { name: 'Rule, closed form' }).check();
  await expect(page.locator('main')).toContainText('Bank must be a number of degrees');
});

test('dip and latitude stand side by side', async ({ open, page }) => {
  await open('maps.html#dip?lat=45&date=2026-06-01');
  // tan(dip) = 2 tan(latitude): 63.4° at 45°.
  const dips = page.locator('#dips');
  await expect(dips).toContainText('63.4°');
  await expect(dips).toContainText('45°');
  await expect(page.locator('#dipole svg')).toContainText('WMM2025');
  await page.getByRole('slider', { name: 'Latitude, slider' }).press('ArrowRight');
  await expect(page).toHaveURL(/#dip\?lat=46/);
});

test('axe finds nothing to mend', async ({ open, page }) => {
  for (const part of ['maps?show=steady&view=globe&bank=x', 'dip?lat=-30']) {
    await open('maps.html');
    await page.evaluate((to) => {
      window.location.hash = to;
    }, part);
    await expect(page.locator('main')).toHaveAttribute('data-part', part.split('?')[0]);
    await nothingToMend(page, part);
  }
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('the map is used by touch without sideways scrolling', async ({ open, page }) => {
    await open('maps.html');
    await drawn(page);
    for (const [part, name] of [['maps', 'World maps'], ['dip', 'Dip and latitude']]) {
      await page.getByRole('link', { name, exact: true }).tap();
      await expect(page.locator('main')).toHaveAttribute('data-part', part);
      expect(await across(page), part).toBe(0);
      await fitAThumb(page.locator('main :is(button, a, .segments span)'), 2, part);
    }
  });
});
