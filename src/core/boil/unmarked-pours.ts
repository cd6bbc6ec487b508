// Pours that nobody noted: what is said of them, and how a person's yes or no takes the place of what was seen.
import type { Added, SeenPour } from '../pan/course.ts';
import type { PanModel } from '../pan/pan-state.ts';
import { NOTED_AFTER_MS, NOTED_BEFORE_MS } from '../pan/pours-seen.ts';
import { letHappen, runAgain, takeOutOfPast } from '../pan/timeline.ts';
import { Z80 } from '../quantities/spread.ts';
import { boilingOf } from './settings.ts';
import type { BoilState } from './state.ts';

/** A pour as its dip told of it, which nobody noted or said no to: ms, litres at 20 °C with their middle 80 %. */
export interface UnmarkedPour {
  pan: string;
  at: number;
  litres: number;
  low: number;
  high: number;
}

/**
 * Pours that were seen by their dip and that nobody noted: when (ms of boil time), litres at 20 °C and their middle
 * 80 %.
 */
export function unmarkedPours(state: BoilState): UnmarkedPour[] {
  return Object.entries(state.pans).flatMap(([pan, model]) =>
    openPours(model).map(({ at, litres, sigma }) => {
      const factor = Math.exp((Z80 * sigma) / litres);
      return { pan, at, litres, low: litres / factor, high: litres * factor };
    }),
  );
}

/** Those that count and that nobody answered. A course that is run again from long ago has forgotten the answer. */
const openPours = ({ course, noted, refused }: PanModel): SeenPour[] =>
  course.seen.filter((seen) => seen.taken && !refused.includes(seen.at) && !noted.some((at) => isSame(seen.at, at)));

/** A pour that was noted at one time is the one that was seen at another. */
const isSame = (seenAt: number, notedAt: number): boolean =>
  notedAt > seenAt - NOTED_BEFORE_MS && notedAt < seenAt + NOTED_AFTER_MS;

/** A pour is noted: it takes the place of the one that was seen at that time. Call before it happens. */
export function pouredNoted(state: BoilState, id: string, at: number): void {
  const pan = state.pans[id]!;
  const seen = openPours(pan).filter((one) => isSame(one.at, at));
  pan.noted.push(at);
  for (const one of seen) countNoMore(state, id, one);
}

/** Its note is taken back: what was seen at that time stands again. Call after what the note did is taken back. */
export function pourNotNoted(state: BoilState, id: string, at: number): void {
  const pan = state.pans[id];
  const place = pan?.noted.indexOf(at) ?? -1;
  if (pan === undefined || place < 0) return;
  pan.noted.splice(place, 1);
  const stands = pan.course.seen.filter((one) => isSame(one.at, at));
  for (const one of stands) if (!isInReach(pan, one.at)) countAgain(state, id, one);
  runAgain(boilingOf(state), [id], at - NOTED_AFTER_MS);
}

/** A pour that was seen did not happen: the one nearest in time. Gives its time, ms; null where none was seen. */
export function refusePour(state: BoilState, id: string, at: number): number | null {
  const pan = state.pans[id];
  const standing = pan === undefined ? [] : openPours(pan);
  if (pan === undefined || standing.length === 0) return null;
  const nearest = standing.reduce((one, other) => (Math.abs(other.at - at) <= Math.abs(one.at - at) ? other : one));
  pan.refused.push(nearest.at);
  countNoMore(state, id, nearest);
  return nearest.at;
}

/** Somebody said no to a pour and now takes that back. */
export function refuseNoMore(state: BoilState, id: string, at: number): void {
  const pan = state.pans[id];
  if (pan === undefined) return;
  pan.refused = pan.refused.filter((one) => one !== at);
  const seen = pan.course.seen.find((one) => one.at === at);
  if (seen !== undefined && !isInReach(pan, at)) countAgain(state, id, seen);
  else runAgain(boilingOf(state), [id], at);
}

/** It is young enough to be run again as if it had never been taken for a pour. */
const isInReach = ({ past }: PanModel, at: number): boolean => (past.stood[0]?.t ?? Infinity) < at;

const keyOf = (at: number): string => `seen ${at}`;

function countNoMore(state: BoilState, id: string, { at, added }: SeenPour): void {
  if (isInReach(state.pans[id]!, at)) runAgain(boilingOf(state), [id], at);
  else if (added !== null) takeOut(state, id, keyOf(at), added);
}

function countAgain(state: BoilState, id: string, { at, added }: SeenPour): void {
  if (takeOutOfPast(boilingOf(state), keyOf(at)) || added === null) return;
  takeOut(state, id, '', { sugarKg: -added.sugarKg, waterKg: -added.waterKg });
}

function takeOut(state: BoilState, id: string, key: string, added: Added): void {
  const one = { t: state.pans[id]!.course.t, order: state.marks.length, what: 'undo', key, added } as const;
  letHappen(boilingOf(state), [{ pan: id, one }]);
}
