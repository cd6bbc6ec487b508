// On paper every theme is ink on white, nothing is folded away, and no example stands for an answer.
import type { Browser } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { LAPTOP, openPage, startChromium } from './chromium.ts';
import { standIn } from './stand-in-host.ts';
import { liveNow } from './tarn-hollow.ts';

let browser: Browser;
beforeAll(async () => void (browser = await startChromium()));
afterAll(() => browser?.close());

test.each(['light', 'dark', 'contrast'] as const)('%s', async (theme) => {
  const host = await standIn(await ensureScreenBuilt(), liveNow(2), { theme });
  const { page } = await openPage(browser, host.url, LAPTOP);
  await page.locator('.card').first().waitFor();
  await page.emulateMedia({ media: 'print' });
  const colours = await page.evaluate<string[]>(
    `['--ground', '--ink', '--bad', '--line-scorch'].map((name) => getComputedStyle(document.documentElement).getPropertyValue(name).trim())`,
  );
  expect(colours).toEqual(['#fff', '#000', '#8f1d0c', '#9c3208']);
  // Links that look like buttons are to be pressed, too.
  expect(await page.locator('main a.button').count()).toBeGreaterThan(0);
  expect(await page.locator('main a.button:visible').count()).toBe(0);
  await page.context().close();
  await host.close();
});

test('a list that is folded on the screen is whole, and the examples of empty fields are gone', async () => {
  const now = liveNow(2);
  const marks = Array.from({ length: 12 }, (_, place) => ({
    ...now.marks[0]!,
    at: now.t - place * 60_000,
    mark: { ...now.marks[0]!.mark, id: `m${place}` },
  }));
  const host = await standIn(await ensureScreenBuilt(), { ...now, marks });
  const { page } = await openPage(browser, host.url, LAPTOP);
  const rows = page.locator('.log li');
  await rows.first().waitFor();
  const seen = (): Promise<number> => rows.evaluateAll((all) => all.filter((row) => row.checkVisibility()).length);
  expect(await seen()).toBe(8);
  await page.emulateMedia({ media: 'print' });
  expect(await seen()).toBe(12);
  expect(await page.locator('.log summary:visible').count()).toBe(0);
  await page.emulateMedia({ media: 'screen' });
  await page.keyboard.press('n');
  const field = page.locator('input[placeholder]:not([placeholder=""])').first();
  await field.waitFor();
  const ink = (): Promise<string> => field.evaluate((each) => getComputedStyle(each, '::placeholder').color);
  expect(await ink()).not.toBe('rgba(0, 0, 0, 0)');
  await page.emulateMedia({ media: 'print' });
  expect(await ink()).toBe('rgba(0, 0, 0, 0)');
  await page.context().close();
  await host.close();
});

test('paper says no keys, and not how its charts are moved', async () => {
  const host = await standIn(await ensureScreenBuilt(), liveNow(2));
  const { page } = await openPage(browser, host.url, LAPTOP);
  const hint = page.getByText('Drag moves; Ctrl and the wheel zoom');
  await hint.waitFor();
  expect(await page.locator('main kbd:visible').count()).toBeGreaterThan(0);
  await page.emulateMedia({ media: 'print' });
  expect(await hint.isVisible()).toBe(false);
  expect(await page.locator('kbd:visible').count()).toBe(0);
  await page.context().close();
  await host.close();
});

test('paper has no box in which nothing is, and what was noted in a column, by a clock of 12 hours too', async () => {
  const now = liveNow(2);
  const first = { kind: 'top-up', pan: 'p1', litres: 20, brix: 2, id: 'm-first' } as const;
  const filled = { ...now.marks[0]!, t: 60_000, at: 60_000, withdrawn: false, mark: first };
  const host = await standIn(await ensureScreenBuilt(), { ...now, marks: [filled, ...now.marks] }, { clock: '12' });
  const { page } = await openPage(browser, host.url, LAPTOP);
  await page.locator('.log li').first().waitFor();
  expect(await page.locator('.marks').isVisible()).toBe(true);
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('.marks').isVisible()).toBe(false);
  const panels = await page.locator('main .panel:visible').allInnerTexts();
  expect(panels.map((text) => text.trim())).not.toContain('');
  const rows = page.locator('.log li');
  expect(await rows.last().innerText()).toMatch(/^7:31\sam\s+Front pot: Filling 20\.0\sL/);
  const starts = await rows.locator('span').evaluateAll((all) => all.map((each) => each.getBoundingClientRect().x));
  expect(new Set(starts).size).toBe(1);
  await page.context().close();
  await host.close();
});
