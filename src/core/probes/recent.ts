// The last minutes of one probe's numbers, and what shows in them: noise, the step between two numbers, the lag.
import { median, neighbourNoise } from '../pan/robust-statistics.ts';

/** Numbers in order of their times, ms and °C, as the probe said them. */
export interface Recent {
  times: number[];
  values: number[];
}

/** No reading yet. */
export const startRecent = (): Recent => ({ times: [], values: [] });

/** So many are kept at the least, at least so far apart, ms: two minutes and a half of a board that speaks once a second. */
const KEPT = 150;
/** So many more may stand before them: taking one off the front at every number costs more than all else that is done with it. */
const OVER = 16;
const LEAST_APART_MS = 400;

/** Takes a number in, °C at t (ms). */
export function noteRecent({ times, values }: Recent, t: number, celsius: number): void {
  const last = times.at(-1);
  if (last !== undefined && t - last < LEAST_APART_MS) return;
  times.push(t);
  values.push(celsius);
  if (times.length <= KEPT + OVER) return;
  times.splice(0, times.length - KEPT);
  values.splice(0, values.length - KEPT);
}

/** What was said since `from`, ms. */
export function recentSince({ times, values }: Recent, from: number): Recent {
  const first = times.findIndex((time, i) => time >= from && i >= times.length - KEPT);
  return first < 0 ? startRecent() : { times: times.slice(first), values: values.slice(first) };
}

/** Standard deviation of its noise, °C; null below ten numbers. */
export function noiseOf({ values }: Recent): number | null {
  return values.length < 10 ? null : neighbourNoise(values.slice(-KEPT));
}

/** No thermometer's numbers come in coarser steps than this, °C (whole degrees, and a little; common practice). */
const COARSEST_C = 1.1;

/** The least step that its numbers make, °C; null while they do not move, or only made such leaps as a moved tip makes. */
export function stepOf({ values }: Recent): number | null {
  let least = Infinity;
  for (let i = Math.max(1, values.length - KEPT + 1); i < values.length; i += 1) {
    const step = Math.abs(values[i]! - values[i - 1]!);
    if (step > 1e-6 && step < least) least = step;
  }
  return least <= COARSEST_C ? least : null;
}

/** A dip is a change by so much at the least, °C, after which it stands still to this share of it. */
const DIP_C = 20;
const STILL_SHARE = 0.04;
const STILL_READINGS = 8;
const LOOKED_BACK = 60;
/** From 30 % to 90 % of a step a probe of the first order takes ln(0.7 / 0.1) = 1.946 of its lags. */
const LAGS_BETWEEN = Math.log(0.7 / 0.1);

/**
 * How slowly the probe follows, s: the time in which it makes 63 % of a sudden step. Null where the last numbers are no
 * such step: cold, then dipped into hot liquid and held, or the other way round.
 */
export function lagOf({ times, values }: Recent): number | null {
  const from = Math.max(0, values.length - LOOKED_BACK);
  if (values.length - from < 2 * STILL_READINGS || Math.abs(values.at(-1)! - values[from]!) < DIP_C) return null;
  const end = values.slice(-STILL_READINGS);
  const final = median(end);
  const start = median(values.slice(from, from + 5));
  const step = final - start;
  if (Math.abs(step) < DIP_C || Math.max(...end) - Math.min(...end) > STILL_SHARE * Math.abs(step)) return null;
  const share = values.map((value) => (value - start) / step);
  const early = crossing(times, share, from, 0.3);
  const late = crossing(times, share, from, 0.9);
  return early === null || late === null || late <= early ? null : (late - early) / 1000 / LAGS_BETWEEN;
}

/** When the share last rose through a level, ms, between two numbers in a straight line. */
function crossing(times: readonly number[], share: readonly number[], from: number, level: number): number | null {
  for (let i = share.length - 1; i > from; i -= 1) {
    const before = share[i - 1]!;
    const after = share[i]!;
    if (before >= level || after < level) continue;
    return times[i - 1]! + ((level - before) / (after - before)) * (times[i]! - times[i - 1]!);
  }
  return null;
}
