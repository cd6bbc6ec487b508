// A note that was corrected comes back when the correction is taken back, or left before it was noted: through the real page and host.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createHost } from '../../src/host/create-host.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { serveHost } from '../../src/web/serve.ts';
import { openPage, PHONE, startChromium } from './chromium.ts';

const folder = mkdtempSync(join(tmpdir(), 'tarn-hollow-'));
let host: Awaited<ReturnType<typeof createHost>>;
let served: Awaited<ReturnType<typeof serveHost>>;
let browser: Browser;
let page: Page;
let errors: string[];

beforeAll(async () => {
  host = await createHost({ folder });
  served = await serveHost(host, { port: 0, folder: await ensureScreenBuilt(), nowMs: () => performance.now() });
  const pans = [{ id: 'p1', name: 'Front pot', vessel: { shape: 'round', diameter_mm: 380 } }];
  const begun = await host.command({ ref: 'r', start: { name: 'Tarn Hollow, invented', pans } });
  expect(begun).toMatchObject({ ok: true });
  browser = await startChromium();
  ({ page, errors } = await openPage(browser, served.url, PHONE));
  page.setDefaultTimeout(10_000);
  await page.locator('.card').waitFor();
});

afterAll(async () => {
  await browser?.close();
  await served?.close();
  await host?.close();
  rmSync(folder, { recursive: true });
});

const press = (name: string) => page.getByRole('button', { name, exact: true }).first().click();
const standing = () => page.locator('.log li:not(.log-withdrawn)').filter({ hasText: 'Filling' });
const stands = (litres: string) => standing().getByText(`Front pot: Filling ${litres}`).waitFor();
const marks = (): Record<string, unknown>[] =>
  [...host.recordingOf(host.running?.boil ?? '')]
    .map((text) => JSON.parse(text) as { mark?: Record<string, unknown> })
    .flatMap(({ mark }) => (mark === undefined ? [] : [mark]));

test('taking a correction back brings the note back as it was, with its time', async () => {
  await page.keyboard.press('t');
  await page.locator('.mark-form').getByLabel('Poured in').fill('3');
  await press('Note it');
  await stands('3.0');
  await standing().getByRole('button', { name: 'Correct it' }).click();
  await page.locator('.mark-form').getByLabel('Poured in').fill('2');
  await press('Note it');
  await stands('2.0');
  await standing()
    .getByText(/^corrected \d\d:\d\d, was: Filling 3\.0\sL$/u)
    .waitFor();
  await page
    .locator('.log-withdrawn')
    .getByText(/^corrected \d\d:\d\d$/u)
    .waitFor();
  expect(await page.locator('.log').getByText('taken back').count()).toBe(0);
  await standing()
    .getByRole('button', { name: /in the pan 3\.0 → 2\.0/u })
    .waitFor();
  // The key takes back what is offered beside it.
  await page.locator('.said', { hasText: 'Filling 2.0' }).waitFor();
  await page.keyboard.press('u');
  await stands('3.0');
  expect(await standing().count()).toBe(1);
  const [first, , corrected, , last] = marks();
  expect(corrected).toMatchObject({ litres: 2 });
  expect(last).toMatchObject({ kind: 'top-up', litres: 3, pan: 'p1', happened: corrected!['happened'] });
  expect(last!['id']).not.toBe(first!['id']);
  expect(errors).toEqual([]);
});

test('a correction that is asked about and left before it is noted changes nothing, whichever way it is left', async () => {
  const before = marks();
  await standing().getByRole('button', { name: 'Correct it' }).click();
  await page.locator('.mark-form').getByLabel('Poured in').fill('900');
  await press('Note it');
  await page.getByRole('button', { name: 'No, let me change it' }).click();
  await page.getByRole('button', { name: /^Back/ }).click();
  await stands('3.0');
  await standing().getByRole('button', { name: 'Correct it' }).click();
  await page.locator('.mark-form').getByLabel('Poured in').fill('900');
  await press('Note it');
  await page.getByRole('button', { name: 'No, let me change it' }).waitFor();
  await page.reload();
  await stands('3.0');
  expect(marks()).toEqual(before);
  expect(errors).toEqual([]);
});

test('on a phone the words of a note have the whole width, over its buttons', async () => {
  const [words, row] = await Promise.all(
    [standing().locator('span').first(), standing()].map((each) => each.boundingBox()),
  );
  expect(words!.width).toBeGreaterThan(0.7 * row!.width);
  const button = await standing().getByRole('button', { name: 'Correct it' }).boundingBox();
  expect(button!.y).toBeGreaterThanOrEqual(words!.y + words!.height);
});
