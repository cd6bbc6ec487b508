// How strong the sap is that goes into a pan: as somebody measured it in this boil, else as is usual for its kind.
import { sapKindOf } from '../physics/sap-kinds.ts';
import type { BoilState } from './state.ts';

/** Sap of mostly glucose and fructose runs as birch does, any other as maple does. */
const usualBrix = { maple: sapKindOf('maple').typicalBrix!, birch: sapKindOf('birch').typicalBrix! };

/** Sap of a strength that was typed before in this boil, else what is usual for this kind. */
export function sapBrix(state: BoilState, pan: string): { brix: number; guessed: boolean } {
  const typed = state.standing.sapBrix;
  if (typed !== null) return { brix: typed, guessed: false };
  const birch = (state.designs[pan]?.shares.sucrose ?? 1) < 0.5;
  return { brix: birch ? usualBrix.birch : usualBrix.maple, guessed: true };
}
