// The notebook through the real page: what is asked at the end of a boil, by keyboard alone; a boil's page; the season and the sap store.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { tarnHollowSeason } from '../../fixtures/tarn-hollow-season.ts';
import { systemClock } from '../../src/host/clock.ts';
import { createHost } from '../../src/host/create-host.ts';
import type { BoilPageView, CollectionsView } from '../../src/protocol/season-messages.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { serveHost } from '../../src/web/serve.ts';
import type { Served } from '../../src/web/serve.ts';
import { LAPTOP, PHONE, openPage, startChromium } from './chromium.ts';

let folder: string;
let host: Awaited<ReturnType<typeof createHost>>;
let served: Served;
let browser: Browser;
let page: Page;
let errors: string[];
const season = tarnHollowSeason(7);
const ids: string[] = [];

async function obeyed<Data>(command: Record<string, unknown>): Promise<Data> {
  const answer = await host.command({ ref: 'r', ...command });
  if (!answer.ok) throw new Error(answer.why);
  return answer.data as Data;
}

/** One pan at Tarn Hollow, our invention, read by hand: no port is opened. */
const setup = {
  name: 'Tarn Hollow, invented',
  site: { altitude_m: 640 },
  pans: [{ id: 'p1', name: 'Back pot', sap: 'maple', heat: { kind: 'propane', power_w: 16_000 } }],
};

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'tarn-hollow-'));
  const clock = systemClock();
  host = await createHost({ folder, machine: { ...clock, wallMs: () => Date.parse('2027-04-29T15:00:00Z') } });
  for (const { header, entries, page: written } of season.boils) {
    const text = [header, ...entries].map((line) => `${JSON.stringify(line)}\n`).join('');
    const { boil } = await host.importRecording(
      (async function* () {
        yield text;
      })(),
      'a recording',
    );
    ids.push(boil);
    await obeyed({ keep_page: { boil, page: written } });
  }
  for (const [index, collection] of season.collections.entries()) {
    await obeyed({ keep_collection: { ...collection, boil: ids[Math.floor(index / 3)] } });
  }
  await obeyed({ start: setup });
  await obeyed({ mark: { kind: 'top-up', pan: 'p1', litres: 40, brix: 2 } });
  await obeyed({ mark: { kind: 'fuel', pan: 'p1', kg: 12.5 } });
  await obeyed({ mark: { kind: 'draw-off', pan: 'p1', all: true } });
  served = await serveHost(host, { port: 0, folder: await ensureScreenBuilt(), nowMs: () => performance.now() });
  browser = await startChromium();
  ({ page, errors } = await openPage(browser, served.url, LAPTOP));
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await served?.close();
  await host?.close();
  await rm(folder, { recursive: true, force: true });
});

const form = () => page.getByRole('form', { name: 'What came of it' });

test('the end of a boil asks at most six things, once, and is filled in and kept by keyboard alone', async () => {
  await page.locator('.card').first().waitFor();
  await obeyed({ end: true });
  await form().waitFor();
  expect(await form().locator('input').count()).toBeLessThanOrEqual(6);
  // Nobody measured it, and no finish was called: what was aimed at is not offered as what it is.
  expect(await form().getByLabel('Its density').inputValue()).toBe('');
  // The first field comes into focus: nothing but keys from here on.
  await form().locator('input:focus').waitFor();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('1.1');
  await page.keyboard.press('Tab');
  await page.keyboard.type('66.9');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Control+A');
  await page.keyboard.type('4 x 250 mL');
  await page.keyboard.press('Tab');
  await page.keyboard.type('9,2');
  await page.keyboard.press('Tab');
  await page.keyboard.type('Clear and light');
  await page.keyboard.press('Enter');
  await form().waitFor({ state: 'detached' });
  const boils = await obeyed<{ boil: string }[]>({ boils: true });
  const views = await Promise.all(boils.map(({ boil }) => obeyed<BoilPageView>({ boil_page: { boil } })));
  const view = views.find(({ page: written }) => written.notes === 'Clear and light');
  expect(view?.page).toEqual({
    syrup: { litres: 1.1, brix: 66.9 },
    jars: [{ litres: 0.25, count: 4 }],
    fuel: [{ kind: 'propane', before_kg: 12.5, after_kg: 9.2 }],
    notes: 'Clear and light',
  });
});

