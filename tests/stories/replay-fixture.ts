// Replays a fixture through the real codec and fold, and gives every call it made and every reading asked for.
import { createReadStream } from 'node:fs';
import type { AlarmTransition } from '../../src/core/alarms/alarm.ts';
import { advance, applyEntry, type BoilState, panReadings, startBoil } from '../../src/core/boil/fold.ts';
import type { PanReading } from '../../src/core/pan/reading.ts';
import { foldTools } from '../../src/host/fold-tools.ts';
import { readRecording } from '../../src/protocol/recording.ts';

export interface Replayed {
  calls: AlarmTransition[];
  /** Readings at each asked-for moment, by pan. */
  readings: { t: number; reading: PanReading }[];
}

export async function replayFixture(path: string | URL, everyMs: number): Promise<Replayed> {
  const calls: AlarmTransition[] = [];
  const readings: Replayed['readings'] = [];
  let state: BoilState | null = null;
  let next = 0;
  for await (const item of readRecording(createReadStream(path))) {
    if (item.kind === 'header') state = startBoil(item.header);
    if (item.kind !== 'entry' || state === null) continue;
    const gap = 'run' in item.entry && item.entry.run === 'gap';
    for (; next < item.entry.t && !gap; next += everyMs) {
      calls.push(...advance(state, next).fresh);
      for (const reading of panReadings(state, next)) readings.push({ t: next, reading });
    }
    while (next < item.entry.t) next += everyMs;
    calls.push(...applyEntry(state, item.entry, foldTools).fresh);
  }
  return { calls, readings };
}
