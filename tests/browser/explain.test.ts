// Pressing a number tells where it comes from: by mouse and by keyboard, live and in a replay, and never over the calls.
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { LAPTOP, PHONE, openPage, startChromium } from './chromium.ts';
import { startProgram } from './program.ts';
import type { Program } from './program.ts';
import { standIn } from './stand-in-host.ts';
import { alarms, liveNow } from './tarn-hollow.ts';

let program: Program;
let browser: Browser;
let page: Page;
let errors: string[];

beforeAll(async () => {
  [program, browser] = await Promise.all([startProgram(['start']), startChromium()]);
  ({ page, errors } = await openPage(browser, program.url, LAPTOP));
  await page.getByRole('button', { name: 'Practice boil' }).click();
  await page.locator('.card').nth(2).waitFor();
});

afterAll(async () => {
  await browser?.close();
  await program?.stop();
});

const panel = (on = page) => on.getByRole('dialog');
const number = (what: string, on = page) => on.locator(`.card [data-tell=${what}]`).first();

test('what °Bx means stands once under the cards that show a strength, and not where another scale is chosen', async () => {
  const said = '°Bx: grams of sugar in 100 g of the sap or syrup.';
  for (const [strength, times] of [
    ['brix', 1],
    ['baume', 0],
  ] as const) {
    const host = await standIn(await ensureScreenBuilt(), liveNow(2), { strength });
    const { page: shown } = await openPage(browser, host.url, PHONE);
    await number('strength', shown).waitFor();
    expect(await shown.getByText(said).count()).toBe(times);
    await shown.context().close();
    await host.close();
  }
});

test('a press on the number that matters says where it comes from, how old that is and how sure', async () => {
  await page.getByRole('button', { name: '60×' }).click();
  // A strength as it was poured is told before that; a rise is sure only of a pot that boils.
  await page
    .locator('.card')
    .first()
    .locator('.big', { hasText: /^\+[1-9]/u })
    .waitFor({ timeout: 60_000 });
  await number('strength').waitFor({ timeout: 60_000 });
  await page.getByRole('button', { name: '1×', exact: true }).click();
  // Until then a second of the page is a minute of the boil, and what is as fresh as it can be looks old.
  await page.locator('.speeds [aria-pressed=true]', { hasText: '1×' }).waitFor();
  await number('rise').click();
  await panel().getByText('in eight of ten cases').waitFor();
  const words = (): Promise<string> => panel().innerText();
  await expect.poll(words).toMatch(/Front pot: degrees over boiling water/u);
  // What was as old as the last look of a quick practice is told anew.
  await expect.poll(words, { timeout: 10_000 }).toMatch(/by the probe T1 on board A \((just now|\d+\ss ago)\)/u);
  await expect.poll(words).toMatch(/Water boils at 9\d\.\d\s°C here, from the \w+/u);
});

test('a press on another number asks about that one, and a press beside it puts it away', async () => {
  // Not its temperature: a pan that begins to boil changes its large number for the small one.
  await page.locator('.card').nth(2).locator('[data-tell=litres]').click();
  await panel().getByText('Birch pot: how much is in it').waitFor();
  expect(await panel().count()).toBe(1);
  await page.locator('.band-practice').click({ position: { x: 400, y: 5 } });
  await panel().waitFor({ state: 'detached' });
});

test('by keyboard: Enter opens it, Escape closes it, and the number has the keyboard again', async () => {
  await number('strength').focus();
  await page.keyboard.press('Enter');
  await panel().waitFor();
  expect(await panel().locator(':focus').innerText()).toContain('Close');
  expect(await number('strength').getAttribute('aria-expanded')).toBe('true');
  await page.keyboard.press('Escape');
  await panel().waitFor({ state: 'detached' });
  expect(await page.locator(':focus').getAttribute('data-tell')).toBe('strength');
  const hint = await page.locator(':focus').getAttribute('aria-describedby');
  expect(await page.locator(`#${hint}`).textContent()).toContain('where this number comes from');
});

