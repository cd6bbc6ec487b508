// Renders call patterns to samples, so that what is played is what was measured.
import { HARMONIC_STRENGTHS, RISE_SHARE, burstLengthMs } from './patterns.ts';
import type { Call } from './patterns.ts';

/** Steps in which one period is looked through for its peak. */
const PERIOD_STEPS = 2048;

/** The sum of the harmonics at a phase, in periods. */
function toneAt(phase: number): number {
  return HARMONIC_STRENGTHS.reduce((sum, strength, i) => sum + strength * Math.sin(2 * Math.PI * (i + 1) * phase), 0);
}

// A little more than the steps find, for the peak may lie between two of them.
const TONE_PEAK =
  1.001 * Math.max(...Array.from({ length: PERIOD_STEPS }, (_, step) => Math.abs(toneAt(step / PERIOD_STEPS))));

/** From 0 up to 1 and down again; `at` is a share of the pulse. */
function envelopeAt(at: number): number {
  return Math.max(0, Math.min(1, at / RISE_SHARE, (1 - at) / RISE_SHARE));
}

/** One burst, its loudest sample 1 at most; with `pauseMs` behind it, for a burst that is played in a loop. */
export function renderBurst(call: Call, samplesPerSecond: number, pauseMs = 0): Float32Array<ArrayBuffer> {
  const perMs = samplesPerSecond / 1000;
  const samples = new Float32Array(Math.ceil((burstLengthMs(call) + pauseMs) * perMs));
  for (const { startMs, lengthMs } of call.pulses) {
    const first = Math.round(startMs * perMs);
    const count = Math.round(lengthMs * perMs);
    for (let i = 0; i < count; i += 1) {
      const tone = toneAt((i / samplesPerSecond) * call.fundamentalHz) / TONE_PEAK;
      samples[first + i] = envelopeAt(i / count) * tone;
    }
  }
  return samples;
}
