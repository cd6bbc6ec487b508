// The practice boil through the real page: from the first start to marks, the chart and the notebook's replay.
import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { goToView, LAPTOP, openPage, startChromium, styleOf } from './chromium.ts';
import { startProgram } from './program.ts';
import type { Program } from './program.ts';

let program: Program;
let browser: Browser;
let page: Page;
let errors: string[];

beforeAll(async () => {
  [program, browser] = await Promise.all([startProgram(['start']), startChromium()]);
  ({ page, errors } = await openPage(browser, program.url, LAPTOP));
});

afterAll(async () => {
  await browser?.close();
  await program?.stop();
});

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });

test('a first-time user reaches the practice boil in two presses or fewer', async () => {
  await page.getByText('No boil is running').waitFor();
  await button('Practice boil').click();
  await page.locator('.band-practice').waitFor();
  expect(await page.locator('.band-practice').innerText()).toMatch(/PRACTICE/i);
  await page.locator('.card').first().waitFor();
  expect(await page.locator('.card').count()).toBe(3);
  await expect.poll(() => page.locator('.card .big').first().innerText()).toMatch(/^[+−]?\d+(\.\d)?°\s?C$/);
  expect(errors).toEqual([]);
});

/** Waits until the practice goes at another pace. */
async function pace(speed: '1×' | '60×'): Promise<void> {
  await button(speed).click();
  await page.locator('.speeds [aria-pressed=true]', { hasText: speed }).waitFor();
}

test('once there is something to tell of, the practice is slowed to the pace of life', async () => {
  // Until the call is waited for, nothing that the practice does by itself comes between a look and the next one.
  await page.keyboard.press('f');
  await button('5 min ago').waitFor();
  await page.keyboard.press('Escape');
  await page.locator('.mark-form').waitFor({ state: 'detached' });
  await pace('1×');
});

test('the token has left the address', () => {
  expect(page.url()).not.toContain('token');
});

test('a mark takes two presses, and is taken back by a third', async () => {
  const first = page.locator('.log li').first();
  await button('Top-up').click();
  await button('2 L').click();
  await expect.poll(() => first.innerText()).toMatch(/Top-up 2.0\sL/);
  await first.getByRole('button', { name: 'Take back' }).click();
  await expect.poll(() => first.innerText()).toContain('taken back');
});

test('what the practice did by itself is marked so and is not for the person to take back', async () => {
  const rows = page.locator('.log li');
  const own = rows.filter({ hasText: 'done by the practice' });
  expect(await own.first().getByRole('button', { name: 'Take back' }).count()).toBe(0);
  // All but the one that the person noted, and took back, above.
  expect(await rows.count()).toBe((await own.count()) + 1);
  expect(await rows.first().innerText()).not.toContain('done by the practice');
});

test('a form opened by a key is clear of what covers the page, takes the keyboard and gives it back', async () => {
  await page.keyboard.press('d');
  expect(await page.getByLabel('Drawn off').evaluate((field) => field === document.activeElement)).toBe(true);
  const form = await page.locator('.mark-form').boundingBox();
  const foot = await page.locator('.bottom').boundingBox();
  expect((form?.y ?? 0) + (form?.height ?? 9999)).toBeLessThanOrEqual(foot?.y ?? 0);
  await page.keyboard.press('Escape');
  // To the pan's name, for the button of the form lies below what is covered.
  await expect.poll(() => page.locator(':focus').innerText()).toContain('Front pot');
});

test('an amount that no pot holds is asked about, and not noted when it was a slip', async () => {
  const before = await page.locator('.log li').count();
  await button('Top-up').click();
  await page.getByLabel('Poured in').fill('900');
  await button('Note it').click();
  await page.getByText('Is the number right?').waitFor();
  await button('No, let me change it').click();
  await page.keyboard.press('Escape');
  expect(await page.locator('.log li').count()).toBe(before);
});

test('a practice boil has one way to end it', async () => {
  expect(await button('End this boil').count()).toBe(0);
  expect(await button('End practice').count()).toBe(1);
});

test('a practice stands still while it is asked whether to end it, and goes on as before', async () => {
  await pace('60×');
  const clock = page.locator('.band-practice .band-note');
  await button('End practice').click();
  await expect.poll(() => clock.innerText()).toMatch(/runs as fast as life/u);
  await button('No, go on').click();
  await page.locator('.speeds [aria-pressed=true]', { hasText: '60×' }).waitFor();
  await pace('1×');
});

