// What time does to a belief: water leaves with the heat, the fire wanders, and what was sure becomes less so.
import type { Heat } from '../../boil/entries.ts';
import { addVariance, type Belief, FIRE, LEVEL, SIZE, SUGAR, WANDER, WATER, waterOf } from './belief.ts';

/** How a fire swings about its long-run level: standard deviation (share) and how long a swing lasts, s. */
export interface FireKind {
  swing: number;
  lastsS: number;
}

/**
 * A flame in the yard's wind swings by less than a tenth, a wood fire that is fed every ten minutes by a third from top
 * to bottom (trade and practice). Weighing several kinds side by side told no better in the bench than to take what was told.
 */
export const FIRES: Record<Heat['kind'], FireKind> = {
  electric: { swing: 0.03, lastsS: 300 },
  propane: { swing: 0.08, lastsS: 240 },
  wood: { swing: 0.16, lastsS: 400 },
  other: { swing: 0.12, lastsS: 300 },
};

/** A fire that nobody touches wanders in its long-run level: 7 % in an hour (common practice: a bottle cools, embers build up), share² a second. */
export const LEVEL_VARIANCE_PER_S = 0.07 ** 2 / 3600;
/**
 * What was is less sure than what will be "if the fire stays": hands turn a valve by a third or more every few hours and
 * do not say so, 10 % in an hour with all else (practice).
 */
export const TENDED_VARIANCE_PER_S = 0.1 ** 2 / 3600;
/** Superheat, bubbles and stirring move what a rise shows, and lose their memory in this time, s (practice). */
const WANDER_S = 150;
/** Water per sugar never falls under this: syrup that is nearly dry burns. */
export const DRY_U = 0.05;
/** In one step never more than this share of the water leaves. */
const MOST_AT_ONCE = 0.5;

/** Water per sugar that leaves each second at a flame. */
export const rateOf = ({ x }: Belief, flame: number): number => flame * Math.exp(x[LEVEL]! + x[FIRE]! - x[SUGAR]!);

/**
 * A stretch of time: at a flame (0 to 1), so many seconds, of which steam leaves in `boiling`; how much a rise wanders, °C;
 * and whether a hand on the flame decides how much leaves, or only the surface of a pan kept below its boil.
 */
export interface Passing {
  flame: number;
  seconds: number;
  boiling: number;
  wanderC: number;
  tended: boolean;
}

/**
 * So many seconds go by at a flame (0 to 1), of which water boils away during `boiling`. The share of water that leaves
 * is known as well as sugar, level and fire are.
 */
export function passTime(belief: Belief, kind: FireKind, passing: Passing): void {
  const { flame, seconds, boiling, wanderC, tended } = passing;
  const { x } = belief;
  const u = waterOf(belief);
  const gone = Math.min(rateOf(belief, flame) * boiling, MOST_AT_ONCE * (u - DRY_U));
  if (gone > 0) {
    x[WATER] = Math.log(u - gone);
    leave(belief, u, gone);
  }
  fade(belief, FIRE, kind.swing, Math.exp(-seconds / kind.lastsS));
  fade(belief, WANDER, wanderC, Math.exp(-seconds / WANDER_S));
  addVariance(belief, LEVEL, LEVEL, (tended ? TENDED_VARIANCE_PER_S : LEVEL_VARIANCE_PER_S) * seconds);
}

/** A number that dies away and is renewed by chance: an Ornstein–Uhlenbeck process of a standard deviation. */
function fade({ x, p }: Belief, i: number, sigma: number, keep: number): void {
  x[i] = x[i]! * keep;
  for (let j = 0; j < SIZE; j++) p[i * SIZE + j] = p[j * SIZE + i] = p[i * SIZE + j]! * keep;
  p[i * SIZE + i] = p[i * SIZE + i]! * keep + sigma * sigma * (1 - keep * keep);
}

/** Water that leaves is known as sugar, level and fire are: row and column of the water take their part of those of the others. */
function leave({ p }: Belief, u: number, gone: number): void {
  const part = gone / (u - gone);
  const row = WATER * SIZE;
  for (let j = 0; j < SIZE; j++) {
    const others = p[SUGAR * SIZE + j]! - p[LEVEL * SIZE + j]! - p[FIRE * SIZE + j]!;
    p[row + j] = (1 + part) * p[row + j]! + part * others;
  }
  const others = p[row + SUGAR]! - p[row + LEVEL]! - p[row + FIRE]!;
  p[row + WATER] = (1 + part) * p[row + WATER]! + part * others;
  for (let j = 0; j < SIZE; j++) p[j * SIZE + WATER] = p[row + j]!;
}
