// The pans of a boil, stepped and read: each with its own probes and surroundings.
import { panStep } from '../pan/pan-model.ts';
import { readPan } from '../pan/pan-reading.ts';
import type { PanReading, ProbeState } from '../pan/reading.ts';
import { periodMs, probeState } from './probe-track.ts';
import { type BoilState, leadTimes } from './state.ts';

/** Brings every pan's model to t (ms). */
export function stepPans(state: BoilState, t: number): void {
  for (const id in state.pans) panStep(state.pans[id]!, state.designs[id]!, state.around[id]!, t);
}

const WORST_LAST: ProbeState[] = ['ok', 'late', 'suspect', 'stuck', 'broken', 'lost'];

/** The best of a pan's probes is what the pan is read with; null for a pan that has none. */
export function panProbeState(state: BoilState, pan: string, t: number): ProbeState | null {
  let best: ProbeState | null = null;
  for (const probe of state.panProbes[pan]!) {
    const one = probeState(state.probes[probe]!, t);
    if (best === null || WORST_LAST.indexOf(one) < WORST_LAST.indexOf(best)) best = one;
  }
  return best;
}

/** One reading for each syrup pan at t (ms), in the header's order. */
export function panReadings(state: BoilState, t: number): PanReading[] {
  const readings: PanReading[] = [];
  for (const id in state.pans) {
    if (state.designs[id]!.role === 'syrup') readings.push(readingOf(state, id, t));
  }
  return readings;
}

export function readingOf(state: BoilState, id: string, t: number): PanReading {
  const period = Math.max(...state.panProbes[id]!.map((probe) => periodMs(state.probes[probe]!)), 1000);
  return readPan(
    state.pans[id]!,
    state.designs[id]!,
    state.around[id]!,
    panProbeState(state, id, t),
    period,
    leadTimes(state.header).nearFinishLeadS,
    t,
  );
}