test('the same by keys alone, for another pan, five minutes ago', async () => {
  // Not the middle pot, which is to run low below, and be called for it.
  await page.keyboard.press('3');
  await page.keyboard.press('f');
  await button('5 min ago').press('Enter');
  await button('Half').press('Enter');
  await expect.poll(() => page.locator('.log').innerText()).toContain('Birch pot: Flame half');
});

test('a number that is none is refused in words and nothing is noted', async () => {
  const before = await page.locator('.log li').count();
  await button('Depth').click();
  await page.locator('.mark-form').getByLabel('Depth').fill('deep');
  await button('Note it').click();
  await page.getByText('type a plain number').waitFor();
  await page.keyboard.press('Escape');
  expect(await page.locator('.log li').count()).toBe(before);
});

test('plus, minus and arrows zoom and move the chart; 0 goes back', async () => {
  const area = page.locator('.chart-area');
  const edges = async () => ({
    from: Number(await area.getAttribute('data-from')),
    to: Number(await area.getAttribute('data-to')),
  });
  const before = await edges();
  await area.focus();
  await page.keyboard.press('+');
  await expect.poll(async () => (await edges()).to - (await edges()).from).toBeLessThan(before.to - before.from);
  const close = await edges();
  await page.keyboard.press('ArrowLeft');
  await expect.poll(async () => (await edges()).from).toBeLessThan(close.from);
  await page.keyboard.press('-');
  await page.keyboard.press('0');
  await expect.poll(() => button('Last hour').getAttribute('aria-pressed')).toBe('true');
});

test('the wheel scrolls the page, with Ctrl it zooms the chart, and dragging moves it', async () => {
  const area = page.locator('.chart-area');
  const from = () => area.getAttribute('data-from').then(Number);
  const span = async () => Number(await area.getAttribute('data-to')) - (await from());
  await area.scrollIntoViewIfNeeded();
  await area.hover();
  const wide = await span();
  const scrolled = () => page.evaluate<number>('scrollY');
  const top = await scrolled();
  await page.mouse.wheel(0, -100);
  await expect.poll(scrolled).toBeLessThan(top);
  expect(await span()).toBe(wide);
  await page.mouse.wheel(0, 100);
  await area.hover();
  await page.keyboard.down('Control');
  for (let turns = 0; turns < 4; turns += 1) await page.mouse.wheel(0, -100);
  await page.keyboard.up('Control');
  await expect.poll(span).toBeLessThan(wide);
  const before = await from();
  const box = await area.boundingBox();
  if (box === null) throw new Error('The chart is not shown.');
  const y = box.y + 40;
  await page.mouse.move(box.x + box.width * 0.3, y);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * 0.6, y, { steps: 4 });
  await page.mouse.up();
  await expect.poll(from).toBeLessThan(before);
});

test('a call is silenced by one press and seen by another', async () => {
  // At the pace of life two minutes of quiet outlast the test; a call that was over before that is no call to answer.
  const quiet = page.locator('.hurry-quiet:enabled');
  do {
    await pace('60×');
    await quiet.waitFor({ timeout: 90_000 });
    await pace('1×');
  } while ((await quiet.count()) === 0);
  await button('Quiet for 2 min').click();
  await page.locator('.hurry-quiet', { hasText: /Quiet, (2\smin|1\d\d\ss) more/ }).waitFor();
  expect(await page.locator('.hurry-seen').isEnabled()).toBe(true);
  expect(await page.title()).toMatch(/^[▲◆]/);
  for (let presses = 0; presses < 6 && (await page.locator('.hurry-seen:enabled').count()) > 0; presses += 1) {
    const unseen = await page.locator('.alarm:not(.alarm-seen)').count();
    await page.keyboard.press('s');
    await expect.poll(() => page.locator('.alarm:not(.alarm-seen)').count()).toBeLessThan(unseen);
  }
  await page.locator('.alarm-full').waitFor({ state: 'detached' });
  // What was seen folds to one row.
  await expect.poll(async () => (await page.locator('.dock').boundingBox())?.height ?? 0).toBeLessThan(60);
});

test('the boil can be changed while it runs', async () => {
  await page.getByRole('link', { name: 'Change pans or finish' }).click();
  await page.getByLabel('What you call it').first().fill('Old kettle');
  await button('Save these changes').click();
  await expect.poll(() => page.locator('.card').first().innerText()).toContain('Old kettle');
});

