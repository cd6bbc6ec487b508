// What people and probes see of a pan, as measurements of the belief: a rise, a volume, a strength, how fast it warms.
import type { SugarShares } from '../../boil/entries.ts';
import {
  addError,
  alongWith,
  type Belief,
  blank,
  dot,
  LAG,
  LEVEL,
  FIRE,
  type HAND,
  learn,
  type OFFSET,
  SAP,
  type Seen,
  SIZE,
  SUGAR,
  varianceOf,
  WANDER,
  WATER,
  waterOf,
} from './belief.ts';
import { litresOf, litresSlope, riseOfWater } from './liquid.ts';
import { DRY_U } from './predict.ts';

/** The readings of a block are on the average so much older than its end, s. */
const HALF_BLOCK_S = 2.5;
/** A miss is never counted as more standard deviations than this: what is further off is something else than chance. */
const MOST_SIGMAS = 3.5;
/** A step of the water by more than this share is taken again from where it ended: the curve bends. */
const LARGE_STEP = 0.03;
const ROUNDS = 4;

export interface RiseSeen {
  riseC: number;
  /** Of the middle of the block, °C². */
  variance: number;
  shares: SugarShares;
  pressureHpa: number;
  /** Steps of the probe that its noise does not smooth, °C; else 0. */
  stepC: number;
  /** Share of full flame, for the lag. */
  flame: number;
  /** A pan cooler than expected by more standard deviations than this hardly boils, or its tip is bare: that tells nothing. */
  coolSigmas: number;
  error: RiseError;
}

/** Which error a rise has: of the pan's own thermometer, or of another one in the hand. */
export type RiseError = typeof OFFSET | typeof HAND;

/** The rise shown at the end of a block. Gives its miss in standard deviations. */
export function seeRise(belief: Belief, seen: RiseSeen): number {
  const expected = expectRise(belief.x, seen);
  const along = alongWith(belief, expected.slopes);
  const off = seen.riseC - expected.riseC;
  // A probe that shows steps says no more than that the rise lies within one.
  const within = Math.min(seen.stepC / 2, Math.abs(off));
  const miss = off - Math.sign(off) * within;
  const spread = dot(along, expected.slopes) + seen.variance;
  if (seen.stepC > 0 && miss === 0) return 0;
  const sigmas = miss / Math.sqrt(spread);
  // Nothing but superheat makes a pan hotter than its boil, but one that hardly boils is cooler: that tells nothing.
  if (sigmas < -seen.coolSigmas) return sigmas;
  // A wild miss counts as a small one: its variance grows until it fits.
  const variance = Math.max(seen.variance, (miss / MOST_SIGMAS) ** 2 - spread + seen.variance);
  const step = (along[WATER]! * miss) / (spread - seen.variance + variance);
  const first: Seen = { miss, slopes: expected.slopes, variance };
  if (Math.abs(step) <= LARGE_STEP) learn(belief, first, along);
  else learn(belief, seenFromThere(belief, seen, first, off - miss), undefined);
  keepPossible(belief);
  return sigmas;
}

/** A large step is taken with the slopes of where it ends, found round by round: the curve bends. `within` is left out of the miss. */
function seenFromThere(belief: Belief, seen: RiseSeen, first: Seen, within: number): Seen {
  let best = first;
  let before = belief.x;
  for (let round = 0; round < ROUNDS; round++) {
    const there = steppedTo(belief, best);
    if (round > 0 && Math.abs(there[WATER]! - before[WATER]!) <= LARGE_STEP) break;
    before = there;
    const expected = expectRise(there, seen);
    let back = 0;
    for (let i = 0; i < SIZE; i++) back += expected.slopes[i]! * (belief.x[i]! - there[i]!);
    const miss = seen.riseC - within - expected.riseC - back;
    best = { miss, slopes: expected.slopes, variance: first.variance };
  }
  return best;
}

