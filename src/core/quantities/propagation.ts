// Carries values with their uncertainty through a calculation, to first order, and keeps apart what each part rests on.
import type { Measured, Origin } from './measured.ts';
import { Z80 } from './spread.ts';

/** A value that nothing is uncertain about, such as a definition. */
export const exactly = (value: number): Measured => ({ value, sigma: 0, origins: [] });

/** A value with its standard uncertainty and the one thing it rests on. */
export const measured = (value: number, sigma: number, origin: Omit<Origin, 'sigma'>): Measured => ({
  value,
  sigma,
  origins: [{ ...origin, sigma }],
});

/** A value times something exact. */
export const times = (a: Measured, factor: number): Measured => ({
  value: a.value * factor,
  sigma: a.sigma * Math.abs(factor),
  origins: a.origins.map((origin) => ({ ...origin, sigma: origin.sigma * factor })),
});

/**
 * The sum of two values. What rests on the same thing (kind, time and id alike) is wrong together and adds, or cancels,
 * as it is; all else is independent. For a difference add times(b, -1).
 */
export function plus(a: Measured, b: Measured): Measured {
  let covariance = 0;
  const origins = [...a.origins];
  for (const origin of b.origins) {
    const index = origins.findIndex((other) => sameThing(other, origin));
    const shared = origins[index];
    if (shared === undefined) origins.push(origin);
    else {
      covariance += shared.sigma * origin.sigma;
      origins[index] = { ...shared, sigma: shared.sigma + origin.sigma };
    }
  }
  const variance = a.sigma * a.sigma + b.sigma * b.sigma + 2 * covariance;
  return { value: a.value + b.value, sigma: Math.sqrt(Math.max(0, variance)), origins };
}

/** Two assumptions are two things, however alike they look. */
const sameThing = (a: Origin, b: Origin): boolean =>
  a.kind !== 'assumed' && a.kind === b.kind && a.at === b.at && a.of === b.of;

/**
 * A function of one value: f(value), with the uncertainty times the slope there. Without a slope it is taken across
 * one standard uncertainty either way (JCGM 100, 5.1.3), on one side where f ends on the other.
 * null where f is not known, or only at the value itself.
 */
export function through(a: Measured, f: (value: number) => number | null, slope?: number): Measured | null {
  return combined([a], ([value]) => (value === undefined ? null : f(value)), slope === undefined ? undefined : [slope]);
}

/** The same for several values at once, each with its own slope; what they share is treated as in plus. */
export function combined(
  parts: readonly Measured[],
  f: (values: readonly number[]) => number | null,
  slopes?: readonly number[],
): Measured | null {
  const values = parts.map(({ value }) => value);
  const middle = f(values);
  if (middle === null || !Number.isFinite(middle)) return null;
  let sum = exactly(0);
  for (const [index, part] of parts.entries()) {
    const slope = part.sigma === 0 ? 0 : (slopes?.[index] ?? slopeAcross(values, index, part.sigma, f, middle));
    if (slope === null) return null;
    sum = plus(sum, times({ ...part, value: 0 }, slope));
  }
  return { ...sum, value: middle };
}

function slopeAcross(
  values: readonly number[],
  index: number,
  sigma: number,
  f: (values: readonly number[]) => number | null,
  middle: number,
): number | null {
  const moved = (by: number): number | null => f(values.map((value, i) => (i === index ? value + by : value)));
  const [below, above] = [moved(-sigma), moved(sigma)];
  if (below === null && above === null) return null;
  const steps = (below === null ? 0 : 1) + (above === null ? 0 : 1);
  return ((above ?? middle) - (below ?? middle)) / (steps * sigma);
}

/** Values of the same thing as one, each weighed by 1/σ²; an exact one alone counts. null for none. */
export function weightedMean(values: readonly Measured[]): Measured | null {
  const exact = values.find(({ sigma }) => sigma === 0);
  if (exact !== undefined) return exact;
  const weights = values.map(({ sigma }) => 1 / (sigma * sigma));
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  if (values.length === 0) return null;
  return values.map((value, index) => times(value, (weights[index] ?? 0) / whole)).reduce(plus);
}

/** The range that holds the value eight times of ten. */
export const middle80 = ({ value, sigma }: Measured): { low: number; high: number } => ({
  low: value - Z80 * sigma,
  high: value + Z80 * sigma,
});
