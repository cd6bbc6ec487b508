// A joint normal distribution over named quantities, and how one measurement of a weighted sum of them teaches all of them.

/** Means and a symmetric covariance in the order of the names; plain data. Names are unique. */
export interface JointNormal {
  names: string[];
  mean: number[];
  covariance: number[][];
}

/** A sum of named quantities: each name with what it is multiplied by. Names that are not there are not known: see holds. */
export type Sum = readonly (readonly [name: string, weight: number])[];

/** Independent quantities with their standard uncertainties. */
export function independent(quantities: readonly { name: string; mean: number; sigma: number }[]): JointNormal {
  return {
    names: quantities.map(({ name }) => name),
    mean: quantities.map(({ mean }) => mean),
    covariance: quantities.map(({ sigma }, i) => quantities.map((_, j) => (i === j ? sigma * sigma : 0))),
  };
}

/** Expected value of a sum; a name that is not there counts as 0. */
export function meanOf(joint: JointNormal, sum: Sum): number {
  return sum.reduce((total, [name, weight]) => total + weight * (joint.mean[joint.names.indexOf(name)] ?? 0), 0);
}

/** Covariance of two sums; a name that is not there counts as known exactly. */
export function covarianceOf(joint: JointNormal, one: Sum, other: Sum): number {
  const weights = weightsOf(joint, other);
  let total = 0;
  for (const [name, weight] of one) {
    const row = joint.covariance[joint.names.indexOf(name)];
    if (row !== undefined) total += weight * weighted(row, weights);
  }
  return total;
}

/** Standard uncertainty of a sum. */
export const sigmaOf = (joint: JointNormal, sum: Sum): number => Math.sqrt(Math.max(0, covarianceOf(joint, sum, sum)));

/** Covariance of every quantity with a sum, in the order of the names. */
function covarianceWith(joint: JointNormal, sum: Sum): number[] {
  const weights = weightsOf(joint, sum);
  return joint.covariance.map((row) => weighted(row, weights));
}

function weighted(row: readonly number[], weights: readonly number[]): number {
  let total = 0;
  for (let j = 0; j < row.length; j++) total += row[j]! * weights[j]!;
  return total;
}

/** The weight of every quantity in a sum, in the order of the names. */
function weightsOf(joint: JointNormal, sum: Sum): number[] {
  const weights = joint.names.map(() => 0);
  for (const [name, weight] of sum) {
    const place = joint.names.indexOf(name);
    if (place >= 0) weights[place] = weights[place]! + weight;
  }
  return weights;
}

/**
 * A sum was measured as `value` with a standard uncertainty `sigma` (over 0): the distribution after it (Kalman's
 * update for one number, exact for normal distributions). The distribution is changed in place.
 */
export function learnFrom(joint: JointNormal, sum: Sum, value: number, sigma: number): void {
  const with2 = covarianceWith(joint, sum);
  const surprise = value - meanOf(joint, sum);
  const variance = covarianceOf(joint, sum, sum) + sigma * sigma;
  joint.mean = joint.mean.map((mean, i) => mean + (with2[i]! * surprise) / variance);
  joint.covariance = joint.covariance.map((row, i) => row.map((one, j) => one - (with2[i]! * with2[j]!) / variance));
}

/** The distribution of some of the names alone, in the order asked for; names that are not there are left out. */
export function marginal(joint: JointNormal, names: readonly string[]): JointNormal {
  const places = names.map((name) => joint.names.indexOf(name)).filter((place) => place >= 0);
  return {
    names: places.map((place) => joint.names[place]!),
    mean: places.map((place) => joint.mean[place]!),
    covariance: places.map((i) => places.map((j) => joint.covariance[i]![j]!)),
  };
}

/** Independent distributions as one: nothing is known of how the names of one hang on those of another. */
export function sideBySide(blocks: readonly JointNormal[]): JointNormal {
  const names = blocks.flatMap((block) => block.names);
  const covariance = blocks.flatMap((block, place) => {
    const before = blocks.slice(0, place).reduce((sum, other) => sum + other.names.length, 0);
    const after = names.length - before - block.names.length;
    return block.covariance.map((row) => [...zeros(before), ...row, ...zeros(after)]);
  });
  return { names, mean: blocks.flatMap((block) => block.mean), covariance };
}

const zeros = (count: number): number[] => Array.from({ length: count }, () => 0);