function expectRise(x: readonly number[], seen: RiseSeen): { riseC: number; slopes: number[] } {
  const u = Math.exp(x[WATER]!);
  const rate = seen.flame * Math.exp(x[LEVEL]! + x[FIRE]! - x[SUGAR]!);
  const late = x[LAG]! + HALF_BLOCK_S;
  const { riseC, slope } = riseOfWater(u + rate * late, seen.shares, seen.pressureHpa);
  const perWater = (1 + x[SAP]!) * slope;
  const slopes = blank();
  slopes[SUGAR] = -perWater * rate * late;
  slopes[WATER] = perWater * u;
  slopes[LEVEL] = perWater * rate * late;
  slopes[FIRE] = perWater * rate * late;
  slopes[seen.error] = 1;
  slopes[WANDER] = 1;
  slopes[SAP] = riseC;
  slopes[LAG] = perWater * rate;
  return { riseC: x[seen.error]! + x[WANDER]! + (1 + x[SAP]!) * riseC, slopes };
}

/** Where the means would go. */
function steppedTo(belief: Belief, seen: Seen): number[] {
  const along = alongWith(belief, seen.slopes);
  const whole = seen.variance + dot(along, seen.slopes);
  const to = belief.x.map((one, i) => one + (along[i]! / whole) * seen.miss);
  to[WATER] = Math.min(Math.log(RAIN_U), Math.max(Math.log(DRY_U), to[WATER]!));
  return to;
}

/** Thinner than any sap, 0.25 °Bx. */
const RAIN_U = 400;
/** A gram of sugar: less is no batch. */
const LEAST_LN_SUGAR = Math.log(0.001);

/** A lag or water below nothing is no pan. */
function keepPossible({ x }: Belief): void {
  x[SUGAR] = Math.max(LEAST_LN_SUGAR, x[SUGAR]!);
  x[WATER] = Math.min(Math.log(RAIN_U), Math.max(Math.log(DRY_U), x[WATER]!));
  x[LAG] = Math.max(0, x[LAG]!);
}

/** Litres at 20 °C, known to a share. Gives the miss in standard deviations; a miss over `most` of them is not believed. */
export const seeLitres = (belief: Belief, litres: number, share: number, most = Infinity): number =>
  seePlain(belief, litresSeen(belief, litres, share), most);

function litresSeen(belief: Belief, litres: number, share: number): Seen {
  const u = waterOf(belief);
  const slopes = blank();
  slopes[SUGAR] = 1;
  slopes[WATER] = litresSlope(u) * u;
  const miss = Math.log(litres / litresOf(Math.exp(belief.x[SUGAR]!), u));
  return { miss, slopes, variance: share * share };
}

/**
 * Litres at 20 °C that somebody measured, known to a share. A count that lies further off than the two are known to has left
 * something out, such as a pour that nobody noted or a flame that was turned: it gives way, along its own errors, until the
 * miss is no more than one standard deviation.
 */
export function measureLitres(belief: Belief, litres: number, share: number): void {
  const seen = litresSeen(belief, litres, share);
  const along = alongWith(belief, seen.slopes);
  const counted = dot(along, seen.slopes);
  const lacking = seen.miss ** 2 - counted - seen.variance;
  if (lacking > 0 && counted > 0) {
    const by = Math.sqrt(lacking) / counted;
    addError(
      belief,
      along.map((one) => by * one),
    );
  }
  seePlain(belief, seen, Infinity);
}

/** Water per sugar by an instrument, with its standard uncertainty. */
export function seeWater(belief: Belief, u: number, sigma: number, most = Infinity): number {
  const slopes = blank();
  slopes[WATER] = 1;
  return seePlain(belief, { miss: Math.log(u) - belief.x[WATER]!, slopes, variance: (sigma / u) ** 2 }, most);
}

/** Water boiled away a second at full flame over the whole mass, 1/s, as warming showed it, known to a share. */
export function seeHeatPerMass(belief: Belief, perSecond: number, share: number): void {
  const { x } = belief;
  const slopes = blank();
  slopes[LEVEL] = 1;
  slopes[FIRE] = 1;
  slopes[SUGAR] = -1;
  const u = waterOf(belief);
  slopes[WATER] = -u / (1 + u);
  const expected = x[LEVEL]! + x[FIRE]! - x[SUGAR]! - Math.log(1 + u);
  seePlain(belief, { miss: Math.log(perSecond) - expected, slopes, variance: share * share }, Infinity);
}

function seePlain(belief: Belief, seen: Seen, most: number): number {
  const sigmas = seen.miss / Math.sqrt(varianceOf(belief, seen.slopes) + seen.variance);
  if (Math.abs(sigmas) <= most) {
    learn(belief, seen);
    keepPossible(belief);
  }
  return sigmas;
}
