// Medians and robust slopes: statistics that a few wild readings cannot move.

/** Middle value; of an even count the mean of the two middle ones. NaN for an empty list. */
export const median = (values: readonly number[]): number => medianOfLast(values, values.length);

/** The median of the last `count` values, or of all where there are fewer. */
export function medianOfLast(values: readonly number[], count: number): number {
  const n = Math.min(count, values.length);
  if (n === 0) return NaN;
  const from = values.length - n;
  const sorted = n <= FEW ? insertionSorted(values, from) : Float64Array.from(values.slice(from)).sort();
  const middle = n >> 1;
  return n % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** Up to so many values the plainest sort is the fastest; above it a typed array sorts numbers as numbers. */
const FEW = 48;
/** A median is taken of every reading: its sorting place is used again. */
const place = new Float64Array(FEW);

function insertionSorted(values: readonly number[], from: number): Float64Array {
  for (let i = 0; from + i < values.length; i++) {
    const value = values[from + i]!;
    let j = i - 1;
    for (; j >= 0 && place[j]! > value; j--) place[j + 1] = place[j]!;
    place[j + 1] = value;
  }
  return place;
}

/**
 * Standard deviation of the noise between neighbouring values, from the median absolute difference.
 * 0.6745 is the upper quartile of the normal distribution, √2 takes the difference of two back to one.
 * A steady ramp adds its step to every difference, so the median difference is taken off first.
 * NaN below four values.
 */
export function neighbourNoise(values: readonly number[]): number {
  if (values.length < 4) return NaN;
  const steps: number[] = [];
  for (let i = 1; i < values.length; i++) steps.push(values[i]! - values[i - 1]!);
  const ramp = median(steps);
  return median(steps.map((step) => Math.abs(step - ramp))) / 0.6745 / Math.SQRT2;
}

/** Theil–Sen slope: the median of the slopes between all pairs; NaN below two distinct times. */
export function theilSenSlope(times: readonly number[], values: readonly number[]): number {
  const slopes: number[] = [];
  for (let i = 0; i < times.length; i++) {
    for (let j = i + 1; j < times.length; j++) {
      const span = times[j]! - times[i]!;
      if (span > 0) slopes.push((values[j]! - values[i]!) / span);
    }
  }
  return median(slopes);
}

/** So many median deviations from the line and a value is wild. */
const WILD_DEVIATIONS = 5;

/**
 * Slope by least squares over what lies near the Theil–Sen line: wild values cannot move it, and values that come in
 * steps (a coarse probe) do not hide a slow climb, as a median of mostly level pairs would. `noise` is the standard
 * deviation of a value, in its own unit. NaN below two distinct times.
 */
export function robustSlope(times: readonly number[], values: readonly number[], noise: number): number {
  const first = theilSenSlope(times, values);
  if (!Number.isFinite(first)) return first;
  const residuals = values.map((value, index) => value - first * (times[index]! - times[0]!));
  const level = median(residuals);
  const spread = median(residuals.map((residual) => Math.abs(residual - level)));
  const limit = WILD_DEVIATIONS * Math.max(spread, noise);
  return leastSquaresSlope(times, values, (index) => Math.abs(residuals[index]! - level) <= limit);
}

function leastSquaresSlope(
  times: readonly number[],
  values: readonly number[],
  counts: (index: number) => boolean,
): number {
  let n = 0;
  let st = 0;
  let sv = 0;
  let stt = 0;
  let stv = 0;
  for (let i = 0; i < times.length; i++) {
    if (!counts(i)) continue;
    const t = times[i]! - times[0]!;
    n += 1;
    st += t;
    sv += values[i]!;
    stt += t * t;
    stv += t * values[i]!;
  }
  return (n * stv - st * sv) / (n * stt - st * st);
}
