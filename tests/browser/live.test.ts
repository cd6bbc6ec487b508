// A real boil through the real page: two boards on serial lines, found, given to four pans, lost and back again.
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { pretendBoard } from '../ingest/pretend-board.ts';
import type { PretendBoard } from '../ingest/pretend-board.ts';
import { LAPTOP, PHONE, openPage, startChromium } from './chromium.ts';
import { startProgram } from './program.ts';
import type { Program } from './program.ts';

let program: Program;
let browser: Browser;
let page: Page;
const boards: [PretendBoard, PretendBoard] = [pretendBoard(), pretendBoard()];
/** What each board says twice a second; null for silence. */
const says: [string | null, string | null] = [null, null];
let feeder: ReturnType<typeof setInterval>;

async function feed(): Promise<void> {
  for (const [i, line] of says.entries()) if (line !== null) await boards[i]?.send(`${line}\n`);
}

beforeAll(async () => {
  for (const board of boards) await board.plugIn();
  feeder = setInterval(() => void feed(), 500);
  [program, browser] = await Promise.all([startProgram(['start']), startChromium()]);
  ({ page } = await openPage(browser, program.url, LAPTOP));
});

afterAll(async () => {
  await browser?.close();
  await program?.stop();
  clearInterval(feeder);
  for (const board of boards) await board.remove();
});

const button = (name: string) => page.getByRole('button', { name, exact: true });
const probeChoice = () => page.getByRole('combobox', { name: 'Probe', exact: true });
const card = (n: number) => page.locator('.card').nth(n);

test('the cautions stand before the fire is lit', async () => {
  await button('Start a boil').click();
  const cautions = await page.getByRole('region', { name: 'Before you light the fire' }).innerText();
  for (const word of [
    'Never leave a boil',
    'cannot shut a burner',
    'outdoors only',
    'upright',
    'carbon monoxide',
    'scald',
  ]) {
    expect(cautions).toContain(word);
  }
  // What matters most is read before the fields and the button that starts it; a press shows the rest.
  const first = await page.locator('.cautions-line').boundingBox();
  const field = await page.getByLabel('Name of this boil').boundingBox();
  expect(first!.y + first!.height).toBeLessThan(field!.y);
  await button('All cautions').click();
  const last = page.getByText('Keep children and animals away');
  const isSeen = async (): Promise<boolean> => {
    const [box, bar] = await Promise.all([last.boundingBox(), page.locator('.start-bar').boundingBox()]);
    return box!.y > 0 && box!.y + box!.height <= bar!.y;
  };
  await expect.poll(isSeen).toBe(true);
  await page.evaluate('scrollTo(0, 0)');
});

test('a typed path that does not exist is said to be none, and is put away by one press', async () => {
  await page.getByLabel('Not in the list?').fill('/dev/tarn-hollow-none');
  await page.locator('.typed-port').getByRole('button', { name: 'Listen' }).click();
  const row = page.locator('.port', { hasText: '/dev/tarn-hollow-none' });
  await row.locator('.port-lost').getByText('is not there').waitFor();
  await row.getByRole('button', { name: 'Stop listening' }).click();
  await row.waitFor({ state: 'detached' });
});

test('boards are found by a typed path and their channels can be chosen', async () => {
  says[0] = 'T1=98.25C T2=101.50C';
  says[1] = 'T1=21.75C T2=60.00C';
  // One after the other: a board's channels are listed as they are first heard.
  for (const [board, { path }] of boards.entries()) {
    await page.getByLabel('Not in the list?').fill(path);
    await page.locator('.typed-port').getByRole('button', { name: 'Listen' }).click();
    const heard = () => probeChoice().first().locator('option').count();
    await expect.poll(heard, { timeout: 20_000 }).toBe(3 + 2 * board);
  }
  expect(await probeChoice().first().innerText()).toMatch(/T2 on \S+, now 101.5/);
});

test('a boil of four pans is started from the form', async () => {
  for (const name of ['Front pot', 'Back pot', 'Side pan', 'Kettle']) {
    if (name !== 'Front pot') await button('+ Another pan').click();
    await page.getByLabel('What you call it').last().fill(name);
  }
  // By what they show: which board is listed first goes by the names of the pseudo terminals.
  for (const [pan, shows] of ['98.', '101.5', '21.', '60.0'].entries()) {
    const choice = probeChoice().nth(pan);
    const value = await choice.locator('option', { hasText: `now ${shows}` }).getAttribute('value');
    await choice.selectOption(value);
  }
  await page.getByLabel('Height of the place over the sea').fill('640');
  await page.getByRole('combobox', { name: 'Vessel' }).first().selectOption('round');
  await button('Start the boil').click();
  await page.getByText('Front pot, width across: type a number.').waitFor();
  await page.getByLabel('Width across').fill('400');
  await button('Start the boil').click();
  await expect.poll(() => page.locator('.card').count()).toBe(4);
  await expect.poll(() => card(1).locator('.caption').innerText(), { timeout: 20_000 }).toMatch(/101.5/);
  expect(await page.locator('.band-practice, .band-replay').count()).toBe(0);
});

test('the same boil stands in one column on a phone; pictures of both are left for a person to look at', async () => {
  for (const size of [LAPTOP, PHONE]) {
    await page.setViewportSize(size);
    await page.screenshot({ path: `test-results/live-${size.width}x${size.height}.png` });
    expect(await page.locator('html').evaluate((root) => root.scrollWidth - root.clientWidth)).toBe(0);
  }
  await page.setViewportSize(LAPTOP);
});

test('a board that falls silent is called; when it speaks again the numbers go on', async () => {
  // A dozen lines tell the program how often this board speaks; before that it has to be patient.
  const kept = async () =>
    Number(/(\d+) lines? of its recording kept/.exec(await page.locator('.boil-line').innerText())?.[1]);
  await expect.poll(kept, { timeout: 20_000 }).toBeGreaterThan(24);
  says[0] = null;
  await page.locator('.dock').getByText('Front pot').first().waitFor({ timeout: 30_000 });
  await expect
    .poll(() => card(0).locator('.probe').innerText(), { timeout: 30_000 })
    .toMatch(/Probe (says nothing|is late)/);
  says[0] = 'T1=98.50C T2=101.75C';
  await expect.poll(() => card(0).locator('.probe').innerText(), { timeout: 30_000 }).toContain('Probe good');
  await expect.poll(() => card(0).locator('.caption').innerText(), { timeout: 30_000 }).toContain('98.5');
});

test('a boil is ended only after a second press', async () => {
  await button('End this boil').click();
  await button('No, go on').click();
  await button('End this boil').click();
  await button('Yes, end it').click();
  await page.getByText('This boil is over').waitFor();
});