test('an ended practice boil is in the notebook, and its replay cannot be taken for a live one', async () => {
  await button('End practice').click();
  expect(await page.getByText('End the practice?').isVisible()).toBe(true);
  await button('Yes, end it').click();
  await page.getByText('and nothing in it was real').waitFor();
  // How the calls were answered stands there, and the way to another.
  await page
    .getByRole('region', { name: 'Looking back on the calls' })
    .getByText('Seen or acted on', { exact: true })
    .waitFor();
  expect(await button('Practice boil').count()).toBe(1);
  await button('Put it away').click();
  await page.getByText('No boil is running').waitFor();
  await page.getByRole('navigation').getByRole('link', { name: 'Notebook' }).click();
  await page.locator('.tag-practice').first().waitFor();
  await button(/^Replay/)
    .first()
    .click();
  const band = page.locator('.band-replay');
  await band.waitFor();
  expect(await band.innerText()).toMatch(/replay[\s\S]*not live/i);
  expect(await styleOf(band, 'background-image')).toContain('repeating-linear-gradient');
  expect(await page.locator('.marks').count()).toBe(0);
});

test('a replay plays, pauses, changes its speed and goes to any moment', async () => {
  const band = page.locator('.band-replay');
  const slider = page.getByRole('slider', { name: 'Go to a moment of the boil' });
  const at = () => slider.getAttribute('aria-valuenow').then(Number);
  await button('Pause').click();
  await button('Play').waitFor();
  await slider.focus();
  await page.keyboard.press('End');
  await expect.poll(at).toBeGreaterThan(60);
  await page.keyboard.press('Home');
  await expect.poll(at).toBe(0);
  await page.keyboard.press('ArrowRight');
  await expect.poll(at).toBe(10);
  const fast = page.getByRole('button', { name: '600×' });
  await fast.click();
  await expect.poll(() => fast.getAttribute('aria-pressed')).toBe('true');
  await button('Play').click();
  await expect.poll(at).toBeGreaterThan(10);
  await band.getByRole('button', { name: 'Close replay' }).click();
  await band.waitFor({ state: 'detached' });
});

test('what is exported can be imported and opened again', async () => {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page
      .getByRole('link', { name: /^Export/ })
      .first()
      .click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/\.boil\.jsonl$/);
  const recording = await readFile(await download.path());
  expect(recording.subarray(0, 24).toString()).toContain('"recording"');
  const file = { name: 'again.boil.jsonl', mimeType: 'application/x-ndjson', buffer: recording };
  await page.getByLabel('Import a recording').setInputFiles(file);
  await page.getByText('again.boil.jsonl was in the notebook already').waitFor();
  await page
    .getByLabel('Open a file without keeping it')
    .setInputFiles({ ...file, name: 'bad.boil.jsonl', buffer: Buffer.from('no boil\n') });
  await page.locator('.said-bad', { hasText: 'This is no recording of a boil: bad.boil.jsonl' }).waitFor();
  await page.getByLabel('Open a file without keeping it').setInputFiles(file);
  await page.locator('.band-replay').waitFor();
});

test('units are chosen once and hold everywhere', async () => {
  await page.getByRole('navigation').getByRole('link', { name: 'Settings' }).click();
  await page.getByLabel('°F').check();
  await page.getByRole('navigation').getByRole('link', { name: 'Replay' }).click();
  await page.getByRole('slider', { name: 'Go to a moment of the boil' }).press('End');
  await expect.poll(() => page.locator('.card .caption').first().innerText()).toContain('°F');
});

test('a practice boil that is over can be hidden from the list, and had back', async () => {
  await page.getByRole('navigation').getByRole('link', { name: 'Notebook' }).click();
  const rows = page.locator('.boils tbody tr');
  await rows.getByRole('link', { name: 'Practice boil, Tarn Hollow (simulated)', exact: true }).click();
  await button('Hide this practice boil').click();
  await page.getByText('One practice boil is hidden.').waitFor();
  expect(await rows.count()).toBe(0);
  // Comparing does not offer it, and says so.
  await goToView(page, 'compare');
  await page.getByText('One practice boil that you hid is not listed').waitFor();
  await goToView(page, 'notebook');
  await button('Show it').click();
  await rows.getByText('hidden', { exact: true }).waitFor();
  await rows.getByRole('link', { name: 'Practice boil, Tarn Hollow (simulated)', exact: true }).click();
  await button('Show it in the list again').click();
  await button('Hide this practice boil').waitFor();
  await page.getByRole('link', { name: 'All boils' }).click();
  await rows.first().waitFor();
  expect(await page.getByText('is hidden').count()).toBe(0);
});
