// What a boil taught of its sap, seen and forgotten through the real page; the pan is read by hand, so no port is opened.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createHost } from '../../src/host/create-host.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { serveHost } from '../../src/web/serve.ts';
import type { Served } from '../../src/web/serve.ts';
import { HandClock } from '../host/hand-clock.ts';
import { PHONE, openPage, startChromium } from './chromium.ts';

let folder: string;
let host: Awaited<ReturnType<typeof createHost>>;
let served: Served;
let browser: Browser;
let page: Page;
let errors: string[];
const machine = new HandClock();

/** One birch pan at Tarn Hollow, our invention. */
const setup = { name: 'Tarn Hollow, invented', site: { altitude_m: 640 }, pans: [{ id: 'p1', sap: 'birch' }] };

async function obeyed(command: Record<string, unknown>): Promise<unknown> {
  const answer = await host.command({ ref: 'r', ...command });
  if (!answer.ok) throw new Error(answer.why);
  return answer.data;
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'tarn-hollow-'));
  host = await createHost({ folder, machine });
  await obeyed({ start: setup });
  await obeyed({ mark: { kind: 'pressure', hpa: 940 } });
  for (let reading = 0; reading < 3; reading += 1) {
    await obeyed({ mark: { kind: 'reading', pan: 'p1', celsius: 103.9 } });
    machine.run(20_000);
  }
  await obeyed({ mark: { kind: 'density', pan: 'p1', brix: 64, celsius: 20, reference_celsius: 20 } });
  await obeyed({ end: true });
  served = await serveHost(host, { port: 0, folder: await ensureScreenBuilt(), nowMs: () => performance.now() });
  browser = await startChromium();
  ({ page, errors } = await openPage(browser, served.url, PHONE));
});

afterAll(async () => {
  await browser?.close();
  await served?.close();
  await host?.close();
  await rm(folder, { recursive: true, force: true });
});

const forget = () => page.getByRole('button', { name: 'Forget what was learned of birch sap' });
const sentence = () => page.getByText(/^Birch sap boils /u);

test('what a boil taught stands among the probes with the boil that taught it', async () => {
  await page.getByRole('link', { name: 'Probes', exact: true }).click();
  await sentence().waitFor();
  expect(await sentence().innerText()).toContain('From “Tarn Hollow, invented”, begun');
});

test('one press asks, another forgets it, and it is used no more', async () => {
  await forget().click();
  await page.getByRole('button', { name: 'No, keep it' }).click();
  await forget().click();
  expect(await obeyed({ learnt: true })).toHaveLength(1);
  await page.getByRole('button', { name: 'Yes, forget it' }).click();
  await sentence().waitFor({ state: 'detached' });
  expect(await obeyed({ learnt: true })).toEqual([]);
  expect(errors).toEqual([]);
});
