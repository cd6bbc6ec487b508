// One pan at Tarn Hollow (our invention) with a source that a test speaks through, on a real notebook in a folder of its own.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startBoil } from '../../src/core/boil/fold.ts';
import type { Header } from '../../src/core/boil/entries.ts';
import type { AlarmTransition } from '../../src/core/alarms/alarm.ts';
import { BoilRun } from '../../src/host/boil-run.ts';
import { BoilClock } from '../../src/host/clock.ts';
import { CurveStore } from '../../src/host/curve.ts';
import type { SourceItem, SourceListener, SourceNotice } from '../../src/ingest/source.ts';
import type { Notebook } from '../../src/notebook/contract.ts';
import { openNotebook } from '../../src/notebook/open-notebook.ts';
import { HandClock } from './hand-clock.ts';

export const TARN_HEADER: Header = {
  recording: 'panwarden',
  version: 1,
  name: 'Tarn Hollow, invented',
  started: '2027-04-18T07:30:00-07:00',
  site: { name: 'Tarn Hollow', altitude_m: 640 },
  ports: [{ id: 'A' }],
  probes: [{ id: 'A/1', port: 'A', channel: 'T1' }],
  pans: [{ id: 'p1', name: 'Back pot', sap: 'birch', probe: 'A/1' }],
};

/** In a folder of its own, unless another is handed in. */
export function tarnBoil(folder = mkdtempSync(join(tmpdir(), 'panwarden-'))) {
  const machine = new HandClock();
  const real = openNotebook(folder);
  const disk = { full: false, keepsLearnt: true };
  const notebook: Notebook = Object.assign(Object.create(real) as Notebook, {
    append(boil: string, texts: readonly string[]) {
      if (disk.full) throw new Error('the disk is full');
      return real.append(boil, texts);
    },
    end(boil: string, t: number) {
      if (disk.full) throw new Error('the disk is full');
      return real.end(boil, t);
    },
    keepLearnt(...taught: Parameters<Notebook['keepLearnt']>) {
      if (!disk.keepsLearnt) throw new Error('the disk is full');
      real.keepLearnt(...taught);
    },
  });
  const boil = real.begin(TARN_HEADER, 'live');
  const heard = {
    alarms: [] as AlarmTransition[],
    /** Entries on disk at the moment at which each of those alarms was told. */
    keptWhenTold: [] as number[],
    readings: [] as number[],
    kept: [] as number[],
  };
  let listener: SourceListener | null = null;
  const clock = new BoilClock(machine, 0);
  const run = new BoilRun({
    boil,
    state: startBoil(TARN_HEADER),
    curve: new CurveStore(),
    clock,
    machine,
    notebook,
    everyMs: 10_000,
    openSource: () => ({ start: (to) => (listener = to), stop: () => Promise.resolve() }),
    listener: {
      alarm: (transition) => {
        heard.alarms.push(transition);
        heard.keptWhenTold.push(real.find(boil.boil).entries);
      },
      readings: (t) => heard.readings.push(t),
      kept: (entries) => heard.kept.push(entries),
    },
    changed: () => {},
  });
  run.start(null);
  return {
    run,
    machine,
    disk,
    heard,
    send: (item: SourceItem) => listener?.item(item),
    notice: (notice: SourceNotice) => listener?.notice(notice),
    line: (celsius: number) =>
      listener?.item({ kind: 'entry', entry: { t: clock.now(), port: 'A', line: `T1=${celsius}` } }),
    entries: () =>
      [...real.entries(boil.boil)].map((text) => JSON.parse(text) as Record<string, unknown> & { t: number }),
    boil: boil.boil,
    folder,
    notebook: real,
    summary: () => real.find(boil.boil),
    async close() {
      await run.leave();
      real.close();
      rmSync(folder, { recursive: true });
    },
  };
}
