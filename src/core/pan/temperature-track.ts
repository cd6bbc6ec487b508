// The temperature of one pan over time: wild readings out, noise known, blocks of five seconds kept for rate and fit.
import { medianOfLast, neighbourNoise, robustSlope } from './robust-statistics.ts';

/** A block's length, ms: short beside the last minutes of a boil, long beside boiling noise. */
export const BLOCK_MS = 5000;

/** How far back the blocks reach: the longest rate window and a look at the curve before a dip, ms. */
const KEEP_MS = 12 * 60_000;

/** No reading for this long, ms, and the temperature is no longer known. */
const STALE_FACTOR = 5;

export interface TemperatureTrack {
  /** The last few accepted readings, newest last. */
  times: number[];
  values: number[];
  blockTimes: number[];
  blockValues: number[];
  /** Readings of the block that is filling. */
  open: number[];
  openStart: number;
  /** A reading far from the others that waits to be borne out, °C. */
  wild: number | null;
  /** Standard deviation of a single reading, °C; null until it is known. */
  noise: number | null;
  /** Least step between readings that differ, °C: the probe's resolution; 0 until some differ. */
  stepC: number;
  /** Blocks since the noise was last estimated. */
  sinceNoise: number;
}

/** No reading has come yet. */
export function startTrack(): TemperatureTrack {
  return {
    times: [],
    values: [],
    blockTimes: [],
    blockValues: [],
    open: [],
    openStart: 0,
    wild: null,
    noise: null,
    stepC: 0,
    sinceNoise: 0,
  };
}

/** No probe in a boil is quieter than this, °C. */
const LEAST_NOISE_C = 0.03;
/** A coarse probe repeats its digits and looks quieter than it is: the spread of a rounding is 0.29 of its step. */
const STEP_NOISE = 0.29;

/** The least step between neighbouring values that differ: the probe's resolution, or less; 0 when none differ. */
function stepOf(values: readonly number[]): number {
  let least = Infinity;
  for (let i = 1; i < values.length; i++) {
    const step = Math.abs(values[i]! - values[i - 1]!);
    if (step > 1e-6 && step < least) least = step;
  }
  return Number.isFinite(least) ? least : 0;
}

const RECENT = 31;

/** A reading this far from the last few waits for the next one to bear it out, °C, or so many times the noise. */
const WILD_C = 2;
const WILD_NOISES = 8;
/** The next one bears it out when it lies within this, °C, and this share of the jump. */
const ALIKE_C = 1.5;
const ALIKE_SHARE = 0.25;

/**
 * Takes a reading in; t in ms, not before the last one. A lone wild reading (a spike, a glitch of the bus) is left out;
 * a real jump is borne out by the reading after it and costs one period.
 */
export function hearReading(track: TemperatureTrack, t: number, celsius: number): void {
  const usual = medianOfLast(track.values, 5);
  const jump = celsius - usual;
  const wild = track.values.length >= 5 && Math.abs(jump) > Math.max(WILD_C, WILD_NOISES * (track.noise ?? 0));
  const alike = track.wild !== null && Math.abs(celsius - track.wild) <= ALIKE_C + ALIKE_SHARE * Math.abs(jump);
  track.wild = wild ? celsius : null;
  if (wild && !alike) return;
  takeReading(track, t, celsius);
}

function takeReading(track: TemperatureTrack, t: number, celsius: number): void {
  track.times.push(t);
  track.values.push(celsius);
  if (track.times.length > 2 * RECENT) {
    track.times.splice(0, track.times.length - RECENT);
    track.values.splice(0, track.values.length - RECENT);
  }
  const start = t - (t % BLOCK_MS);
  if (track.open.length === 0) track.openStart = start;
  track.open.push(celsius);
}

/**
 * Closes the block that ended at or before t, if it holds a reading; gives its middle value or null.
 * The block's readings are joined by the readings just before them where there are fewer than three,
 * so that one wild reading never makes a block.
 */
export function closeBlock(track: TemperatureTrack, t: number): { t: number; celsius: number } | null {
  if (track.open.length === 0 || t < track.openStart + BLOCK_MS) return null;
  const count = Math.max(3, track.open.length);
  const celsius = medianOfLast(track.values, count);
  const middle = track.openStart + BLOCK_MS / 2;
  track.open = [];
  track.blockTimes.push(middle);
  track.blockValues.push(celsius);
  dropOld(track, t);
  if (++track.sinceNoise >= 6 || track.noise === null) {
    const recent = track.values.slice(-RECENT);
    const noise = neighbourNoise(recent);
    const step = stepOf(recent);
    if (step > 0 && (track.stepC === 0 || step < track.stepC)) track.stepC = step;
    if (Number.isFinite(noise)) track.noise = Math.max(noise, LEAST_NOISE_C, STEP_NOISE * track.stepC);
    track.sinceNoise = 0;
  }
  return { t: middle, celsius };
}

