// A whole day of sixteen probes at one line a second through the real boil and a real notebook, compressed: memory and drift, hour by hour.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import type { Header } from '../../src/core/boil/entries.ts';
import { startBoil } from '../../src/core/boil/fold.ts';
import { BoilRun } from '../../src/host/boil-run.ts';
import { BoilClock } from '../../src/host/clock.ts';
import { CurveStore } from '../../src/host/curve.ts';
import type { SourceListener } from '../../src/ingest/source.ts';
import { openNotebook } from '../../src/notebook/open-notebook.ts';
import { HandClock } from '../host/hand-clock.ts';

const HOURS = 24;
const PROBES = 16;
const HOUR_S = 3600;
/** A page would be sent a snapshot each second; one in ten is made here. */
const SNAPSHOT_EVERY_S = 10;
const MIB = 1024 * 1024;

const names = Array.from({ length: PROBES }, (_, i) => i + 1);
const HEADER: Header = {
  recording: 'panwarden',
  version: 1,
  name: 'Tarn Hollow, invented',
  started: '2027-04-18T07:30:00-07:00',
  site: { name: 'Tarn Hollow', altitude_m: 640 },
  ports: [{ id: 'A' }],
  probes: names.map((n) => ({ id: `A/${n}`, port: 'A', channel: `T${n}` })),
  pans: names.map((n) => ({ id: `p${n}`, name: `Pan ${n}`, probe: `A/${n}` })),
};

/** `words`: how many hours, 24 unless said. */
export async function soak(words: readonly string[]): Promise<void> {
  const hours = Number(words[0] ?? HOURS);
  const folder = mkdtempSync(join(tmpdir(), 'panwarden-soak-'));
  const collect = collector();
  const day = soakedBoil(folder);
  try {
    console.log(`  ${PROBES} pans of invented water, one line a second with all of them, ${hours} h`);
    console.log('  hour   heap, MiB   resident, MiB   entries on disk   boil time less clock, ms   took, s');
    for (let hour = 1; hour <= hours; hour += 1) {
      const fromMs = performance.now();
      day.hour();
      collect();
      const { heapUsed, rss } = process.memoryUsage();
      const cells = [hour, (heapUsed / MIB).toFixed(1), (rss / MIB).toFixed(0), day.run.kept, day.driftMs()];
      const widths = [6, 12, 16, 18, 27];
      const row = cells.map((cell, i) => String(cell).padStart(widths[i] ?? 0)).join('');
      console.log(`${row}${((performance.now() - fromMs) / 1000).toFixed(1).padStart(11)}`);
    }
    console.log(`  calls: ${day.calls()}; greatest step between lines kept and lines said: ${day.behind()}`);
  } finally {
    await day.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

function soakedBoil(folder: string) {
  const machine = new HandClock();
  const notebook = openNotebook(folder);
  const clock = new BoilClock(machine, 0);
  let listener: SourceListener | null = null;
  let seconds = 0;
  let calls = 0;
  const run = new BoilRun({
    boil: notebook.begin(HEADER, 'live'),
    state: startBoil(HEADER),
    curve: new CurveStore(),
    clock,
    machine,
    notebook,
    everyMs: null,
    openSource: () => ({ start: (to) => (listener = to), stop: () => Promise.resolve() }),
    listener: { alarm: () => (calls += 1) },
    changed: () => {},
  });
  run.start(null);
  const startMs = machine.monotonicMs();
  const second = (): void => {
    seconds += 1;
    const line = names.map((n) => `T${n}=${celsius(n, seconds).toFixed(2)}`).join(' ');
    listener?.item({ kind: 'entry', entry: { t: clock.now(), port: 'A', line } });
    if (seconds % SNAPSHOT_EVERY_S === 0) run.snapshot();
    machine.run(1000);
  };
  return {
    run,
    calls: () => calls,
    behind: () => seconds - (run.kept - calls),
    driftMs: () => run.snapshot().t - (machine.monotonicMs() - startMs),
    hour(): void {
      for (let i = 0; i < HOUR_S; i += 1) second();
    },
    async close(): Promise<void> {
      await run.leave();
      notebook.close();
    },
  };
}

/** Water that boils, with the noise of a probe that is never twice the same for long. */
export const celsius = (probe: number, second: number): number =>
  97.8 + 0.06 * Math.sin(second * (1 + probe / 7)) + 0.03 * Math.sin(second * 0.37 * probe);

/** Collects what nobody holds, so that what is measured is what is kept. */
export function collector(): () => void {
  setFlagsFromString('--expose-gc');
  return runInNewContext('gc') as () => void;
}