test('its ages go on while it is open', async () => {
  await number('litres').click();
  const words = () => panel().locator('p').first().innerText();
  await expect.poll(words).toContain('ago');
  const before = await words();
  // Ten times as fast the pot could be off the fire before the page is asked again.
  await page.getByRole('button', { name: '60×' }).press('Enter');
  await expect.poll(words, { timeout: 20_000 }).not.toBe(before);
  await page.getByRole('button', { name: '1×', exact: true }).press('Enter');
  await page.locator('.speeds [aria-pressed=true]', { hasText: '1×' }).waitFor();
  await page.keyboard.press('Escape');
});

test('the mark that would make it surer is one press away', async () => {
  await number('litres').click();
  await panel().getByRole('button', { name: 'Note the depth' }).click();
  await panel().waitFor({ state: 'detached' });
  await page.getByText('How deep is it in the pan?').waitFor();
  await page.keyboard.press('Escape');
});

test('a pressure that no weather makes here is asked about before it is noted', async () => {
  await page.keyboard.press('b');
  await page.getByLabel('I have it from').selectOption('sea-level');
  await page.getByLabel('Outdoors it is').waitFor();
  await page.getByLabel('It says').fill('880');
  await page.getByRole('button', { name: 'Note it' }).click();
  await page.getByText(/sea-level figure lies between .* Is it right all the same\?/u).waitFor();
  await page.getByRole('button', { name: 'No, let me change it' }).click();
  await page.keyboard.press('Escape');
  expect(await page.locator('.log').innerText()).not.toContain('880');
});

test('in a replay it tells of the moment that is shown, and offers no mark', async () => {
  await page.getByRole('button', { name: 'End practice' }).click();
  await page.getByRole('button', { name: 'Yes, end it' }).click();
  await page.getByRole('navigation').getByRole('link', { name: 'Notebook' }).click();
  await page
    .getByRole('button', { name: /^Replay/u })
    .first()
    .click();
  await page.getByRole('slider', { name: 'Go to a moment of the boil' }).press('End');
  await number('litres').click({ timeout: 60_000 });
  await panel()
    .getByText(/Said of \d\d:\d\d\./u)
    .waitFor();
  expect(await panel().getByRole('button').count()).toBe(1);
  await page.keyboard.press('Escape');
  expect(errors).toEqual([]);
});

test.each([
  ['laptop', LAPTOP],
  ['phone', PHONE],
])('on a %s it is whole, and covers neither the first line nor the calls', async (_name, size) => {
  const calling = { alarms, sound: { priority: 'high' as const, silencedUntil: null } };
  const host = await standIn(await ensureScreenBuilt(), liveNow(4, calling));
  const opened = await openPage(browser, host.url, size);
  await opened.page.locator('.dock').waitFor();
  for (const what of [
    'rise',
    'temperature',
    'water',
    'scorch-point',
    'finish',
    'strength',
    'depth',
    'rate',
    'top-up',
  ]) {
    await number(what, opened.page).click();
    const open = panel(opened.page);
    await open.getByText('What would make it surer').waitFor();
    const box = await open.boundingBox();
    const top = await opened.page.locator('.top').boundingBox();
    const bottom = await opened.page.locator('.bottom').boundingBox();
    if (box === null || top === null || bottom === null) throw new Error('The panel is not shown.');
    expect(box.x, what).toBeGreaterThanOrEqual(0);
    expect(box.x + box.width, what).toBeLessThanOrEqual(size.width);
    expect(box.y, what).toBeGreaterThanOrEqual(top.y + top.height);
    expect(box.y + box.height, what).toBeLessThanOrEqual(bottom.y);
    if (what === 'rise')
      await opened.page.screenshot({ path: `test-results/explain-${size.width}x${size.height}.png` });
    await opened.page.keyboard.press('Escape');
  }
  // A call is still answered by its key while a number is open.
  await number('rise', opened.page).click();
  await opened.page.keyboard.press('q');
  await expect.poll(() => host.heard.some((command) => 'answer' in command)).toBe(true);
  await opened.page.context().close();
  await host.close();
});
