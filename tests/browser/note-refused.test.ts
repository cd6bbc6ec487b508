// A note that cannot be noted, refused or overtaken by the end of its boil: what was typed stays where it was typed.
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

test('a form that was being filled in when the boil ended stays until it is put away', async () => {
  const host = await standIn(await ensureScreenBuilt(), liveNow(2, { mode: 'practice' }));
  const { page } = await openPage(browser, host.url, LAPTOP);
  await page.getByRole('button', { name: 'Depth' }).first().click();
  const field = page.locator('.mark-form').getByLabel('Depth');
  await field.fill('47');
  host.show(liveNow(2, { mode: 'practice', ended: true }));
  await page.getByText('is over, and nothing in it was real').first().waitFor();
  expect(await field.inputValue()).toBe('47');
  await page.keyboard.press('Escape');
  await page.locator('.marks').waitFor({ state: 'detached' });
  await page.context().close();
  await host.close();
});

test('of a pan that is noted as emptied the burner is asked about', async () => {
  const host = await standIn(await ensureScreenBuilt(), liveNow(2));
  const { page } = await openPage(browser, host.url, LAPTOP);
  await page.getByRole('button', { name: 'Draw-off' }).first().click();
  await page.locator('.mark-form').getByRole('button', { name: 'All of it' }).click();
  await page.getByText('And the burner under it? Turn it off.').waitFor();
  await page.context().close();
  await host.close();
});

test('at the end of a boil whose page cannot be had nobody is told that a question comes', async () => {
  const host = await standIn(await ensureScreenBuilt(), liveNow(2, { ended: true }));
  const { page } = await openPage(browser, host.url, LAPTOP);
  await page.locator('.card').first().waitFor();
  await expect.poll(() => host.heard.some((command) => 'boil_page' in command)).toBe(true);
  await page.locator('.end-waits').waitFor({ state: 'detached' });
  await page.context().close();
  await host.close();
});
