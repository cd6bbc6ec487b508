// A pan without a probe, in the real program: a note that can hardly be meant is asked about, and counts once somebody stands by it.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { LAPTOP, openPage, startChromium } from './chromium.ts';
import { startProgram } from './program.ts';
import type { Program } from './program.ts';

/** Invented, at Tarn Hollow. */
const SETUP = {
  name: 'By hand',
  site: { name: 'Tarn Hollow', altitude_m: 300 },
  pans: [
    {
      id: 'p1',
      name: 'Back pot',
      sap: 'birch',
      vessel: { shape: 'round-sloped', bottom_diameter_mm: 300, top_diameter_mm: 320, height_mm: 280 },
      heat: { kind: 'propane', power_w: 16_000 },
    },
    { id: 'p2', name: 'Front pot', sap: 'maple' },
  ],
};

const folder = mkdtempSync(join(tmpdir(), 'tarn-hollow-'));
let program: Program;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  const setup = join(folder, 'setup.json');
  writeFileSync(setup, JSON.stringify(SETUP));
  [program, browser] = await Promise.all([startProgram(['watch', '--setup', setup, '--http', '0']), startChromium()]);
  ({ page } = await openPage(browser, program.url, LAPTOP));
  await page.locator('.card').nth(1).waitFor();
});

afterAll(async () => {
  await browser?.close();
  await program?.stop();
  rmSync(folder, { recursive: true });
});

const card = () => page.locator('.card[data-pan=p1]');
const log = () => page.locator('.log li');
const asked = () => page.locator('.mark-form [role=alert]');
const press = (name: string) => page.getByRole('button', { name, exact: true }).click();

/** Puts the open form away: a key that came before it is gone would be typed into it. */
async function leave(): Promise<void> {
  await page.keyboard.press('Escape');
  await page.locator('.mark-form').waitFor({ state: 'detached' });
}

/** Opens a form by its key for the first pan and types a number into it. */
async function type(key: string, field: string, value: string): Promise<void> {
  // The list tells of a note before its form is gone.
  await page.locator('.mark-form').waitFor({ state: 'detached' });
  await page.keyboard.press('1');
  await page.keyboard.press(key);
  await page.locator('.mark-form').getByLabel(field).fill(value);
  await press('Note it');
}

test('a hot reading is asked about: no notes nothing, and yes is believed', async () => {
  await type('t', 'Poured in', '10');
  await expect.poll(() => log().count()).toBe(1);
  const noCurve = page.locator('.chart').getByText('No temperature is known here.');
  await noCurve.waitFor();
  await type('r', 'Thermometer', '99.2');
  await card().getByText('1.0 °Bx').waitFor();
  await noCurve.waitFor({ state: 'detached' });
  await type('r', 'Thermometer', '102');
  await asked()
    .getByText(/102\.0\s°C was read; by what was noted of it, this thermometer should show about 99\.0\s°C/u)
    .waitFor();
  // The box holds what is asked about, and what was asked of another number goes once it is changed.
  const box = page.locator('.mark-form').getByLabel('Thermometer');
  await page.locator('.mark-form .quicks').getByText('103 °C').click();
  await asked()
    .getByText(/103\.0\s°C was read;/u)
    .waitFor();
  expect(await box.inputValue()).toBe('103');
  await box.fill('102');
  await asked().waitFor({ state: 'detached' });
  await press('Note it');
  await asked()
    .getByText(/102\.0\s°C was read;.* left\. Is it right all the same\?/u)
    .waitFor();
  await press('No, let me change it');
  expect(await log().count()).toBe(2);
  await press('Note it');
  await press('Yes, note it');
  await expect.poll(() => log().count()).toBe(3);
  await card().getByText('Thickening').waitFor();
  await card().getByText('+3.0').waitFor();
  await page.locator('.mark-form').waitFor({ state: 'detached' });
});

