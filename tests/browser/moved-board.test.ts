// A board that comes back under another name in the middle of a boil: the page asks, and one press reads it for the same pans.
import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createHost } from '../../src/host/create-host.ts';
import type { SystemPort } from '../../src/ingest/device-identity.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { serveHost } from '../../src/web/serve.ts';
import { pretendBoard } from '../ingest/pretend-board.ts';
import { LAPTOP, openPage, PHONE, startChromium } from './chromium.ts';

const board = pretendBoard();
const other = pretendBoard();
const folder = mkdtempSync(join(tmpdir(), 'tarn-hollow-'));
let listed: SystemPort[] = [];
let host: Awaited<ReturnType<typeof createHost>>;
let served: Awaited<ReturnType<typeof serveHost>>;
let browser: Browser;
let page: Page;

const saying = (over: Partial<SystemPort>): SystemPort => ({
  path: realpathSync(board.path),
  manufacturer: 'Tarn Hollow workshop',
  vendorId: 'F00D',
  productId: '0001',
  ...over,
});

beforeAll(async () => {
  await board.plugIn();
  listed = [saying({ serialNumber: 'TH-1' })];
  host = await createHost({ folder, ports: { list: async () => listed } });
  const start = {
    ports: [{ id: 'A', path: board.path, device: 'serial/f00d:0001/TH-1' }],
    probes: [{ id: 'A/1', port: 'A', channel: 'T1' }],
    pans: [{ id: 'p1', name: 'Back pot', probe: 'A/1' }],
  };
  expect(await host.command({ ref: 's', start })).toMatchObject({ ok: true });
  served = await serveHost(host, { port: 0, folder: await ensureScreenBuilt(), nowMs: () => performance.now() });
  browser = await startChromium();
  ({ page } = await openPage(browser, served.url, LAPTOP));
  await page.evaluate("location.hash = '#/probes'");
});

afterAll(async () => {
  await browser?.close();
  await served?.close();
  await host?.close();
  await Promise.all([board.remove(), other.remove()]);
  rmSync(folder, { recursive: true, force: true });
});

async function pictures(name: string): Promise<void> {
  for (const size of [LAPTOP, PHONE]) {
    await page.setViewportSize(size);
    await page.screenshot({ path: `test-results/${name}-${size.width}.png`, fullPage: true });
    expect(await page.locator('html').evaluate((root) => root.scrollWidth - root.clientWidth)).toBe(0);
  }
  await page.setViewportSize(LAPTOP);
}

const boards = () => page.locator('.panel', { hasText: 'Boards in use' });

test('a board of the same make is asked about, and read after a press', async () => {
  await boards().getByText('✓ Open').waitFor();
  // The setup numbers it by a letter, which nobody was told: it goes by its port.
  const called = basename(board.path);
  // The system may give the same terminal again, which must not pass for the board that was there.
  listed = [];
  await board.pull();
  await board.plugIn('another-name');
  listed = [saying({ serialNumber: 'TH-2' })];
  const to = realpathSync(board.path);
  await page.getByText(`The board of port ${called} seems to be at ${to} now: use it?`).waitFor();
  await pictures('moved-board');
  await page.getByRole('button', { name: `Yes, read board ${called} there` }).press('Enter');
  await boards().getByText('✓ Open').waitFor();
  await expect.poll(() => page.getByText('use it?').count()).toBe(0);
  await board.send('\nT1=96.4C\n');
  await page.getByRole('row', { name: /T1/ }).getByText('96.4').waitFor();
  expect(await page.getByRole('combobox', { name: 'Pan of T1' }).inputValue()).toBe('p1');
});

test('one that says nothing of itself is chosen from the list', async () => {
  // Plugged in before the other is pulled, it cannot come under the same name.
  await other.plugIn();
  listed = [{ path: realpathSync(other.path) }];
  await board.pull();
  await boards().getByText('▲ Lost, trying again').waitFor();
  await page.getByRole('button', { name: 'Look again' }).press('Enter');
  await page.getByRole('button', { name: /^This is board pts \d+$/ }).waitFor();
  await pictures('bare-board');
  await page.getByRole('button', { name: /^This is board pts \d+$/ }).press('Enter');
  await boards().getByText('✓ Open').waitFor();
  await other.send('\nT1=96.7C\n');
  await page.getByRole('row', { name: /T1/ }).getByText('96.7').waitFor();
});
