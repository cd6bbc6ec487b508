// Whether a probe that is held in boiling water or ice water has come to rest, and what it then shows.
import { median, robustSlope } from '../pan/robust-statistics.ts';
import { noiseOf, type Recent, recentSince, stepOf } from './recent.ts';

export interface Steadiness {
  /** `waiting`: too little was heard yet; `restless`: its numbers jump about too much to say. */
  state: 'waiting' | 'rising' | 'falling' | 'restless' | 'steady';
  /** The middle of the last minute, °C; null while too little was heard. */
  celsius: number | null;
  /** How sure that middle is (1 σ), by noise, steps and what it still moves, °C. */
  sigmaC: number | null;
  ratePerMin: number | null;
  /** Of the minute that is looked at, s. */
  heardS: number;
}

/** It is looked at so long, ms; with a little less, and so many numbers, something can be said. */
const LOOKED_AT_MS = 60_000;
const ENOUGH_MS = 50_000;
const ENOUGH_NUMBERS = 10;
/** A probe that said nothing for so long is not held to be anywhere, ms. */
const STALE_MS = 20_000;
/** Slower than this it has come to rest, °C/min (a pot at a full boil moves less; common practice). */
const REST_C_PER_MIN = 0.12;
/** Noise over this hides a slow climb, and a middle less sure than this tells nothing of a probe, °C. */
const RESTLESS_C = 0.5;
/** So much off the middle, in σ and °C, a number was said elsewhere; so large a share of them is no glitch (practice). */
const ELSEWHERE_SIGMAS = 6;
const ELSEWHERE_C = 1;
const ELSEWHERE_SHARE = 0.1;
/** The newest numbers, so many: one of them elsewhere is a tip that moves, whatever the minute before them showed. */
const NEWEST = 3;

const NOTHING: Steadiness = { state: 'waiting', celsius: null, sigmaC: null, ratePerMin: null, heardS: 0 };

/** How a probe stands at t (ms), by its last minute. */
export function steadiness(recent: Recent, t: number): Steadiness {
  const minute = recentSince(recent, t - LOOKED_AT_MS);
  const { times, values } = minute;
  const newest = times.at(-1);
  if (newest === undefined || t - newest > STALE_MS) return NOTHING;
  const spanMs = newest - times[0]!;
  const heardS = spanMs / 1000;
  if (spanMs < ENOUGH_MS || values.length < ENOUGH_NUMBERS) return { ...NOTHING, celsius: values.at(-1)!, heardS };
  const noise = noiseOf(minute) ?? 0;
  const step = stepOf(minute) ?? 0;
  // A value rounded to a step is off by up to half of it, evenly: step / √12.
  const own = Math.max(noise, step / Math.sqrt(12), 0.001);
  const ratePerMin = robustSlope(times, values, own) * 60_000;
  const rateSigma = (own * Math.sqrt(12)) / (spanMs / 60_000) / Math.sqrt(values.length);
  const limit = Math.max(REST_C_PER_MIN, 2 * rateSigma);
  const celsius = median(values);
  const sigmaC = Math.hypot(noise / Math.sqrt(values.length), step / Math.sqrt(12), ratePerMin / Math.sqrt(12));
  const told = { celsius, sigmaC, ratePerMin, heardS };
  if (noise > RESTLESS_C) return { state: 'restless', ...told };
  // A tip that was put in within the minute: the slope of what came after is level, and the middle hides what came before.
  const far = Math.max(ELSEWHERE_C, ELSEWHERE_SIGMAS * own);
  // One that was put in just now: most of the minute knows nothing of it, and its middle is where the tip was before.
  const away = values.slice(-NEWEST).findLast((value) => Math.abs(value - celsius) > far);
  if (away !== undefined) return { state: away < celsius ? 'falling' : 'rising', ...told };
  const elsewhere = values.filter((value) => Math.abs(value - celsius) > far).length;
  if (elsewhere > ELSEWHERE_SHARE * values.length)
    return { state: values.at(-1)! < values[0]! ? 'falling' : 'rising', ...told };
  if (Math.abs(ratePerMin) > limit) return { state: ratePerMin > 0 ? 'rising' : 'falling', ...told };
  return { state: sigmaC > RESTLESS_C ? 'restless' : 'steady', ...told };
}
