// On paper every theme is ink on white.
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
  await page.close();
  await host.close();
});
