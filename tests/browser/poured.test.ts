// A pour that nobody noted is answered on the card: by one press, or with the form that knows its time and amount.
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { LAPTOP, openPage, startChromium } from './chromium.ts';
import { standIn } from './stand-in-host.ts';
import type { StandIn } from './stand-in-host.ts';
import { liveNow, T } from './tarn-hollow.ts';

const AT = T - 25 * 60_000;

let browser: Browser;
let host: StandIn;
let page: Page;

beforeAll(async () => {
  browser = await startChromium();
  host = await standIn(await ensureScreenBuilt(), liveNow(4));
  ({ page } = await openPage(browser, host.url, LAPTOP));
});
afterAll(async () => {
  await browser?.close();
  await host?.close();
});

const marks = () => host.heard.flatMap((command) => ('mark' in command ? [command.mark] : []));

test('the card asks with the amount and the time', async () => {
  const card = page.locator('.card[data-pan=p2]');
  await card.getByText(/About 4\sL poured at 12:17\?/u).waitFor();
  expect(await page.locator('.poured').count()).toBe(1);
});

test('how much opens the form with both filled in', async () => {
  await page.getByRole('button', { name: 'How much' }).click();
  await expect.poll(() => page.getByLabel('Poured in').inputValue()).toBe('4');
  await page.getByLabel('Poured in').fill('3.5');
  await page.getByRole('button', { name: 'Note it' }).click();
  await expect.poll(() => marks().at(-1)).toMatchObject({ kind: 'top-up', pan: 'p2', litres: 3.5, happened: AT });
});

test('yes and no are one press each', async () => {
  await page.getByRole('button', { name: 'Yes', exact: true }).click();
  await expect.poll(() => marks().at(-1)).toMatchObject({ kind: 'top-up', pan: 'p2', litres: 4, happened: AT });
  await page.getByRole('button', { name: 'No', exact: true }).click();
  await expect.poll(() => marks().at(-1)).toMatchObject({ kind: 'no-top-up', pan: 'p2', happened: AT });
});
