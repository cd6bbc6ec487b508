// A whole day of eight pans through the real host and a page in a real Chromium, compressed: memory of both, and whether the page keeps up.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setImmediate as turn } from 'node:timers/promises';
import type { CDPSession } from 'playwright';
import { createHost } from '../../src/host/create-host.ts';
import type { PortEvents } from '../../src/ingest/open-port.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { serveHost } from '../../src/web/serve.ts';
import { LAPTOP, openPage, startChromium } from '../browser/chromium.ts';
import { HandClock } from '../host/hand-clock.ts';
import { celsius, collector } from './soak.ts';

const HOURS = 24;
const PANS = 8;
const HOUR_S = 3600;
/** The page is waited for so often, s, as it would have the time to draw between two messages. */
const LOOK_EVERY_S = 10;
/** The middle of three readings is shown. */
const SEEN_AFTER_S = 4;
const MIB = 1024 * 1024;
const numbers = Array.from({ length: PANS }, (_, i) => i + 1);

/** `words`: how many hours, 24 unless said. */
export async function soakPage(words: readonly string[]): Promise<void> {
  const hours = Number(words[0] ?? HOURS);
  const collect = collector();
  const day = await watchedDay();
  try {
    console.log(`  ${PANS} pans of invented water, one line a second with all of them, ${hours} h`);
    console.log('  hour   host: heap, resident, MiB   page: heap, MiB   nodes   listeners   page behind, ms   took, s');
    for (let hour = 1; hour <= hours; hour += 1) {
      const fromMs = performance.now();
      await day.hour();
      collect();
      const { heapUsed, rss } = process.memoryUsage();
      const { heap, nodes, listeners } = await day.page();
      const cells = [
        hour,
        `${(heapUsed / MIB).toFixed(1)}, ${(rss / MIB).toFixed(0)}`,
        (heap / MIB).toFixed(1),
        nodes,
        listeners,
        await day.behindMs(hour),
        ((performance.now() - fromMs) / 1000).toFixed(0),
      ];
      const widths = [6, 28, 18, 8, 12, 18, 10];
      console.log(cells.map((cell, i) => String(cell).padStart(widths[i] ?? 0)).join(''));
    }
  } finally {
    await day.close();
  }
}

async function watchedDay() {
  const folder = mkdtempSync(join(tmpdir(), 'panwarden-soak-page-'));
  const machine = new HandClock();
  let events: PortEvents | null = null;
  const ports = {
    list: () => Promise.resolve([]),
    openPort: async (_path: string, _baud: number, to: PortEvents) => {
      events = to;
      return { close: () => Promise.resolve() };
    },
  };
  const host = await createHost({ folder, machine, ports, addresses: () => [] });
  const served = await serveHost(host, { port: 0, folder: await ensureScreenBuilt(), nowMs: () => performance.now() });
  const setup = {
    name: 'Tarn Hollow, invented',
    site: { altitude_m: 640 },
    ports: [{ id: 'A', path: '/dev/tarn-hollow' }],
    probes: numbers.map((n) => ({ id: `A/${n}`, port: 'A', channel: `T${n}` })),
    pans: numbers.map((n) => ({ id: `p${n}`, name: `Pan ${n}`, sap: 'birch', probe: `A/${n}` })),
  };
  const started = await host.command({ ref: 's', start: setup });
  if (!started.ok) throw new Error(started.why);
  const browser = await startChromium();
  const { page } = await openPage(browser, served.url, LAPTOP);
  const metrics = await page.context().newCDPSession(page);
  await metrics.send('Performance.enable');
  await page.locator('.card').first().waitFor();
  let seconds = 0;
  const second = async (first = celsius(1, seconds)): Promise<void> => {
    seconds += 1;
    const line = numbers.map((n) => `T${n}=${(n === 1 ? first : celsius(n, seconds)).toFixed(2)}`).join(' ');
    events?.bytes(Buffer.from(`${line}\n`));
    machine.run(1000);
    await turn();
    if (seconds % LOOK_EVERY_S === 0) await page.evaluate('new Promise(requestAnimationFrame)');
  };
  return {
    async hour(): Promise<void> {
      for (let i = 0; i < HOUR_S; i += 1) await second();
    },
    page: () => pageMetrics(metrics),
    /** After a temperature that was not seen before: how long until the page shows it, ms. */
    async behindMs(hour: number): Promise<number> {
      const shown = 80 + hour / 10;
      const fromMs = performance.now();
      for (let i = 0; i < SEEN_AFTER_S; i += 1) await second(shown);
      await page
        .getByText(`${shown.toFixed(1)} °C`)
        .first()
        .waitFor();
      return Math.round(performance.now() - fromMs);
    },
    async close(): Promise<void> {
      await browser.close();
      await served.close();
      await host.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function pageMetrics(session: CDPSession): Promise<{ heap: number; nodes: number; listeners: number }> {
  await session.send('HeapProfiler.collectGarbage');
  const { metrics } = await session.send('Performance.getMetrics');
  const of = (name: string): number => metrics.find((one) => one.name === name)?.value ?? Number.NaN;
  return { heap: of('JSHeapUsedSize'), nodes: of('Nodes'), listeners: of('JSEventListeners') };
}
