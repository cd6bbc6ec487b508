// Counts what went into the pans from outside: as it was noted, and what only its dip told of.
import { poursInto } from '../boil/mark-flow.ts';
import type { BoilState, KeptMark } from '../boil/state.ts';
import type { UnmarkedPour } from '../boil/unmarked-pours.ts';
import { LITRES_SHARE, UNKNOWN_LITRES } from '../pan/course-mix.ts';
import { THICKENING_BRIX } from '../pan/pan-reading.ts';
import { NOTED_AFTER_MS, NOTED_BEFORE_MS } from '../pan/pours-seen.ts';
import { litresAtDepth } from '../physics/vessel.ts';
import { Z80 } from '../quantities/spread.ts';
import type { PourCounted } from './boil-facts.ts';

/** How far that may be off, L: by as much as it is. */
const UNKNOWN_SIGMA = 3;
/** A boil is seen a little before somebody gets to type what was filled in, ms. */
const LATE_MS = 5 * 60_000;

interface Seen {
  boiled: ReadonlyMap<string, number>;
  seen: readonly UnmarkedPour[];
}

/** In order of time. A mark that was taken back, or was doubted, counts for nothing. */
export function poursCounted(state: BoilState, { boiled, seen }: Seen): PourCounted[] {
  const marks = standing(state);
  const noted = marks.flatMap((kept) => noteOf(state, kept));
  const depths = firstDepths(state, marks, boiled);
  const dips = seen.filter((pour) => stands(state, pour)).map((pour) => dipOf(pour));
  const pours = [...noted, ...depths, ...dips].sort((a, b) => a.at - b.at);
  return withStrength(pours);
}

/** Marks that count, in order of time: also an amount that is asked about and counts otherwise meanwhile. */
export const standing = (state: BoilState): KeptMark[] =>
  state.marks
    .filter(({ withdrawn, questioned, countsAs }) => !withdrawn && (!questioned || countsAs !== null))
    .toSorted((one, other) => one.at - other.at);

function noteOf(state: BoilState, { at, mark, countsAs }: KeptMark): PourCounted[] {
  if (mark.kind !== 'top-up' || state.designs[mark.pan]?.role === 'reference') return [];
  const { pan, litres, brix = null } = mark;
  if (litres === undefined)
    return [{ at, pan, brix, litres: UNKNOWN_LITRES, sigma: UNKNOWN_SIGMA, from: 'marked-only' }];
  if (countsAs !== null)
    return [{ at, pan, brix, litres: countsAs, sigma: Math.abs(litres - countsAs) / Z80, from: 'marked' }];
  return [{ at, pan, brix, litres, sigma: LITRES_SHARE * litres, from: 'marked' }];
}

/** A depth that was the first thing said of a pan, before it boiled, tells what had been filled in. */
function firstDepths(state: BoilState, marks: readonly KeptMark[], boiled: ReadonlyMap<string, number>): PourCounted[] {
  return Object.values(state.designs).flatMap(({ id, role, vessel }) => {
    const first = marks.find((kept) => tellsVolume(kept, id));
    if (role === 'reference' || vessel === null || first?.mark.kind !== 'depth') return [];
    const litres = litresAtDepth(vessel, first.mark.mm);
    if (litres === null || first.at > (boiled.get(id) ?? Infinity)) return [];
    return [{ at: first.at, pan: id, litres, sigma: LITRES_SHARE * litres, brix: null, from: 'depth' }];
  });
}

function tellsVolume({ mark }: KeptMark, pan: string): boolean {
  return poursInto(mark, pan) || (mark.kind === 'depth' && mark.pan === pan);
}

/** Pans that were seen to boil before anybody said what was in them, by name. */
export function unnotedPans(state: BoilState, boiled: ReadonlyMap<string, number>): string[] {
  const marks = standing(state);
  return [...boiled].flatMap(([pan, at]) => {
    const told = marks.some((kept) => tellsVolume(kept, pan) && kept.at <= at + LATE_MS);
    return told ? [] : [state.designs[pan]?.name ?? pan];
  });
}

/** Nobody said no to it, and nobody noted it after all. */
function stands(state: BoilState, { pan, at }: UnmarkedPour): boolean {
  const model = state.pans[pan];
  if (model === undefined) return true;
  const isNoted = model.noted.some((noted) => noted > at - NOTED_BEFORE_MS && noted < at + NOTED_AFTER_MS);
  return !isNoted && !model.refused.includes(at);
}

function dipOf({ pan, at, litres, low, high }: UnmarkedPour): PourCounted {
  return { at, pan, litres, sigma: (high - low) / (2 * Z80), brix: null, from: 'seen' };
}

/**
 * Sap of which nobody typed the strength is as strong as the last before it, or else as the first after it. What had been
 * boiled before tells nothing of sap.
 */
function withStrength(pours: readonly PourCounted[]): PourCounted[] {
  const isThick = ({ brix }: PourCounted): boolean => brix !== null && brix >= THICKENING_BRIX;
  let last = pours.find((pour) => pour.brix !== null && !isThick(pour))?.brix ?? null;
  return pours.map((pour) => {
    if (isThick(pour)) return { ...pour, boiledBefore: true };
    last = pour.brix ?? last;
    return { ...pour, brix: last };
  });
}
