// Medians and robust slopes: statistics that a few wild readings cannot move.

/** Middle value; of an even count the mean of the two middle ones. NaN for an empty list. */
export const median = (values: readonly number[]): number => medianOfLast(values, values.length);

/** The median of the last `count` values, or of all where there are fewer. */
export function medianOfLast(values: readonly number[], count: number): number {
  const n = Math.min(count, values.length);
  if (n === 0) return NaN;
  const from = values.length - n;
  if (n > MOST) return middleOf(Float64Array.from(values.slice(from)), n);
  for (let i = 0; i < n; i++) place[i] = values[from + i]!;
  return middleOf(place, n);
}

/** So many values have room in the place that is used again: a median is taken of every reading. */
const MOST = 64;
const place = new Float64Array(MOST);
const residualPlace = new Float64Array(MOST);
/** Up to so many values the plainest sort is the fastest; of more only the middle is looked for. */
const FEW = 12;

/** The median of the first `n` values, at least one; they are put in another order. */
function middleOf(values: Float64Array, n: number): number {
  const middle = n >> 1;
  if (n <= FEW) sortFew(values, n);
  else select(values, middle, n);
  if (n % 2 === 1) return values[middle]!;
  let below = values[middle - 1]!;
  if (n > FEW) for (let i = 0; i < middle; i++) below = Math.max(below, values[i]!);
  return (below + values[middle]!) / 2;
}

function sortFew(values: Float64Array, n: number): void {
  for (let i = 1; i < n; i++) {
    const value = values[i]!;
    let j = i - 1;
    for (; j >= 0 && values[j]! > value; j--) values[j + 1] = values[j]!;
    values[j + 1] = value;
  }
}

/** Hoare's selection: value number `k` comes to its place, none before it is greater and none behind it less. */
function select(values: Float64Array, k: number, n: number): void {
  let low = 0;
  let high = n - 1;
  while (low < high) {
    const pivot = values[k]!;
    let i = low;
    let j = high;
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i > j) break;
      const value = values[i]!;
      values[i++] = values[j]!;
      values[j--] = value;
    }
    if (j < k) low = i;
    if (i > k) high = j;
  }
}

/**
 * Standard deviation of the noise between neighbouring values, from the median absolute difference.
 * 0.6745 is the upper quartile of the normal distribution, √2 takes the difference of two back to one.
 * A steady ramp adds its step to every difference, so the median difference is taken off first.
 * NaN below four values.
 */
export function neighbourNoise(values: readonly number[]): number {
  if (values.length < 4) return NaN;
  const count = values.length - 1;
  const steps = count <= MOST ? place : new Float64Array(count);
  for (let i = 0; i < count; i++) steps[i] = values[i + 1]! - values[i]!;
  const ramp = middleOf(steps, count);
  for (let i = 0; i < count; i++) steps[i] = Math.abs(steps[i]! - ramp);
  return middleOf(steps, count) / 0.6745 / Math.SQRT2;
}

/** Theil–Sen slope: the median of the slopes between all pairs; NaN below two distinct times. */
export function theilSenSlope(times: readonly number[], values: readonly number[]): number {
  const n = times.length;
  const pairs = (n * (n - 1)) / 2;
  const slopes = pairs <= MOST ? place : new Float64Array(pairs);
  let count = 0;
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      const span = times[j]! - times[i]!;
      if (span > 0) slopes[count++] = (values[j]! - values[i]!) / span;
    }
  }
  return count === 0 ? NaN : middleOf(slopes, count);
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
  const count = values.length;
  const residuals = count <= MOST ? residualPlace : new Float64Array(count);
  for (let i = 0; i < count; i++) residuals[i] = values[i]! - first * (times[i]! - times[0]!);
  const sorted = count <= MOST ? place : new Float64Array(count);
  for (let i = 0; i < count; i++) sorted[i] = residuals[i]!;
  const level = middleOf(sorted, count);
  for (let i = 0; i < count; i++) sorted[i] = Math.abs(residuals[i]! - level);
  const spread = middleOf(sorted, count);
  const limit = WILD_DEVIATIONS * Math.max(spread, noise);
  let n = 0;
  let st = 0;
  let sv = 0;
  let stt = 0;
  let stv = 0;
  for (let i = 0; i < times.length; i++) {
    if (Math.abs(residuals[i]! - level) > limit) continue;
    const t = times[i]! - times[0]!;
    n += 1;
    st += t;
    sv += values[i]!;
    stt += t * t;
    stv += t * values[i]!;
  }
  return (n * stv - st * sv) / (n * stt - st * st);
}
