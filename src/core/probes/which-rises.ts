// Which of several probes is the one that somebody warms in the hand.
import { median } from '../pan/robust-statistics.ts';
import { noiseOf, type Recent, recentSince } from './recent.ts';

export interface Rising {
  channel: string;
  /** Over the lowest that it was in the last minute, °C; null while too little was heard. */
  risenC: number | null;
}

export interface WhichRises {
  channels: Rising[];
  /** The one that rises; null while none does, or several do. */
  one: string | null;
  /** More than one rise: nobody can tell. */
  several: string[];
}

const LOOKED_AT_MS = 60_000;
/** A hand warms a tip by more than this, and by more than its noise makes, °C (common practice). */
const WARMED_C = 2;
const OVER_NOISE = 6;
/** The one in the hand rises so many times as much as any other. */
const CLEARLY = 2;

/** Looks at the last minute of each channel at t (ms). */
export function whichRises(channels: readonly { channel: string; recent: Recent }[], t: number): WhichRises {
  const seen = channels.map(({ channel, recent }) => ({ channel, ...risen(recent, t) }));
  const rising = seen
    .filter(({ risenC, noise }) => risenC !== null && risenC >= Math.max(WARMED_C, OVER_NOISE * noise))
    .sort((a, b) => b.risenC! - a.risenC!);
  const [first, second] = rising;
  const isClear = first !== undefined && (second === undefined || first.risenC! >= CLEARLY * second.risenC!);
  return {
    channels: seen.map(({ channel, risenC }) => ({ channel, risenC })),
    one: isClear ? first.channel : null,
    several: first === undefined || isClear ? [] : rising.map(({ channel }) => channel),
  };
}

function risen(recent: Recent, t: number): { risenC: number | null; noise: number } {
  const { values } = recentSince(recent, t - LOOKED_AT_MS);
  if (values.length < 4) return { risenC: null, noise: 0 };
  // Lowest three rather than lowest one: a single glitch downwards is no cold tip.
  const lowest = median([...values].sort((a, b) => a - b).slice(0, 3));
  return { risenC: median(values.slice(-3)) - lowest, noise: noiseOf({ times: [], values }) ?? 0 };
}
