// What became of each call of a boil under other choices: sooner, later, not called, called now.
import type { Call } from './calls.ts';

/** Times in ms of boil time. */
export interface CallDifference {
  pan: string | null;
  port: string | null;
  alarm: Call['alarm'];
  /** When it was raised and when it would be; null where it was not or would not be. */
  was: number | null;
  would: number | null;
  /** How much later it would come, s; negative is sooner; null where one of the two is missing. */
  later_s: number | null;
  /** "12 min sooner", "would not be called", "would be called". */
  words: string;
}

/** Calls of one alarm further apart than this are two calls (judgement), ms. */
const SAME_CALL_MS = 60 * 60_000;
/** A call that moves by less than this stays as it was, ms. */
const SAME_TIME_MS = 1000;
/** Beyond so many of one alarm they are paired in order, without looking for the best. */
const MOST_WEIGHED = 300;

/** In order of time; calls that stay as they were are left out. */
export function callDifferences(was: readonly Call[], would: readonly Call[]): CallDifference[] {
  const keyOf = ({ alarm, pan, port }: Call): string => JSON.stringify([alarm, pan, port]);
  const before = Map.groupBy(was, keyOf);
  const after = Map.groupBy(would, keyOf);
  const keys = new Set([...before.keys(), ...after.keys()]);
  const all = [...keys].flatMap((key) =>
    pairs(before.get(key) ?? [], after.get(key) ?? []).flatMap(([one, other]) => differenceOf(one, other)),
  );
  return all.sort((one, other) => (one.was ?? one.would)! - (other.was ?? other.would)!);
}

type Pair = [was: Call | null, would: Call | null];

/**
 * Calls in order, each with its like or alone, so that all in all they lie nearest: a pair costs what it lies apart, and
 * two calls that stay alone as much as the longest pair.
 */
function pairs(was: readonly Call[], would: readonly Call[]): Pair[] {
  if (was.length * would.length > MOST_WEIGHED ** 2) {
    return Array.from({ length: Math.max(was.length, would.length) }, (_, i) => [was[i] ?? null, would[i] ?? null]);
  }
  const alone = SAME_CALL_MS / 2;
  const cost = Array.from({ length: was.length + 1 }, () => new Float64Array(would.length + 1));
  const apart = (i: number, j: number): number => Math.abs(was[i]!.raised - would[j]!.raised);
  for (let i = was.length; i >= 0; i -= 1) {
    for (let j = would.length; j >= 0; j -= 1) {
      if (i === was.length || j === would.length) cost[i]![j] = alone * (was.length - i + would.length - j);
      else
        cost[i]![j] = Math.min(apart(i, j) + cost[i + 1]![j + 1]!, alone + cost[i + 1]![j]!, alone + cost[i]![j + 1]!);
    }
  }
  return cheapest(was, would, cost, apart);
}

function cheapest(
  was: readonly Call[],
  would: readonly Call[],
  cost: readonly Float64Array[],
  apart: (i: number, j: number) => number,
): Pair[] {
  const found: Pair[] = [];
  let i = 0;
  let j = 0;
  while (i < was.length || j < would.length) {
    const bothLeft = i < was.length && j < would.length;
    if (bothLeft && cost[i]![j] === apart(i, j) + cost[i + 1]![j + 1]!) found.push([was[i++]!, would[j++]!]);
    else if (j === would.length || (bothLeft && cost[i + 1]![j]! <= cost[i]![j + 1]!)) found.push([was[i++]!, null]);
    else found.push([null, would[j++]!]);
  }
  return found;
}

function differenceOf(one: Call | null, other: Call | null): CallDifference[] {
  const { pan, port, alarm } = (one ?? other)!;
  const was = one?.raised ?? null;
  const would = other?.raised ?? null;
  const laterMs = was === null || would === null ? null : would - was;
  if (laterMs !== null && Math.abs(laterMs) < SAME_TIME_MS) return [];
  const later_s = laterMs === null ? null : laterMs / 1000;
  return [{ pan, port, alarm, was, would, later_s, words: wordsOf(was, later_s) }];
}

function wordsOf(was: number | null, later_s: number | null): string {
  if (later_s === null) return was === null ? 'would be called' : 'would not be called';
  const seconds = Math.abs(later_s);
  const length = seconds < 90 ? `${Math.round(seconds)} s` : `${Math.round(seconds / 60)} min`;
  return `${length} ${later_s < 0 ? 'sooner' : 'later'}`;
}
