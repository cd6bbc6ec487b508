// When each pan of a boil was truly finished: as an instrument tells, as it was called, or as it was taken off; and when one was taken off unfinished.
import type { BoilState } from '../boil/fold.ts';
import { counts } from '../boil/mark-flow.ts';
import { SYRUP_BRIX } from '../season/boil-facts.ts';
import { type PanTruth, whenTruly } from '../tuning/truth.ts';

/**
 * What tells of it, the best first: somebody read an instrument, the finish was called, the pan was emptied; or it was
 * emptied of thick sap short of its finish, which is the end of the batch and no finish.
 */
export type FinishedBy = 'density' | 'called' | 'taken-off' | 'unfinished';

/** `at` is boil time, ms. */
export interface Finished {
  pan: string;
  at: number;
  by: FinishedBy;
}

/** A pan that is taken off so far under its finish was not finished, °Bx (judgement: twice what a hydrometer is read to in a hot cup). */
const SHORT_BRIX = 3;

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
  for (const one of takenOff(state, brixAt)) add(one);
  return found.sort((one, other) => one.at - other.at);
}

/** Pans that were emptied of syrup, or of what was to become it. */
function takenOff(state: BoilState, brixAt: (pan: string, t: number) => number | null): Finished[] {
  return state.marks.filter(counts).flatMap(({ mark, at }): Finished[] => {
    if (mark.kind !== 'draw-off' || mark.all !== true) return [];
    const brix = mark.brix ?? brixAt(mark.pan, at);
    if (brix === null || brix < SYRUP_BRIX) return [];
    const finishBrix = state.designs[mark.pan]?.finishBrix ?? SYRUP_BRIX;
    return [{ pan: mark.pan, at, by: brix < finishBrix - SHORT_BRIX ? 'unfinished' : 'taken-off' }];
  });
}
