// Puts a recording through the codec and the fold as `replay` does, and gives all that the program said and what it cost.
import type { AlarmTransition } from '../../../src/core/alarms/alarm.ts';
import { type BoilState, startBoil } from '../../../src/core/boil/fold.ts';
import { boilView } from '../../../src/core/boil/view.ts';
import type { PanReading } from '../../../src/core/pan/reading.ts';
import { foldTools } from '../../../src/host/fold-tools.ts';
import { Folding } from '../../../src/host/folding.ts';
import { readRecording, type RecordingItem } from '../../../src/protocol/recording.ts';

export const READING_MS = 30_000;

/** A pour that the program thinks nobody marked; `at` is ms of boil time. */
export interface SeenPour {
  pan: string;
  at: number;
  litres: number | null;
}

export interface Played {
  /** By pan, one each 30 s from t = 0. */
  readings: Record<string, PanReading[]>;
  calls: AlarmTransition[];
  /** What stands in the boil's view at the end; null while the program says nothing of unmarked pours. */
  pours: SeenPour[] | null;
  /** This thread's own time in the fold, readings asked for every 30 s included, and the probe readings that it took. */
  foldMs: number;
  probeReadings: number;
  /** The state at the end as text, for each pan. */
  stateBytesPerPan: number;
  /** What was believed when it was over. */
  end: BoilState;
}

export async function play(recording: string): Promise<Played> {
  const items: RecordingItem[] = [];
  for await (const item of readRecording([recording])) items.push(item);
  const [first] = items;
  if (first?.kind !== 'header') throw new Error('The simulated recording has no header.');
  const start = startBoil(first.header);
  const played: Played = {
    readings: {},
    calls: [],
    pours: null,
    foldMs: 0,
    probeReadings: 0,
    stateBytesPerPan: 0,
    end: start,
  };
  const folding = new Folding(start, foldTools, listenerOf(played), READING_MS);
  let lastT = 0;
  const before = process.threadCpuUsage();
  for (const item of items) {
    if (item.kind !== 'entry') continue;
    folding.take(item.entry, item.raw);
    lastT = item.entry.t;
  }
  folding.reach(lastT);
  const spent = process.threadCpuUsage(before);
  played.foldMs = (spent.user + spent.system) / 1000;
  const leftOut = items.find(({ kind }) => kind === 'left-out' || kind === 'torn');
  if (leftOut !== undefined) throw new Error(`The simulated recording was not read whole: ${JSON.stringify(leftOut)}`);
  for (const item of items) {
    if (item.kind === 'entry' && 'line' in item.entry) played.probeReadings += item.entry.line.split(' ').length;
  }
  played.end = folding.state;
  played.pours = (boilView(folding.state, lastT) as { pours?: SeenPour[] }).pours ?? null;
  played.stateBytesPerPan = JSON.stringify(folding.state).length / Math.max(1, first.header.pans?.length ?? 1);
  return played;
}

function listenerOf(played: Played) {
  return {
    alarm: (transition: AlarmTransition) => void played.calls.push(transition),
    readings: (_t: number, readings: PanReading[]) => {
      for (const reading of readings) (played.readings[reading.pan] ??= []).push(reading);
    },
  };
}
