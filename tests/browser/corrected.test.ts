// A mark that changed what is believed stands on the pan's curve and in the list, and tells what was and what is by press and by key.
import type { Browser, Page } from 'playwright';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { LAPTOP, openPage, startChromium } from './chromium.ts';
import { standIn } from './stand-in-host.ts';
import type { StandIn } from './stand-in-host.ts';
import { liveNow, T } from './tarn-hollow.ts';

const WORDS = 'Front pot: Density 58\u00a0°Bx: strength 55 → 58\u00a0°Bx, finish 13:01 → 12:51';

let browser: Browser;
let host: StandIn;
let page: Page;

beforeAll(async () => void (browser = await startChromium()));
afterAll(() => browser?.close());
beforeEach(async () => {
  host = await standIn(await ensureScreenBuilt(), liveNow(2));
  ({ page } = await openPage(browser, host.url, LAPTOP));
});
afterEach(async () => {
  await page.context().close();
  await host.close();
});

test('the mark on the curve tells of itself when the keyboard reaches it, and Escape puts it away', async () => {
  const mark = page.locator('button.corrected');
  await mark.waitFor();
  expect(await mark.getAttribute('aria-label')).toBe(`12:24, ${WORDS}`);
  await page.locator('.chart-area').focus();
  await page.keyboard.press('Tab');
  const told = page.locator('.corrected-words');
  await expect.poll(() => told.innerText()).toContain(WORDS);
  const [spot, chart] = await Promise.all([mark.boundingBox(), page.locator('.chart-area').boundingBox()]);
  // 18 min before now; an hour of the past and 12 min of what is expected are shown.
  const share = ((spot?.x ?? 0) + (spot?.width ?? 0) / 2 - (chart?.x ?? 0)) / (chart?.width ?? 1);
  expect(share).toBeGreaterThan(0.55);
  expect(share).toBeLessThan(0.68);
  await page.keyboard.press('Escape');
  await told.waitFor({ state: 'detached' });
  await mark.click();
  await told.waitFor();
});

test('a press in the list shows it in the chart of its own pan', async () => {
  await page.keyboard.press('2');
  const line = page.getByRole('button', { name: 'strength 55 → 58\u00a0°Bx, finish 13:01 → 12:51', exact: true });
  await line.click();
  await page.locator('.chart-edges', { hasText: 'Front pot' }).waitFor();
  await expect.poll(() => page.locator('.corrected-words').innerText()).toContain(WORDS);
});

test('a burner that was changed stands among what was noted, at its time, and cannot be taken back', async () => {
  const powers = [
    { t: T - 20 * 60_000, pan: 'p1', watts: 12_000 },
    { t: T - 10 * 60_000, pan: 'p2', watts: null },
  ];
  host.show(liveNow(2, { powers }));
  const rows = page.locator('.log li', { hasText: 'Burner power' });
  await expect
    .poll(() => rows.allInnerTexts())
    .toEqual([
      expect.stringMatching(/^12:32\s*Back pot: Burner power not known from here on$/u),
      expect.stringMatching(/^12:22\s*Front pot: Burner power 12(\.0)?\skW from here on$/u),
    ]);
  expect(await rows.getByRole('button').count()).toBe(0);
});