function dropOld(track: TemperatureTrack, t: number): void {
  let drop = 0;
  while (drop < track.blockTimes.length && track.blockTimes[drop]! < t - KEEP_MS) drop++;
  if (drop > 30) {
    track.blockTimes.splice(0, drop);
    track.blockValues.splice(0, drop);
  }
}

/** What is shown as the temperature now is the middle of so much, ms, or of three readings. */
const NOW_MS = 2000;

/** The middle of the readings of the last few seconds, °C, or null when the newest is older than five periods. */
export function temperatureNow(track: TemperatureTrack, t: number, periodMs: number): number | null {
  const newest = track.times.at(-1);
  if (newest === undefined || t - newest > Math.max(STALE_FACTOR * periodMs, 2000)) return null;
  const span = Math.max(NOW_MS, 3 * periodMs);
  let from = track.times.length - 1;
  while (from > 0 && track.times[from - 1]! > newest - span) from--;
  from = Math.min(from, Math.max(0, track.times.length - 3));
  return medianOfLast(track.values, track.values.length - from);
}

/** The last block up to `until`, ms: its middle value, °C, and when; null where nothing was read till then. */
export function lastShown(
  { blockTimes, blockValues }: TemperatureTrack,
  until: number,
): { celsius: number; at: number } | null {
  const place = blockTimes.findLastIndex((at) => at <= until);
  return place < 0 ? null : { celsius: blockValues[place]!, at: blockTimes[place]! };
}

/** What was read from a moment on, ms, was not this pan. */
export function forgetShownFrom({ blockTimes, blockValues }: TemperatureTrack, from: number): void {
  const stays = blockTimes.findLastIndex((at) => at <= from) + 1;
  blockTimes.splice(stays);
  blockValues.splice(stays);
}

/** Rate windows, s: the shortest one whose slope is sure to 0.02 °C/min is used, else the longest. */
const WINDOWS_S = [60, 120, 240, 480];
const SURE_C_PER_MIN = 0.02;

/**
 * Robust rate of rise, °C/min, over a window chosen by the noise; null while there are fewer than six blocks.
 * `since` (ms) leaves out what was before a pour.
 */
export function rateOfRise(track: TemperatureTrack, t: number, since: number): number | null {
  const noise = track.noise ?? 0.1;
  let from = track.blockTimes.length;
  for (const window of WINDOWS_S) {
    from = firstAfter(track.blockTimes, from, Math.max(since, t - window * 1000));
    const count = track.blockTimes.length - from;
    if (count < 6) continue;
    const minutes = (track.blockTimes.at(-1)! - track.blockTimes[from]!) / 60_000;
    // Standard error of a straight line through n evenly spaced points: σ √12 / (T √n).
    const error = (noise * Math.sqrt(12)) / (Math.max(minutes, 0.1) * Math.sqrt(count));
    if (error > SURE_C_PER_MIN && window !== WINDOWS_S.at(-1)) continue;
    return thinnedSlope(track, from, noise) * 60_000;
  }
  return null;
}

/** At most 10 points go into the pairs, the newest among them, so that the cost of a block stays flat. */
function thinnedSlope({ blockTimes, blockValues }: TemperatureTrack, from: number, noise: number): number {
  const last = blockTimes.length - 1;
  const step = Math.max(1, Math.ceil((last + 1 - from) / 10));
  const times: number[] = [];
  const values: number[] = [];
  for (let i = from + ((last - from) % step); i <= last; i += step) {
    times.push(blockTimes[i]!);
    values.push(blockValues[i]!);
  }
  return robustSlope(times, values, noise);
}

/** The first that is not before t (ms), looked for from `index` backwards. */
function firstAfter(times: readonly number[], index: number, t: number): number {
  while (index > 0 && times[index - 1]! >= t) index--;
  return index;
}

/** Forgets all but the block values: after a gap nothing recent is known. */
export function forgetRecent(track: TemperatureTrack): void {
  track.times = [];
  track.values = [];
  track.open = [];
  track.wild = null;
}
