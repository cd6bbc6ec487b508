// The pans of a boil, stepped and read: each with its own probes and surroundings.
import type { Setting } from '../pan/course-time.ts';
import { panProbeMoved, panStep } from '../pan/pan-model.ts';
import type { PanModel } from '../pan/pan-state.ts';
import { noteSigns } from '../pan/pan-signs.ts';
import { type PanOutlook, readPan, strengthNow } from '../pan/pan-reading.ts';
import type { PanReading, ProbeState } from '../pan/reading.ts';
import { type Ahead, aheadOf } from '../pan/ahead.ts';
import { lookAt } from '../pan/forecast.ts';
import { lastShown } from '../pan/temperature-track.ts';
import { noteDoubts } from './probe-doubts.ts';
import { lookAtTips } from './odd-tips.ts';
import { periodMs, probeState } from './probe-track.ts';
import { settingOf } from './settings.ts';
import { leadTimes } from './lead-times.ts';
import type { BoilState } from './state.ts';

/** Brings every pan's model to t (ms). */
export function stepPans(state: BoilState, t: number): void {
  lookAtTips(state, t);
  for (const id of state.names.pans) {
    const pan = state.pans[id]!;
    const setting = settingOf(state, id);
    panStep(pan, setting, t);
    const { leap } = pan.signs;
    noteSigns(pan.signs, pan.track, pan.course, setting);
    if (pan.signs.leap !== leap) leapt(pan, setting, t);
  }
  noteDoubts(state, t);
}

/** A tip that was put into the liquid: what it showed before was not this pan, and its first minute is its own lag. */
function leapt(pan: PanModel, setting: Setting, t: number): void {
  if (pan.signs.leap?.putIn !== true || pan.course.reachedFinish) return;
  pan.signs.boiledAt = null;
  panProbeMoved(pan, setting, t);
}

const WORST_LAST: ProbeState[] = ['ok', 'late', 'suspect', 'stuck', 'broken', 'lost'];

/** The best of a pan's probes is what the pan is read with; null for a pan that has none. */
function panProbeState(state: BoilState, pan: string, t: number): ProbeState | null {
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

/** What a pan showed last, °C, and when, ms of boil time. */
export interface LastHeat {
  pan: string;
  celsius: number;
  at: number;
}

/** Of each pan on the fire whose temperature is not known now what it showed last: by its probe or by hand, whichever is newer. */
export function lastHeats(state: BoilState, readings: readonly PanReading[]): LastHeat[] {
  return readings.flatMap(({ pan, temperature_c: celsius, stage }) => {
    if (celsius !== null || stage === 'off') return [];
    const { track, signs, byHand } = state.pans[pan]!;
    // What a tip showed on its way out of the pan was not the pan.
    const last = lastShown(track, signs.lifted?.from ?? Infinity);
    const newest = byHand !== null && byHand.at >= (last?.at ?? byHand.at) ? byHand : last;
    return newest === null ? [] : [{ pan, celsius: newest.celsius, at: newest.at }];
  });
}

/** The reading of one pan at t, ms of boil time; `id` is a pan of the boil. */
export const readingOf = (state: BoilState, id: string, t: number): PanReading =>
  outlookOf(state, id, t).reading.whole();

/** How strong each syrup pan is believed to be at t (ms), °Bx: the same as its reading says; those not known are left out. */
export function strengthsNow(state: BoilState, t: number): { pan: string; brix: number }[] {
  const strengths: { pan: string; brix: number }[] = [];
  for (const pan of state.names.pans) {
    if (state.designs[pan]!.role !== 'syrup') continue;
    const brix = strengthNow(state.pans[pan]!, settingOf(state, pan), t);
    if (brix !== null) strengths.push({ pan, brix });
  }
  return strengths;
}

/** What is said of a pan now, and what its alarms are told beside it: to be read before the state goes on. */
export function outlookOf(state: BoilState, id: string, t: number): PanOutlook {
  let period = 1000;
  for (const probe of state.panProbes[id]!) period = Math.max(period, periodMs(state.probes[probe]!));
  const lead = leadTimes(state.header, id).nearFinishLeadS;
  return readPan(state.pans[id]!, settingOf(state, id), panProbeState(state, id, t), period, lead, t);
}

/**
 * What a pan is expected to show from t (ms) on; null where nobody can tell, the pan is not there, or it still warms up:
 * the forecast speaks of a boil, and would be drawn far over where such a pan stands.
 */
export function panAhead(state: BoilState, id: string, t: number): Ahead | null {
  const pan = state.pans[id];
  if (pan === undefined || state.around[id]!.waterC === null || state.designs[id]!.ceilingC !== null) return null;
  if (readingOf(state, id, t).stage === 'warming') return null;
  return aheadOf(lookAt(pan, settingOf(state, id), t));
}
