// What is believed of one pan: a joint normal distribution over ten numbers, and how a measurement changes it.

/** Logarithm of the sugar, kg. */
export const SUGAR = 0;
/**
 * Logarithm of the water per sugar, kg/kg. In it neither what a rise tells (which goes with one over the water) nor what
 * was counted (which goes with the water itself) is bent so much that a wrong guess could not be left again.
 */
export const WATER = 1;
/** Logarithm of the water that boils away at full flame, kg/s, as it is in the long run. */
export const LEVEL = 2;
/** What the fire does more or less than that just now, in the same logarithm; dies away by itself. */
export const FIRE = 3;
/** What the rise shows too much, °C: water point and probe together. */
export const OFFSET = 4;
/** By which share this sap's rise is more than its sugars' alone. */
export const SAP = 5;
/** How far the probe is behind the liquid, s. */
export const LAG = 6;
/** Error of the sap strengths that people typed or that were guessed, in standard deviations: one instrument, one sap. */
export const TYPED = 7;
/** What a rise shows too much just now, °C: bubbles, superheat, steps of the probe; dies away by itself. */
export const WANDER = 8;
/** What a rise shows too much that is read by hand in a pan with a probe, °C: water point and that thermometer together. */
export const HAND = 9;
export const SIZE = 10;

/** Means, and the symmetric covariance row by row. Plain arrays: a state is cloned and kept as text. */
export interface Belief {
  x: number[];
  p: number[];
}

/** Water per sugar, kg/kg. */
export const waterOf = ({ x }: { x: readonly number[] }): number => Math.exp(x[WATER]!);

/** The variance of one of the numbers, in its unit squared. */
export const variance = ({ p }: Belief, i: number): number => p[i * SIZE + i]!;

/** A weight for each number, all 0: a literal of its own, so that the engine learns to make it as plain doubles. */
export const blank = (): number[] => [0, 0, 0, 0, 0, 0, 0, 0, 0, 0];

/** Where the weights of a sum are not 0: used again, for sums are asked at every look. */
const places = new Int32Array(SIZE);

/** Variance of a weighted sum of the numbers; most weights are 0. */
export function varianceOf({ p }: Belief, weights: readonly number[]): number {
  let count = 0;
  for (let i = 0; i < SIZE; i++) if (weights[i] !== 0) places[count++] = i;
  let sum = 0;
  for (let a = 0; a < count; a++) {
    const i = places[a]!;
    let along = 0;
    for (let b = 0; b < count; b++) {
      const j = places[b]!;
      along += weights[j]! * p[j * SIZE + i]!;
    }
    sum += along * weights[i]!;
  }
  return Math.max(0, sum);
}

/** Sets the number `i` anew: mean and variance, tied to nothing else. */
export function setAlone({ x, p }: Belief, i: number, mean: number, variance: number): void {
  x[i] = mean;
  for (let j = 0; j < SIZE; j++) p[i * SIZE + j] = p[j * SIZE + i] = 0;
  p[i * SIZE + i] = variance;
}

/** Sets the number `i` anew: a share of the number `of`, and more of its own, known to a variance. */
export function setFrom(
  { x, p }: Belief,
  i: number,
  of: number,
  { share, variance: own }: { share: number; variance: number },
): void {
  x[i] = share * x[of]!;
  for (let j = 0; j < SIZE; j++) p[i * SIZE + j] = p[j * SIZE + i] = share * p[of * SIZE + j]!;
  p[i * SIZE + i] = share * share * p[of * SIZE + of]! + own;
}

/** Adds to the covariance of two of the numbers, or to the variance of one. */
export function addVariance({ p }: Belief, i: number, j: number, by: number): void {
  p[i * SIZE + j] = p[i * SIZE + j]! + by;
  if (i !== j) p[j * SIZE + i] = p[j * SIZE + i]! + by;
}

/** Adds an error that moves the numbers together by `direction` times a standard normal number. */
export function addError(belief: Belief, direction: readonly number[]): void {
  const { p } = belief;
  for (let i = 0; i < SIZE; i++) {
    const di = direction[i]!;
    if (di === 0) continue;
    for (let j = 0; j < SIZE; j++) p[i * SIZE + j] = p[i * SIZE + j]! + di * direction[j]!;
  }
}

/** Replaces row `i` of the state by a weighted sum of all (the linear part of a change): P becomes F P Fᵀ. */
export function combine(belief: Belief, i: number, weights: readonly number[]): void {
  const { p } = belief;
  const row = blank();
  for (let j = 0; j < SIZE; j++) {
    let sum = 0;
    for (let l = 0; l < SIZE; l++) if (weights[l] !== 0) sum += weights[l]! * p[l * SIZE + j]!;
    row[j] = sum;
  }
  let own = 0;
  for (let l = 0; l < SIZE; l++) if (weights[l] !== 0) own += weights[l]! * row[l]!;
  for (let j = 0; j < SIZE; j++) p[i * SIZE + j] = p[j * SIZE + i] = row[j]!;
  p[i * SIZE + i] = own;
}

/** A number that was seen: how far from what was expected, how it hangs on the state, and its own variance. */
export interface Seen {
  miss: number;
  slopes: readonly number[];
  variance: number;
}

/** How the numbers go along with what was seen: the covariance times its slopes. */
export function alongWith({ p }: Belief, slopes: readonly number[]): number[] {
  const along = blank();
  for (let j = 0; j < SIZE; j++) {
    const slope = slopes[j]!;
    if (slope === 0) continue;
    // The covariance is symmetric: a row is as good as a column.
    const row = j * SIZE;
    for (let i = 0; i < SIZE; i++) along[i] = along[i]! + slope * p[row + i]!;
  }
  return along;
}

/** The sum of the products, number by number. */
export function dot(one: readonly number[], other: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < SIZE; i++) sum += one[i]! * other[i]!;
  return sum;
}

/** Kalman's update by one number. */
export function learn(belief: Belief, seen: Seen, along = alongWith(belief, seen.slopes)): void {
  const { x, p } = belief;
  const whole = seen.variance + dot(along, seen.slopes);
  for (let i = 0; i < SIZE; i++) {
    const gain = along[i]! / whole;
    x[i] = x[i]! + gain * seen.miss;
    for (let j = i; j < SIZE; j++) {
      const value = p[i * SIZE + j]! - gain * along[j]!;
      p[i * SIZE + j] = value;
      p[j * SIZE + i] = value;
    }
  }
  keepSound(p);
}

/** Rounding must make no variance negative and no two numbers more than wholly alike. */
function keepSound(p: number[]): void {
  for (let i = 0; i < SIZE; i++) {
    const own = Math.max(p[i * SIZE + i]!, LEAST_VARIANCE);
    p[i * SIZE + i] = own;
    for (let j = 0; j < i; j++) {
      const most = own * p[j * SIZE + j]!;
      const both = p[i * SIZE + j]!;
      if (both * both > most) p[i * SIZE + j] = p[j * SIZE + i] = Math.sign(both) * Math.sqrt(most);
    }
  }
}

const LEAST_VARIANCE = 1e-12;

/** A belief that changes by itself from now on. */
export const copyBelief = ({ x, p }: Belief): Belief => ({ x: [...x], p: [...p] });