test('the list of boils leads to the page of one: figures with where they come from, words that are kept, steps that are ticked', async () => {
  await page.getByRole('navigation', { name: 'Views' }).getByRole('link', { name: 'Notebook' }).click();
  await page.getByRole('link', { name: 'Run 5, invented', exact: true }).click();
  const figures = page.getByRole('region', { name: 'Figures of this boil' });
  await figures.waitFor();
  await figures.getByText('The sugar adds up').waitFor();
  expect(await figures.innerText()).toContain('your notes');
  await page.getByLabel('Taste').fill('Of smoke and butter');
  await page.getByRole('button', { name: 'Keep these words' }).click();
  await page.getByLabel('Filter it hot, at once.').check();
  await expect
    .poll(async () => (await obeyed<BoilPageView>({ boil_page: { boil: ids[4]! } })).page)
    .toMatchObject({ taste: 'Of smoke and butter', steps: { 'filter-hot': expect.stringContaining('T') as string } });
  await page.getByRole('region', { name: /^Curve of/u }).waitFor();
});

test('a photo is added without its place and shown, and what is no photo is refused in words', async () => {
  const pixel = Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
    'base64',
  );
  const photos = page.getByRole('region', { name: 'Photos' });
  await photos.locator('input[type=file]').setInputFiles({ name: 'Jars.png', mimeType: 'image/png', buffer: pixel });
  const image = photos.getByRole('img', { name: 'Jars.png' });
  await image.waitFor();
  await expect.poll(() => image.evaluate((element) => (element as HTMLImageElement).naturalWidth)).toBe(1);
  await photos
    .locator('input[type=file]')
    .setInputFiles({ name: 'a.png', mimeType: 'image/png', buffer: Buffer.from('x') });
  await page.locator('.said-bad', { hasText: 'no JPEG, PNG or WebP' }).waitFor();
  // The browser itself says that the answer was a refusal.
  errors = errors.filter((error) => !error.includes('400'));
});

test('a boil is given another name on its page', async () => {
  await page.getByRole('button', { name: 'Rename' }).click();
  const field = page.getByLabel('Name of this boil');
  await expect.poll(() => field.evaluate((input) => input === document.activeElement)).toBe(true);
  await field.fill('The long Sunday');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'The long Sunday' }).waitFor();
});

test('the season adds up, with three charts, and the sap store takes what was collected', async () => {
  await page.getByRole('link', { name: '← All boils' }).click();
  await page.getByRole('link', { name: 'Season', exact: true }).click();
  await page.getByRole('button', { name: '2027' }).waitFor();
  await expect.poll(() => page.locator('.season-chart').count()).toBe(3);
  const table = page.getByRole('region', { name: 'Boils of 2027' });
  // Each says of which sap it was, for the season holds both.
  for (const [run, sap] of [
    ['Run 2,', 'Maple'],
    ['Run 22,', 'Birch'],
  ] as const) {
    const head = table.getByRole('rowheader', { name: run });
    expect(await head.locator('.hint').innerText()).toBe(sap);
  }
  await expect.poll(() => table.getByRole('row').count()).toBe(32);
  // No column of dashes: no boil here was watched long enough to tell how long it boiled.
  await expect
    .poll(() => table.getByRole('columnheader').allInnerTexts())
    .toEqual([
      ...['Boil', 'Sap in', 'Sap strength', 'Syrup out', 'Syrup strength', 'Sap to syrup', 'Not accounted for'],
      ...['Heat for each volume of syrup', 'Cost of a jar', 'Calls'],
    ]);
  await page.setViewportSize(PHONE);
  expect(await table.evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth)).toBe(0);
  await page.setViewportSize(LAPTOP);
  await page.getByRole('link', { name: 'Sap store' }).click();
  // What was boiled ages no more: without anything in store there is no column for it.
  const age = page.getByRole('columnheader', { name: 'Age' });
  await page.locator('.collections').waitFor();
  expect(await age.count()).toBe(0);
  expect(await page.getByLabel('Day').locator('..').innerText()).toContain('Thursday 29 April 2027');
  await page.getByLabel('How much').fill('35');
  await page.getByLabel('Which trees').fill('Old row');
  await page.getByRole('button', { name: 'Add it' }).click();
  await page.getByRole('heading', { name: /^In store: 35/u }).waitFor();
  await age.waitFor();
  expect((await obeyed<CollectionsView>({ collections: true })).store.litres).toBe(35);
  expect(errors).toEqual([]);
});
