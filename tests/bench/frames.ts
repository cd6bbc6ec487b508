// What a person feels who drags a chart: times between frames in a real Chromium, over 14 h of eight pans.
import { createReadStream, mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright';
import { toppedUpPots } from '../../fixtures/boils/bench-day.ts';
import { writeBenchRecording } from '../../fixtures/make-recordings.ts';
import { createHost } from '../../src/host/create-host.ts';
import type { Host } from '../../src/host/host.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { serveHost } from '../../src/web/serve.ts';
import { LAPTOP, openPage, startChromium } from '../browser/chromium.ts';

const MOVES = 240;
const PANS = 8;

export async function frames(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'panwarden-bench-'));
  const host = await createHost({ folder });
  const served = await serveHost(host, { port: 0, folder: await ensureScreenBuilt(), nowMs: () => performance.now() });
  const browser = await startChromium();
  try {
    const boil = await longBoil(host, folder);
    const { page } = await openPage(browser, served.url, LAPTOP);
    await openReplay(host, page, boil);
    console.log(`  load of the machine: ${loadavg()[0]?.toFixed(1)} on ${availableParallelism()} processors`);
    print('nothing moves', await framesOf(page, () => page.waitForTimeout(1000 / 60)));
    for (const pan of [1, PANS]) await measurePan(page, pan);
    await measureStrip(page);
  } finally {
    await browser.close();
    await served.close();
    await host.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function longBoil(host: Host, folder: string): Promise<string> {
  const file = join(folder, 'long-day.boil.jsonl');
  await writeBenchRecording(file, toppedUpPots(PANS, 14, 'Fourteen hours'));
  const { boil } = await host.importRecording(createReadStream(file), 'the long day');
  return boil;
}

async function obeyed(host: Host, command: Record<string, unknown>): Promise<void> {
  const answer = await host.command({ ref: 'bench', ...command });
  if (!answer.ok) throw new Error(answer.why);
}

/** At the end of the boil, once all of it is read and the page has the whole curve. */
async function openReplay(host: Host, page: Page, boil: string): Promise<void> {
  await obeyed(host, { replay: { boil, at: 14 * 3_600_000 } });
  await page.evaluate("location.hash = '#/replay'");
  await page.locator('.strip[data-read="whole"]').waitFor({ timeout: 120_000 });
  await page.getByRole('button', { name: 'Whole boil' }).click();
}

async function measurePan(page: Page, pan: number): Promise<void> {
  await page
    .locator('.card-name')
    .nth(pan - 1)
    .click();
  const area = page.locator('.chart-area');
  await area.scrollIntoViewIfNeeded();
  await page.getByRole('button', { name: 'Whole boil' }).click();
  await page.waitForTimeout(3000);
  const box = await area.boundingBox();
  if (box === null) throw new Error('The chart is not on the page.');
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  await page.mouse.move(middle.x, middle.y);
  print(
    `pan ${pan}, zooming from 14 h to minutes and back`,
    await framesOf(page, (i) => page.mouse.wheel(0, i < MOVES / 2 ? -40 : 40)),
  );
  for (let i = 0; i < 8; i += 1) await page.mouse.wheel(0, -100);
  await page.mouse.down();
  print(
    `pan ${pan}, dragging`,
    await framesOf(page, (i) => page.mouse.move(middle.x + 300 * Math.sin(i / 15), middle.y)),
  );
  await page.mouse.up();
}

async function measureStrip(page: Page): Promise<void> {
  const strip = page.locator('.strip');
  await strip.scrollIntoViewIfNeeded();
  const box = await strip.boundingBox();
  if (box === null) throw new Error('The strip is not on the page.');
  const y = box.y + box.height / 2;
  await page.mouse.move(box.x + box.width / 2, y);
  await page.mouse.down();
  const across = (i: number): number => box.x + box.width * (0.5 + 0.4 * Math.sin(i / 20));
  print('the strip of the whole boil, dragging', await framesOf(page, (i) => page.mouse.move(across(i), y)));
  await page.mouse.up();
}

interface Measured {
  /** ms between the frames that the page made. */
  spent: number[];
  /** What the page's own thread worked for each of them, ms of processor time. */
  workMs: number;
}

/** While `move` was done again and again. */
async function framesOf(page: Page, move: (i: number) => Promise<void>): Promise<Measured> {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  const worked = async (): Promise<number> => {
    const { metrics } = await session.send('Performance.getMetrics');
    return 1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? 0);
  };
  await page.evaluate(`
    window.frameTimes = [];
    window.isCounting = true;
    const note = (t) => { window.frameTimes.push(t); if (window.isCounting) requestAnimationFrame(note); };
    requestAnimationFrame(note);
  `);
  const before = await worked();
  for (let i = 0; i < MOVES; i += 1) await move(i);
  const workMs = (await worked()) - before;
  const times = await page.evaluate<number[]>('window.isCounting = false, window.frameTimes');
  await session.detach();
  return { spent: times.slice(1).map((t, i) => t - (times[i] ?? 0)), workMs: workMs / MOVES };
}

function print(what: string, { spent, workMs }: Measured): void {
  const sorted = [...spent].sort((one, other) => one - other);
  const at = (share: number): string => (sorted[Math.ceil(share * sorted.length) - 1] ?? 0).toFixed(1);
  console.log(
    `  ${what}: median ${at(0.5)} ms, p99 ${at(0.99)} ms, longest ${at(1)} ms (goal: 16.7); the page works ${workMs.toFixed(1)} ms for each move`,
  );
}
