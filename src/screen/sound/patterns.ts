// The call patterns after IEC 60601-1-8 as numbers: which pulses a burst has, how long and how high each is.
import type { Priority } from '../client/types.ts';

export interface Pulse {
  startMs: number;
  lengthMs: number;
}

export interface Call {
  pulses: Pulse[];
  /** From the end of a burst to the start of the next, ms. */
  pauseMs: number;
  /** Lowest tone of a pulse, Hz. Low notes carry round corners and across a yard. */
  fundamentalHz: number;
}

/** Rise and fall, as a share of a pulse's length (10 to 20 %; from one tenth to nine tenths of full it is 12 %). */
export const RISE_SHARE = 0.15;

/** Strengths of the fundamental and its harmonics, all within 10 dB (a factor 3.16) of each other. */
export const HARMONIC_STRENGTHS = [1, 0.9, 0.8, 0.65, 0.5, 0.4] as const;

/** A row of pulses of one length, with the gap that follows each (the last has none). */
function row(lengthMs: number, gapsMs: readonly number[]): Pulse[] {
  const pulses: Pulse[] = [{ startMs: 0, lengthMs }];
  let startMs = 0;
  for (const gapMs of gapsMs) {
    startMs += lengthMs + gapMs;
    pulses.push({ startMs, lengthMs });
  }
  return pulses;
}

// Gaps and lengths hold whether they are measured from silence, from half or from nine tenths of full loudness.
const HIGH_PULSE_MS = 150;
const HIGH_GAP_MS = 80;
// Between the groups of three and two the standard leaves two gaps and a pulse (from memory).
const HIGH_GROUP_GAP_MS = 2 * HIGH_GAP_MS + HIGH_PULSE_MS;
const HIGH_MIDDLE_GAP_MS = 700;
const HALF_HIGH = [HIGH_GAP_MS, HIGH_GAP_MS, HIGH_GROUP_GAP_MS, HIGH_GAP_MS];

// Gaps of medium and low, the pulses of low and the greatest pause of medium are values from memory.
const CALLS: Record<Priority, Call> = {
  high: {
    pulses: row(HIGH_PULSE_MS, [...HALF_HIGH, HIGH_MIDDLE_GAP_MS, ...HALF_HIGH]),
    pauseMs: 3000,
    fundamentalHz: 440,
  },
  medium: { pulses: row(200, [180, 180]), pauseMs: 6000, fundamentalHz: 392 },
  low: { pulses: row(200, [180]), pauseMs: 20_000, fundamentalHz: 330 },
};

/** What is sounded for a priority, burst after burst. */
export function callFor(priority: Priority): Call {
  return CALLS[priority];
}

/** Once a minute, where somebody wants to hear that all is watched; no call, and too short to be taken for one. */
export const TICK: Call = { pulses: row(40, []), pauseMs: 60_000, fundamentalHz: 330 };

/** From the start of a call's first pulse to the end of its last, ms. */
export function burstLengthMs(call: Call): number {
  const last = call.pulses.at(-1);
  return last === undefined ? 0 : last.startMs + last.lengthMs;
}
