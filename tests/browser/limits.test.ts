// Limits of one pan are changed while it calls: the words come first, the call stays, and the next boil begins with what is usual for its sap.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { createHost } from '../../src/host/create-host.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { serveHost } from '../../src/web/serve.ts';
import { HandClock } from '../host/hand-clock.ts';
import { LAPTOP, PHONE, openPage, startChromium } from './chromium.ts';
import { standIn } from './stand-in-host.ts';
import { alarms, liveNow } from './tarn-hollow.ts';

let browser: Browser;
const closing: (() => Promise<unknown>)[] = [];

beforeAll(async () => void (browser = await startChromium()));
afterAll(() => browser?.close());
afterEach(async () => {
  for (const close of closing.splice(0).reverse()) await close();
});

/** Whether nothing of it is under the first line or what stands at the foot. */
function isClear(element: Element): boolean {
  const { top, bottom } = element.getBoundingClientRect();
  const foot = document.querySelector('.bottom')!.getBoundingClientRect();
  return top >= document.querySelector('.top')!.getBoundingClientRect().bottom && bottom <= foot.top;
}

test('a pan’s own limits are sent with all pans as they are, after a sentence on what they do now', async () => {
  const calling = liveNow(2, { alarms, sound: { priority: 'high', silencedUntil: null } });
  const host = await standIn(await ensureScreenBuilt(), calling);
  closing.push(() => host.close());
  const { page, errors } = await openPage(browser, host.url, LAPTOP);
  closing.push(() => page.context().close());
  await page.getByRole('button', { name: 'When Front pot is done' }).press('Enter');
  await page.getByLabel('It is done at').selectOption('strength');
  await page.getByLabel('That is').fill('60');
  await page.getByText('it would be called done at once').waitFor();
  await page.getByLabel('That is').fill('95');
  const save = page.getByRole('button', { name: 'Save for Front pot' });
  await save.click();
  const why = page.getByRole('alert').getByText(/95 is outside of 10 to 80\s°Bx/);
  await why.waitFor();
  // Refused again by Enter in a field far above it, it comes into sight again.
  await page.setViewportSize({ width: PHONE.width, height: 700 });
  await page.getByLabel('That is').focus();
  await expect.poll(() => why.evaluate(isClear)).toBe(false);
  await page.getByLabel('That is').press('Enter');
  await expect.poll(() => why.evaluate(isClear)).toBe(true);
  await page.setViewportSize(LAPTOP);
  expect(host.heard.some((command) => 'set' in command)).toBe(false);
  await page.getByLabel('That is').fill('66');
  await page.getByLabel('Call me when a pan is nearly syrup').selectOption('900');
  await page.getByText('Called about 15 min before the finish').waitFor();
  await page.getByRole('button', { name: 'Save for Front pot' }).click();
  await expect
    .poll(() => host.heard.find((command) => 'set' in command))
    .toMatchObject({
      set: {
        pans: [
          { ...calling.header?.pans?.[0], finish: { brix: 66 }, settings: { near_finish_lead_s: 900 } },
          calling.header?.pans?.[1],
        ],
      },
    });
  expect(errors).toEqual([]);
});

test('a call stays when its pan’s lead is changed, and is in the history; the next boil begins with what is usual', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'tarn-hollow-'));
  closing.push(() => rm(folder, { recursive: true, force: true }));
  const machine = new HandClock();
  const host = await createHost({ folder, machine });
  closing.push(() => host.close());
  const pans = [{ id: 'p1', name: 'Front pot' }];
  for (const command of [
    { start: { name: 'Tarn Hollow, invented', pans } },
    { mark: { kind: 'remind', text: 'Skim', seconds: 5 } },
  ]) {
    const answer = await host.command({ ref: 'r', ...command });
    if (!answer.ok) throw new Error(answer.why);
  }
  machine.run(6000);
  const served = await serveHost(host, { port: 0, folder: await ensureScreenBuilt(), nowMs: () => performance.now() });
  closing.push(() => served.close());
  const { page } = await openPage(browser, served.url, LAPTOP);
  closing.push(() => page.context().close());
  await page.locator('.dock', { hasText: 'Skim' }).waitFor();
  await page.getByRole('button', { name: 'When Front pot is done' }).click();
  await page.getByLabel('Call me when a pan would burn').selectOption('360');
  await page.getByRole('button', { name: 'Save for Front pot' }).click();
  await page.getByText('Front pot: changed from now on.').waitFor();
  expect(await page.locator('.dock').innerText()).toContain('Skim');
  expect(await page.locator('.history').innerText()).toContain('Skim');
  await page.goto(`${served.url.split('#')[0]}#/settings`);
  await page.getByText('Front pot has its own: 6 min before.').waitFor();
  const maple = page.locator('fieldset', { has: page.getByText('Maple', { exact: true }) });
  await maple.getByLabel('It is done at').selectOption('strength');
  await maple.getByLabel('That is').fill('66.2');
  await maple.getByLabel('Call me when a pan is nearly syrup').selectOption('1200');
  await page.goto(`${served.url.split('#')[0]}#/start`);
  await expect.poll(() => page.getByLabel('That is').inputValue()).toBe('66.2');
  await expect.poll(() => page.getByLabel('Call me when a pan is nearly syrup').inputValue()).toBe('1200');
  // The boil that runs has that name already.
  await expect.poll(() => page.getByLabel('Name of this boil').inputValue()).toBe('Tarn Hollow, invented 2');
});
