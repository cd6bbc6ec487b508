// When each pan of a boil was truly finished: as an instrument tells, as it was called, or as it was taken off.
import type { BoilState } from '../boil/fold.ts';
import { SYRUP_BRIX } from '../season/boil-facts.ts';
import { type PanTruth, whenTruly } from '../tuning/truth.ts';

/** What tells of it, the best first: somebody read an instrument, the finish was called, the pan was emptied. */
export type FinishedBy = 'density' | 'called' | 'taken-off';

/** `at` is boil time, ms. */
export interface Finished {
  pan: string;
  at: number;
  by: FinishedBy;
}

/** What two kinds tell of one pan within this is one finish (judgement: no batch follows another so soon), ms. */
const SAME_FINISH_MS = 45 * 60_000;

/**
 * In order of time. `state` is the boil's at its end or as far as it is read, `called` the raisings of the alarm
 * `finish`, `truths` what instruments told (see panTruths); `brixAt` is what was believed of a pan at a time (ms).
 */
export function finishesOf(
  state: BoilState,
  called: readonly { pan: string | null; raised: number }[],
  truths: readonly PanTruth[],
  brixAt: (pan: string, t: number) => number | null,
): Finished[] {
  const found: Finished[] = [];
  const add = (one: Finished): void => {
    if (!found.some(({ pan, at }) => pan === one.pan && Math.abs(at - one.at) < SAME_FINISH_MS)) found.push(one);
  };
  for (const truth of truths) {
    const design = state.designs[truth.pan];
    const at = design === undefined ? null : whenTruly(truth, design.finishBrix);
    if (at !== null) add({ pan: truth.pan, at: Math.round(at), by: 'density' });
  }
  for (const { pan, raised } of called) if (pan !== null) add({ pan, at: raised, by: 'called' });
  for (const { pan, at } of takenOff(state, brixAt)) add({ pan, at, by: 'taken-off' });
  return found.sort((one, other) => one.at - other.at);
}

/** Pans that were emptied of syrup. */
function takenOff(state: BoilState, brixAt: (pan: string, t: number) => number | null): { pan: string; at: number }[] {
  return state.marks.flatMap(({ mark, at, withdrawn, questioned }) => {
    if (withdrawn || questioned || mark.kind !== 'draw-off' || mark.all !== true) return [];
    const brix = mark.brix ?? brixAt(mark.pan, at);
    return brix !== null && brix >= SYRUP_BRIX ? [{ pan: mark.pan, at }] : [];
  });
}