test('the keyboard is where one types: what is typed is noted by Enter, and nothing is by Enter alone', async () => {
  for (const key of ['e', 'r', 'y', 't']) {
    await page.keyboard.press(key);
    await page.locator('.mark-form .typed input.number:focus').waitFor();
    await page.keyboard.press('Enter');
    await page.getByText('type a plain number').waitFor();
    await leave();
  }
  // Of a flame the presses come first: by Enter alone none of them is noted either.
  await page.keyboard.press('f');
  await page.locator('.mark-form .quicks:focus').waitFor();
  await page.keyboard.press('Enter');
  expect(await page.locator('.mark-form .quicks').isVisible()).toBe(true);
  await leave();
  await page.keyboard.press('e');
  await page.locator('.mark-form .typed input:focus').waitFor();
  await page.keyboard.type('9000');
  await page.keyboard.press('Enter');
  await page.getByText('Depth: 9000 is outside of 0 to 1500 mm.').waitFor();
  await leave();
  expect(await log().count()).toBe(3);
});

test('a reading below freezing is asked about', async () => {
  await type('r', 'Thermometer', '-6');
  await asked().getByText('is below freezing, and no sap on a fire is so cold').waitFor();
  await page.keyboard.press('Escape');
  expect(await log().count()).toBe(3);
});

test('a note’s key leaves the big view and opens its form', async () => {
  await page.keyboard.press('v');
  await page.locator('.cards-big').waitFor();
  await page.keyboard.press('e');
  await page.locator('.mark-form').getByText('Depth').first().waitFor();
  expect(await page.locator('.cards-big').count()).toBe(0);
  await page.keyboard.press('Escape');
});

test('a depth over the rim and another sap are asked about', async () => {
  await type('e', 'Depth', '300');
  await asked()
    .getByText(/300\smm is deeper than the vessel itself, which is 280\smm high/u)
    .waitFor();
  await leave();
  await page.keyboard.press('p');
  await press('All into Front pot');
  await asked().getByText('Back pot and Front pot hold different saps').waitFor();
  await page.keyboard.press('Escape');
  expect(await log().count()).toBe(3);
});

test('a reading past the finish calls', async () => {
  await type('r', 'Thermometer', '106');
  const yes = page.getByRole('button', { name: 'Yes, note it' });
  await yes.or(card().getByText('At its finish')).first().waitFor();
  if (await yes.isVisible()) await yes.click();
  await card()
    .locator('.card-alarm', { hasText: /At its finish|Past its finish|About to burn/u })
    .waitFor();
  await card().getByText('Done: take it off').waitFor();
});

test('a note takes a time of day that has passed, and no other', async () => {
  const before = await log().count();
  await page.keyboard.press('f');
  await page.getByLabel('or at').fill('25:00');
  await press('Low');
  await page.getByText(/Type a time of day that has passed, such as \d\d:\d\d\./u).waitFor();
  expect(await log().count()).toBe(before);
  const early = new Date(Date.now() - 2 * 3_600_000).toTimeString().slice(0, 5);
  await page.getByLabel('or at').fill(early);
  await press('Low');
  await page.getByText(/This boil began at \d\d:\d\d: \d\d:\d\d was before it, or is still to come\./u).waitFor();
  expect(await log().count()).toBe(before);
  const now = await page.getByLabel('or at').getAttribute('placeholder');
  await page.getByLabel('or at').fill(now ?? '');
  await press('Low');
  await expect.poll(() => log().count()).toBe(before + 1);
});

test('Enter behind a time of day goes to what is to be typed, and sends what was typed', async () => {
  const before = await log().count();
  await page.locator('.mark-form').waitFor({ state: 'detached' });
  await page.keyboard.press('f');
  const time = page.locator('.mark-form').getByLabel('or at');
  await time.fill('25:00');
  await time.press('Enter');
  await page.getByText(/Type a time of day that has passed, such as \d\d:\d\d\./u).waitFor();
  await time.fill((await time.getAttribute('placeholder')) ?? '');
  await time.press('Enter');
  await page.locator('.mark-form .quicks:focus').waitFor();
  await page.locator('.mark-form').getByLabel('Flame').fill('40');
  await time.press('Enter');
  await expect.poll(() => log().count()).toBe(before + 1);
});
