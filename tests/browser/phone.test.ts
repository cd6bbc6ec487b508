// The phones' page in Chromium, over the loopback alone: switched on in Settings, let in by its code, pans seen, calls answered once allowed, and the loss of the program said.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createHost } from '../../src/host/create-host.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { serveHost } from '../../src/web/serve.ts';
import type { Served } from '../../src/web/serve.ts';
import { LAPTOP, openPage, startChromium } from './chromium.ts';

const SMALL_PHONE = { width: 360, height: 640 };
let folder: string;
let host: Awaited<ReturnType<typeof createHost>>;
let served: Served;
let browser: Browser;
let desk: Page;
let phone: Page;
const errors: string[][] = [];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'tarn-hollow-'));
  host = await createHost({ folder, addresses: () => [{ address: '127.0.0.1', name: 'lo' }] });
  served = await serveHost(host, { port: 0, folder: await ensureScreenBuilt(), nowMs: () => performance.now() });
  await host.command({ ref: 'r', practice: { speed: 1 } });
  browser = await startChromium();
  const opened = await openPage(browser, served.url, LAPTOP);
  desk = opened.page;
  errors.push(opened.errors);
  desk.setDefaultTimeout(15_000);
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await served?.close();
  await host?.close();
  await rm(folder, { recursive: true, force: true });
});

test('it is switched on in Settings, and a code is made', async () => {
  await desk.getByRole('link', { name: 'Settings' }).click();
  const panel = desk.getByRole('region', { name: 'Phones' });
  await panel.getByLabel('Show the pans to phones').check();
  await panel.getByRole('button', { name: 'Let a phone in' }).click();
  await panel.getByRole('img', { name: 'Code for the phone' }).waitFor();
  const url = (await panel.locator('.invite-url').textContent())!;
  const opened = await openPage(browser, url, SMALL_PHONE);
  phone = opened.page;
  errors.push(opened.errors);
  phone.setDefaultTimeout(15_000);
});

test('the phone is given a name, let in, and shows the next thing and every pan', async () => {
  await phone.getByLabel('What this phone is called').fill('Phone in the kitchen');
  await phone.getByRole('button', { name: 'Let this phone in' }).click();
  await phone.getByRole('heading', { name: /Front pot/ }).waitFor();
  expect(await phone.locator('.phone-pan').count()).toBe(3);
  expect(await phone.locator('.phone-practice').textContent()).toMatch(/nothing here is real/);
  expect(await phone.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(SMALL_PHONE.width);
  expect(new URL(phone.url()).hash).toBe('');
  // The list beside the code says so by itself, and the code, which is no good any more, is gone.
  const panel = desk.getByRole('region', { name: 'Phones' });
  await panel.getByRole('row', { name: 'Phone in the kitchen' }).getByText('looks on now').waitFor();
  await panel.locator('.invitation').waitFor({ state: 'detached' });
});

test('calls are shown; it may only look until the desktop allows more', async () => {
  // A reminder stands until it is seen, however slow this machine is; what a pan calls may be over before a page looks.
  await host.command({ ref: 'r', mark: { kind: 'remind', text: 'Skim the pots', seconds: 1 } });
  await phone.getByText('This phone may only look').waitFor();
  await desk.getByLabel('may silence calls and say').check();
  const seen = phone.getByRole('button', { name: /^I have seen/ });
  await seen.waitFor();
  const box = (await seen.boundingBox())!;
  // 20 mm are 76 px at 96 dpi, for gloves.
  expect(box.height).toBeGreaterThanOrEqual(76);
  const call = phone.locator('.phone-call', { hasText: 'Skim the pots' });
  expect(await call.count()).toBe(1);
  await seen.click();
  await call.waitFor({ state: 'detached' });
  const stands = await new Promise<boolean>((resolve) => {
    const leave = host.subscribe((message) => {
      if (message.kind !== 'now') return;
      resolve(message.alarms.some(({ alarm, answered }) => alarm === 'reminder' && !answered));
      queueMicrotask(() => leave());
    });
  });
  expect(stands).toBe(false);
});

test('the wall view makes the numbers large', async () => {
  const size = () =>
    phone
      .locator('.phone-big')
      .first()
      .evaluate((element) => Number.parseFloat(getComputedStyle(element).fontSize));
  const before = await size();
  await phone.getByRole('button', { name: 'Wall view' }).click();
  await expect.poll(size).toBeGreaterThan(before);
  await phone.getByRole('button', { name: 'Wall view' }).click();
});

test('put out at one press, it shows nothing more and says what to do', async () => {
  await desk.getByRole('button', { name: 'Shut Phone in the kitchen out' }).click();
  await phone.getByText('Not let in', { exact: true }).waitFor();
  await desk.getByText('To let it in again, press “Let a phone in”').waitFor();
  await phone.getByText('scan the code there').waitFor();
  expect(await phone.locator('.phone-pan, .phone-head').count()).toBe(0);
  // What says by sound that nothing comes any more can be ended.
  await phone.getByRole('button', { name: 'Seen' }).click();
  await phone.getByRole('button', { name: 'Seen' }).waitFor({ state: 'detached' });
  // The browser itself tells that the socket was refused.
  expect(errors.flat().filter((error) => !/WebSocket|401/.test(error))).toEqual([]);
});
