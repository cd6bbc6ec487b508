// What a pan's own measurements may be left out for: what is known contradicts it, so it is asked about, and counts when it is said again.
import type { Happening } from '../pan/course.ts';
import { runAgain } from '../pan/timeline.ts';
import { readInstrument } from '../physics/instruments.ts';
import { AGAIN_WITHIN_MS, ONE_PRESS_MS } from './questioned.ts';
import type { Mark } from './entries.ts';
import { boilingOf } from './settings.ts';
import type { BoilState, KeptMark } from './state.ts';

/** Two of these are the same measurement: °C, °Bx, and a depth by what a stick in a boil shows, mm and share. */
const ALIKE = 1.5;
const ALIKE_MM = 5;
const ALIKE_SHARE = 0.1;

/** A temperature that is typed a second time at once is meant: it may be a pan about to burn. Two presses of one button come sooner, ms. */
const RETYPED_MS = 2000;

/** Whether a measurement counts whatever is known: its person stands by it, or says the same as one that was asked about. */
export function isMeant(state: BoilState, kept: KeptMark): boolean {
  if (kept.mark.sure === true) return true;
  return state.marks.some((other) => other !== kept && !other.withdrawn && saysTheSame(state, other, kept));
}

function saysTheSame(state: BoilState, one: KeptMark, other: KeptMark): boolean {
  const apart = Math.abs(one.at - other.at);
  if (apart < (one.mark.kind === 'reading' ? RETYPED_MS : ONE_PRESS_MS) || apart > AGAIN_WITHIN_MS) return false;
  // Of what was believed the first time nothing is asked again.
  if (one.mark.kind !== 'reading' && !one.questioned) return false;
  return isAlike(state, one.mark, other.mark);
}

function isAlike(state: BoilState, one: Mark, other: Mark): boolean {
  if (!('pan' in one && 'pan' in other) || one.pan !== other.pan) return false;
  if (one.kind === 'reading' && other.kind === 'reading') return Math.abs(one.celsius - other.celsius) <= ALIKE;
  if (one.kind === 'depth' && other.kind === 'depth')
    return Math.abs(one.mm - other.mm) <= ALIKE_MM + ALIKE_SHARE * other.mm;
  if (one.kind !== 'density' || other.kind !== 'density') return false;
  const design = state.designs[one.pan];
  const brix = [one, other].map((mark) => (design === undefined ? null : readInstrument(mark, design.shares))?.brix);
  return brix[0] !== undefined && brix[1] !== undefined && Math.abs(brix[0] - brix[1]) <= ALIKE;
}

/**
 * Call after each mark and header: what probe and sap leave out, their pan leaves out as well, and whether a pan leaves
 * something out may change when its last half hour is run again with what was noted late.
 */
export function lookAtLeftOut(state: BoilState): void {
  const boiling = boilingOf(state);
  for (const id of state.names.pans) {
    const changed = measured(state, id).filter(({ one, kept }) => one.what === 'strength' && one.wild !== kept.wild);
    for (const { one, kept } of changed) if (one.what === 'strength') one.wild = kept.wild;
    if (changed.length > 0) runAgain(boiling, [id], Math.min(...changed.map(({ one }) => one.t)));
  }
  for (const id of state.names.pans) {
    for (const { one, kept } of measured(state, id)) {
      kept.doubted = one.doubted;
      kept.questioned = kept.doubted || kept.wild;
      if (one.what === 'volume') {
        kept.seenAs = one.doubted ? null : one.counted;
        kept.countsAs = one.doubted ? null : one.taken;
        kept.swell = one.swell;
      }
    }
  }
}

type Measured = Extract<Happening, { what: 'volume' | 'strength' }>;

/** What was measured of a pan in the last half hour, with the marks that said so. */
function measured(state: BoilState, id: string): { one: Measured; kept: KeptMark }[] {
  return state.pans[id]!.past.happened.flatMap((one) => {
    if (one.what !== 'volume' && one.what !== 'strength') return [];
    const kept = state.marks[Number(one.key)];
    return kept === undefined ? [] : [{ one, kept }];
  });
}

/** What is said of a mark that was left out, and how it counts all the same. */
export const leftOut = (doubt: string): string => `${doubt} It was left out; the same again counts.`;
