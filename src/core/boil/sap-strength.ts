// How strong the sap is that goes into a pan: as somebody measured it in this boil or for its plan, else as is usual for its kind.
import { THICKENING_BRIX } from '../pan/pan-reading.ts';
import { sapKindOf } from '../physics/sap-kinds.ts';
import type { Mark } from './entries.ts';
import type { BoilState } from './state.ts';

/** Sap of mostly glucose and fructose runs as birch does, any other as maple does. */
const usualBrix = { maple: sapKindOf('maple').typicalBrix!, birch: sapKindOf('birch').typicalBrix! };

/** Stronger than this no sap is planned, °Bx; the plan's own schema is stricter. */
const MOST_BRIX = 80;

/** What the plan that the boil began from says of its sap, °Bx; null where there is none. A recording may hold anything there. */
export function plannedBrix(header: BoilState['header']): number | null {
  const brix = (header as { plan?: { brix?: unknown } | null }).plan?.brix;
  return typeof brix === 'number' && brix > 0 && brix <= MOST_BRIX ? brix : null;
}

/** What a pour tells of the sap, °Bx; null where nobody typed it. What had been boiled before tells nothing of the sap that comes after it. */
export function sapTold(mark: Mark): number | null {
  return mark.kind === 'top-up' && mark.brix !== undefined && mark.brix < THICKENING_BRIX ? mark.brix : null;
}

/** Sap of a strength that was typed before in this boil or in its plan, else what is usual for this kind. */
export function sapBrix(state: BoilState, pan: string): { brix: number; guessed: boolean } {
  const typed = state.standing.sapBrix ?? plannedBrix(state.header);
  return typed === null ? { brix: usualFor(state, pan), guessed: true } : { brix: typed, guessed: false };
}

function usualFor(state: BoilState, pan: string): number {
  const birch = (state.designs[pan]?.shares.sucrose ?? 1) < 0.5;
  return birch ? usualBrix.birch : usualBrix.maple;
}

/** Whence the strength of a pan's sap is taken. */
export type SapFrom = 'typed' | 'planned' | 'usual';

/** What whole batches of this pan are reckoned in: sap as it was typed last for this very pan, else as planned, else as is usual, °Bx. */
export function sapOfPan(state: BoilState, pan: string): { brix: number; from: SapFrom } {
  const typed = state.standing.sapOf[pan];
  if (typed !== undefined) return { brix: typed, from: 'typed' };
  const planned = plannedBrix(state.header);
  return planned === null ? { brix: usualFor(state, pan), from: 'usual' } : { brix: planned, from: 'planned' };
}
