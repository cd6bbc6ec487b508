// A note that the host refuses: what was typed stays where it was typed, with the reason over it.
import type { Browser } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { LAPTOP, openPage, startChromium } from './chromium.ts';
import { standIn } from './stand-in-host.ts';
import { liveNow } from './tarn-hollow.ts';

let browser: Browser;

beforeAll(async () => void (browser = await startChromium()));
afterAll(() => browser?.close());

test('a refused note leaves its form open with what was typed', async () => {
  const host = await standIn(await ensureScreenBuilt(), liveNow(2));
  const { page } = await openPage(browser, host.url, LAPTOP);
  host.refuse('mark', 'The boil is over: nothing more can be noted.');
  await page.getByRole('button', { name: 'Depth' }).first().click();
  const field = page.locator('.mark-form').getByLabel('Depth');
  await field.fill('47');
  await page.getByRole('button', { name: 'Note it', exact: true }).click();
  await page.getByText('The boil is over: nothing more can be noted.').waitFor();
  expect(await field.inputValue()).toBe('47');
  await page.context().close();
  await host.close();
});
