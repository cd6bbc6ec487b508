// A boil is entered two hours after its fire was lit, through the real page and host: what went in then is noted with its time.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type MachineClock, systemClock } from '../../src/host/clock.ts';
import { createHost } from '../../src/host/create-host.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { serveHost } from '../../src/web/serve.ts';
import { goToView, LAPTOP, openPage, startChromium } from './chromium.ts';

/** Half past two by this machine's clock on the wall, wherever it stands. */
const BEGAN_MS = new Date(2027, 3, 18, 14, 30).getTime();
const startedMs = performance.now();
const machine: MachineClock = { ...systemClock(), wallMs: () => BEGAN_MS + performance.now() - startedMs };

const folder = mkdtempSync(join(tmpdir(), 'tarn-hollow-'));
let host: Awaited<ReturnType<typeof createHost>>;
let served: Awaited<ReturnType<typeof serveHost>>;
let browser: Browser;
let page: Page;
let errors: string[];

beforeAll(async () => {
  host = await createHost({ folder, machine });
  served = await serveHost(host, { port: 0, folder: await ensureScreenBuilt(), nowMs: () => performance.now() });
  browser = await startChromium();
  ({ page, errors } = await openPage(browser, served.url, LAPTOP));
  await goToView(page, 'start');
});

afterAll(async () => {
  await browser?.close();
  await served?.close();
  await host?.close();
  rmSync(folder, { recursive: true });
});

const press = (name: string) => page.getByRole('button', { name, exact: true }).click();
const entries = (): Record<string, unknown>[] =>
  [...host.recordingOf(host.running?.boil ?? '')].map((text) => JSON.parse(text) as Record<string, unknown>);

test('the height that is typed tells what water boils at there, before anything begins', async () => {
  const height = page.getByLabel('Height of the place over the sea');
  await height.fill('640');
  await page.getByText('water boils at about 97.8 °C: 97.5 °C to 98.2 °C with the weather').waitFor();
  await height.fill('');
  await page.locator('.water-there').waitFor({ state: 'detached' });
});

test('a time that is still to come begins nothing, and one that has passed is when the boil began', async () => {
  await page.getByLabel('The fire was lit').selectOption({ label: 'earlier today' });
  await page.getByLabel('Time of day').fill('23:50');
  await press('Start the boil');
  await page.getByText('Type a time of day that has passed, such as').waitFor();
  expect(host.running).toBeNull();
  await page.getByLabel('Time of day').fill('12:30');
  // A burner that can hardly be meant is asked about once; a second press stands by it.
  await page.locator('.pan-fields').getByLabel('Fire').selectOption('propane');
  await page.getByLabel('Burner power').fill('0.2');
  await press('Start the boil');
  await page.getByText('If it is so, press “Start the boil” once more').waitFor();
  expect(host.running).toBeNull();
  await press('Start the boil');
  await page.locator('.card').waitFor();
  const [header, first] = entries();
  expect(String(header?.['started'])).toMatch(/^2027-04-18T12:30:00/u);
  expect(first).toMatchObject({ run: 'gap', seconds: expect.any(Number) });
  expect(Math.round(Number(first?.['seconds']) / 60)).toBeGreaterThanOrEqual(120);
});

test('a pour of the time before the program is noted with it, and stands there in the notes', async () => {
  await page.keyboard.press('t');
  await page.locator('.mark-form').getByLabel('or at').fill('12:45');
  await page.locator('.mark-form').getByLabel('Poured in').fill('30');
  await press('Note it');
  await page.locator('.log li').getByText('12:45').waitFor();
  await page.locator('.mark-form').waitFor({ state: 'detached' });
  const { mark } = entries().at(-1) as { mark: { happened: number } };
  expect(mark.happened / 60_000).toBeCloseTo(15.5, 1);
});

test('what was in a pan when the fire was lit is noted with one press for its time', async () => {
  await page.keyboard.press('t');
  const lit = page.locator('.mark-form').getByRole('button', { name: 'as the fire was lit' });
  await lit.click();
  expect(await lit.getAttribute('aria-pressed')).toBe('true');
  await page.locator('.mark-form').getByLabel('Poured in').fill('12');
  await press('Note it');

  await page.locator('.log li').getByText('12:30').waitFor();
  await page.locator('.mark-form').waitFor({ state: 'detached' });
  const { mark } = entries().at(-1) as { mark: { happened: number; litres: number } };
  expect(mark).toMatchObject({ litres: 12 });
  expect(mark.happened).toBeLessThanOrEqual(60_000);
});

test('the thermometer in the hand is checked in boiling water where there is no probe', async () => {
  await page.keyboard.press('c');
  await page.getByText('Hold your thermometer in plain water at a full boil').waitFor();
  await page.locator('.mark-form').getByLabel('It showed').fill('99.1');
  await press('Note it');
  await page.getByText('Check in boiling water of the thermometer in the hand: 99.1').first().waitFor();
  expect(entries().at(-1)).toMatchObject({ mark: { kind: 'water-check', celsius: 99.1 } });
  // It is the first thing that tells how hot water boils here.
  await page
    .getByText(/water boils at/u)
    .getByText(/boiling check/u)
    .waitFor();
  expect(errors).toEqual([]);
});
