// Whether the numbers of one probe can be true: the same digits for too long, or leaping to and fro.
import { DAY_MS } from '../quantities/time.ts';
/** What is kept of a probe's own numbers, before any offset. */
export interface ProbeSigns {
  celsius: number | null;
  /** Since when it has been this very number, ms, how often in a row, and how fast its pan went before, °C/min. */
  sameSince: number;
  sameCount: number;
  rateBefore: number | null;
  /** The longest row of equal numbers in this span and in the one before it, and when this one began, ms. */
  longest: number;
  longestBefore: number;
  spanFrom: number;
  /** Least step between neighbours that differ, °C; 0 until some do. */
  stepC: number;
  /** Share of the neighbours that are two steps or more apart: only noise does that in a steady pan. */
  lively: number;
  /** The last change, °C, and of the last readings those that leapt away and back, as bits, the newest lowest. */
  change: number;
  leaps: number;
  doubt: ProbeDoubt | null;
  /** When it last moved on after it was stuck, ms; a day before the boil for never. */
  freedAt: number;
}

export interface ProbeDoubt {
  state: 'stuck' | 'suspect';
  why: string;
}

/** Of a probe that said nothing yet. */
export function startProbeSigns(): ProbeSigns {
  return {
    celsius: null,
    sameSince: 0,
    sameCount: 0,
    rateBefore: null,
    longest: 0,
    longestBefore: 0,
    spanFrom: 0,
    stepC: 0,
    lively: 0,
    change: 0,
    leaps: 0,
    doubt: null,
    freedAt: -DAY_MS,
  };
}

/** A leap there and back of so much in one reading each is no temperature, °C. */
const LEAP_C = 2.5;
/** Of so many readings more than a fifth that leap make it suspect; so few end that. */
const READINGS = 30;
const MANY_LEAPS = 7;
const FEW_LEAPS = 2;
const WINDOW = 2 ** READINGS - 1;
/** How long a span of the longest row lasts, ms. */
const SPAN_MS = 10 * 60_000;
/** Memory of the liveliness, in readings. */
const LIVELY_MEMORY = 200;

/** Takes a number in; t in ms. `rateCPerMin` is how fast its pan goes as far as that is known. */
export function noteNumber(signs: ProbeSigns, t: number, celsius: number, rateCPerMin: number | null): void {
  const change = signs.celsius === null ? 0 : celsius - signs.celsius;
  noteLeap(signs, change);
  if (signs.celsius === null) signs.spanFrom = t;
  if (signs.celsius !== null && Math.abs(change) < 1e-6) {
    signs.sameCount += 1;
    signs.lively -= signs.lively / LIVELY_MEMORY;
    return;
  }
  if (signs.celsius !== null) noteStep(signs, t, Math.abs(change));
  signs.celsius = celsius;
  signs.sameSince = t;
  signs.sameCount = 1;
  signs.rateBefore = rateCPerMin;
  if (signs.doubt?.state !== 'stuck') return;
  signs.doubt = null;
  signs.freedAt = t;
}

function noteStep(signs: ProbeSigns, t: number, step: number): void {
  if (signs.stepC === 0 || step < signs.stepC) signs.stepC = step;
  const isFar = step > 1.5 * signs.stepC ? 1 : 0;
  signs.lively += (isFar - signs.lively) / LIVELY_MEMORY;
  if (t - signs.spanFrom > SPAN_MS) {
    signs.longestBefore = signs.longest;
    signs.longest = 0;
    signs.spanFrom = t;
  }
  signs.longest = Math.max(signs.longest, signs.sameCount);
}

function noteLeap(signs: ProbeSigns, change: number): void {
  const back = change * signs.change < 0 && Math.min(Math.abs(change), Math.abs(signs.change)) > LEAP_C;
  signs.leaps = ((signs.leaps << 1) | (back ? 1 : 0)) & WINDOW;
  signs.change = change;
  if (signs.leaps === 0 && signs.doubt === null) return;
  const count = bitsOf(signs.leaps);
  if (signs.doubt === null && count >= MANY_LEAPS)
    signs.doubt = { state: 'suspect', why: `${count} of its last ${READINGS} numbers leap to and fro` };
  else if (signs.doubt?.state === 'suspect' && count <= FEW_LEAPS) signs.doubt = null;
}

function bitsOf(word: number): number {
  let count = 0;
  for (let left = word; left !== 0; left &= left - 1) count += 1;
  return count;
}

/** The same digits for so long at the least, ms, in so many readings, and so many times the longest row before. */
const STUCK_MS = 5 * 60_000;
const STUCK_READINGS = 60;
const STUCK_ROWS = 10;
/** The row before is known once it was watched for so long, ms. */
const WATCHED_MS = 5 * 60_000;
/** Steps finer than this no boil holds still within for minutes, °C; a coarser probe must have been lively. */
const FINE_STEP_C = 0.13;
const LIVELY = 0.04;
/** A pan that went on as it did would have moved by so many steps, for a coarse probe shows its rate badly, and so much, °C. */
const MOVED_STEPS = 6;
const MOVED_C = 0.5;
/** Slower than this a rate is no promise, °C/min. */
const SLOW_C_PER_MIN = 0.04;

/**
 * Looks for a number that stands still at t (ms). `boils`: the pan boils; `climbs`: it must be getting warmer, for it is
 * heated and well under the boil, or it thickens.
 */
export function judgeStuck(signs: ProbeSigns, t: number, pan: { boils: boolean; climbs: boolean }): void {
  const forMs = t - signs.sameSince;
  if (signs.doubt !== null || signs.celsius === null || forMs < STUCK_MS) return;
  if (!(pan.boils && isTooEven(signs)) && !(pan.climbs && shouldHaveMoved(signs, forMs))) return;
  const minutes = Math.floor(forMs / 60_000);
  signs.doubt = { state: 'stuck', why: `the same number, ${signs.celsius.toFixed(2)} °C, for ${minutes} min` };
}

/** So long and so often the same number, from a probe that seldom repeats itself, ms: too early to be said of it. */
const STILL_MS = 60_000;
const STILL_READINGS = 20;

/** It stands still where it never did: not to be read by while another tip hangs in its pan. */
export function standsStill(signs: ProbeSigns, t: number): boolean {
  return t - signs.sameSince >= STILL_MS && signs.celsius !== null && isTooEven(signs, STILL_READINGS);
}

function isTooEven(
  { sameCount, sameSince, spanFrom, longest, longestBefore, stepC, lively }: ProbeSigns,
  readings = STUCK_READINGS,
): boolean {
  const watched = longestBefore > 0 || sameSince - spanFrom >= WATCHED_MS;
  const row = Math.max(longest, longestBefore);
  const restless = (stepC > 0 && stepC <= FINE_STEP_C) || lively >= LIVELY;
  return watched && row > 0 && restless && sameCount >= Math.max(readings, STUCK_ROWS * row);
}

function shouldHaveMoved({ rateBefore, stepC }: ProbeSigns, forMs: number): boolean {
  if (rateBefore === null || rateBefore < SLOW_C_PER_MIN || stepC === 0) return false;
  return (rateBefore * forMs) / 60_000 >= Math.max(MOVED_C, MOVED_STEPS * stepC);
}
