// Amounts with how sure they are, on the way to a figure: sums, and what follows from several of them.
import { combined, measured } from '../quantities/propagation.ts';
import { Z80 } from '../quantities/spread.ts';
import type { Figure, FigureFrom } from './figures.ts';

/** `sigma` is the standard uncertainty in the unit of the value; 0 for what was counted. */
export interface Known {
  value: number;
  sigma: number;
  from: FigureFrom;
}

/** A value with its standard uncertainty, in the unit of the value. */
export const known = (value: number, sigma: number, from: FigureFrom): Known => ({ value, sigma, from });

/** Independent of each other. 0 of none. */
export function sumOf(parts: readonly { value: number; sigma: number }[], from: FigureFrom): Known {
  const value = parts.reduce((sum, part) => sum + part.value, 0);
  return { value, sigma: Math.hypot(...parts.map(({ sigma }) => sigma)), from };
}

/**
 * What follows from independent amounts, to first order. null where one of them is not known, or the function is not
 * defined there.
 */
export function follows(
  parts: readonly (Known | null)[],
  f: (...values: number[]) => number | null,
  from: FigureFrom = 'worked-out',
): Known | null {
  const all = parts.filter((part) => part !== null);
  if (all.length < parts.length) return null;
  const independent = all.map(({ value, sigma }) => measured(value, sigma, { kind: 'assumed', at: null }));
  const result = combined(independent, (values) => f(...values));
  return result === null ? null : { value: result.value, sigma: result.sigma, from };
}

/** A quotient; null where it would be of nothing. */
export const quotient = (above: Known | null, below: Known | null): Known | null =>
  follows([above, below], (a, b) => (b! > 0 ? a! / b! : null));

/** The middle 80 %. Amounts are never less than nothing; a difference (`signed`) may be. */
export function figureOf(amount: Known | null, signed = false): Figure | null {
  if (amount === null || !Number.isFinite(amount.value)) return null;
  const { value, sigma, from } = amount;
  if (!Number.isFinite(sigma)) return { value, low: null, high: null, from };
  const low = value - Z80 * sigma;
  return { value, low: signed ? low : Math.max(Math.min(0, value), low), high: value + Z80 * sigma, from };
}
