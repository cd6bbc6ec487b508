// What the belief is told of water point, probe and sap from outside, and how that is put in anew without losing what the curve taught.
import { addVariance, type Belief, OFFSET, SAP, SIZE, WATER } from './belief.ts';

/** Errors of a rise as they are known outside: an offset, °C, and a share of the rise, jointly normal. */
export interface Base {
  sapShare: number;
  offsetVariance: number;
  sapVariance: number;
  covariance: number;
}

/** Two numbers with their precision: what was learnt in logarithms of likelihood. */
interface Pair {
  mean: [number, number];
  /** Upper left, off the diagonal, lower right. */
  matrix: [number, number, number];
}

/** Nothing is surer than this, so that every matrix has an inverse. */
const LEAST_OFFSET_VARIANCE = 1e-6;
const LEAST_SAP_VARIANCE = 1e-7;

function inverse([a, b, c]: Pair['matrix']): Pair['matrix'] {
  const det = a * c - b * b;
  return [c / det, -b / det, a / det];
}

const times = ([a, b, c]: Pair['matrix'], [x, y]: [number, number]): [number, number] => [a * x + b * y, b * x + c * y];

function matrixOf({ offsetVariance, sapVariance, covariance }: Base): Pair['matrix'] {
  const a = Math.max(LEAST_OFFSET_VARIANCE, offsetVariance);
  const c = Math.max(LEAST_SAP_VARIANCE, sapVariance);
  const most = 0.999 * Math.sqrt(a * c);
  return [a, Math.min(most, Math.max(-most, covariance)), c];
}

/**
 * Water point, probe or sap are known anew. `shiftC` is by how much the rise now reads more than it would have. What the
 * curve itself taught stays: the old knowledge is taken out of what is believed and the new put in, and everything that
 * hangs on it moves along.
 */
export function changeBase(belief: Belief, from: Base, to: Base, shiftC: number): void {
  const { x, p } = belief;
  x[OFFSET] = x[OFFSET]! + shiftC;
  const believed: Pair = {
    mean: [x[OFFSET], x[SAP]!],
    matrix: [p[OFFSET * SIZE + OFFSET]!, p[OFFSET * SIZE + SAP]!, p[SAP * SIZE + SAP]!],
  };
  const next = renewed(believed, { mean: [shiftC, from.sapShare], matrix: matrixOf(from) }, to);
  if (isStrange(believed, to)) addVariance(belief, WATER, WATER, OPENS_SHARE ** 2);
  moveAlong(belief, believed, next);
}

/** So many standard deviations apart, and what the curve seemed to teach was something else. */
const SURPRISE = 2.5;

const OPENS_SHARE = 0.15;

function isStrange(believed: Pair, to: Base): boolean {
  return believed.mean[0] ** 2 > SURPRISE ** 2 * (believed.matrix[0] + matrixOf(to)[0]);
}

function renewed(believed: Pair, before: Pair, to: Base): Pair {
  const now: Pair = { mean: [0, to.sapShare], matrix: matrixOf(to) };
  const sure = inverse(believed.matrix);
  const was = inverse(before.matrix);
  const taught: Pair['matrix'] = [sure[0] - was[0], sure[1] - was[1], sure[2] - was[2]];
  // Time makes an offset less sure than it was: then the curve has taught nothing that counts.
  const counts =
    !isStrange(believed, to) && taught[0] > 0 && taught[2] > 0 && taught[0] * taught[2] > taught[1] * taught[1];
  if (!counts) return now;
  const prior = inverse(now.matrix);
  const matrix = inverse([prior[0] + taught[0], prior[1] + taught[1], prior[2] + taught[2]]);
  const [a, b] = [times(sure, believed.mean), times(was, before.mean)];
  const c = times(prior, now.mean);
  return { mean: times(matrix, [a[0] - b[0] + c[0], a[1] - b[1] + c[1]]), matrix };
}

/** Gives OFFSET and SAP another joint distribution, and keeps how all else hangs on them. */
function moveAlong({ x, p }: Belief, from: Pair, to: Pair): void {
  const inv = inverse(from.matrix);
  const by: [number, number] = [to.mean[0] - from.mean[0], to.mean[1] - from.mean[1]];
  const change = to.matrix.map((one, i) => one - from.matrix[i]!) as Pair['matrix'];
  const gains: [number, number][] = [];
  for (let i = 0; i < SIZE; i++) gains.push(times(inv, [p[i * SIZE + OFFSET]!, p[i * SIZE + SAP]!]));
  for (let i = 0; i < SIZE; i++) {
    const [g, h] = gains[i]!;
    x[i] = x[i]! + g * by[0] + h * by[1];
    for (let j = 0; j < SIZE; j++) {
      const [m, n] = gains[j]!;
      p[i * SIZE + j] = p[i * SIZE + j]! + g * (change[0] * m + change[1] * n) + h * (change[1] * m + change[2] * n);
    }
  }
}
