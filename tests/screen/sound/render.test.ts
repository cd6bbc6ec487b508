// What is played is measured: the rendered samples against the table of alarms.md (after IEC 60601-1-8; numbers from memory are marked there and here).
import { describe, expect, test } from 'vitest';
import { callFor } from '../../../src/screen/sound/patterns.ts';
import { renderBurst } from '../../../src/screen/sound/render.ts';
import type { Priority } from '../../../src/screen/client/types.ts';

const SAMPLES_PER_SECOND = 48_000;
const SAMPLES_PER_MS = SAMPLES_PER_SECOND / 1000;
/** Longer than one period of every call's lowest tone. */
const WINDOW = Math.round(3.2 * SAMPLES_PER_MS);

/** Loudest sample around each sample. */
function envelopeOf(samples: Float32Array): number[] {
  const half = WINDOW / 2;
  return Array.from(samples, (_, i) => {
    let most = 0;
    for (let k = Math.max(0, i - half); k < Math.min(samples.length, i + half); k += 1) {
      most = Math.max(most, Math.abs(samples[k] ?? 0));
    }
    return most;
  });
}

interface Measured {
  /** Where it first and last reaches a share of its loudest, ms. */
  from: (share: number) => number;
  to: (share: number) => number;
  loudest: number;
}

/** The pulses that the samples hold, by their envelope alone. */
function pulsesIn(samples: Float32Array): Measured[] {
  const envelope = envelopeOf(samples);
  const ranges: [number, number][] = [];
  for (const [i, level] of envelope.entries()) {
    if (level === 0) continue;
    const last = ranges.at(-1);
    if (last !== undefined && last[1] === i - 1) last[1] = i;
    else ranges.push([i, i]);
  }
  return ranges.map(([first, last]) => {
    const part = envelope.slice(first, last + 1);
    const loudest = Math.max(...part);
    const reaches = (share: number) => (level: number) => level >= share * loudest;
    return {
      loudest,
      from: (share) => (first + part.findIndex(reaches(share))) / SAMPLES_PER_MS,
      to: (share) => (first + part.findLastIndex(reaches(share))) / SAMPLES_PER_MS,
    };
  });
}

/** The samples between two times, under a window without steps at its ends, so that one tone does not spill over all others. */
function windowed(samples: Float32Array, fromMs: number, toMs: number): Float64Array {
  const part = samples.slice(Math.round(fromMs * SAMPLES_PER_MS), Math.round(toMs * SAMPLES_PER_MS));
  return Float64Array.from(part, (sample, i) => (0.5 - 0.5 * Math.cos((2 * Math.PI * i) / (part.length - 1))) * sample);
}

/** The strength of one frequency in windowed samples (Goertzel's way of one line of a Fourier transform). */
function strengthOf(part: Float64Array, hz: number): number {
  const step = 2 * Math.cos((2 * Math.PI * hz) / SAMPLES_PER_SECOND);
  let one = 0;
  let two = 0;
  // Millions of samples go through here: by their numbers, and without a pair that is made for each.
  for (let i = 0; i < part.length; i += 1) {
    const next = part[i]! + step * one - two;
    two = one;
    one = next;
  }
  return Math.sqrt(one * one + two * two - step * one * two) / part.length;
}

const decibels = (ratio: number): number => 20 * Math.log10(ratio);

function within(value: number, least: number, greatest: number): void {
  expect(value).toBeGreaterThanOrEqual(least);
  expect(value).toBeLessThanOrEqual(greatest);
}

type Range = [number, number];

const TABLE: Record<Priority, { pulses: number; lengthMs: Range; gapMs: Range; pauseMs: Range }> = {
  high: { pulses: 10, lengthMs: [75, 200], gapMs: [50, 125], pauseMs: [2500, 15_000] },
  // The gaps and the greatest pause of medium, and length and gaps of low, from memory.
  medium: { pulses: 3, lengthMs: [125, 250], gapMs: [125, 250], pauseMs: [2500, 30_000] },
  low: { pulses: 2, lengthMs: [125, 250], gapMs: [125, 250], pauseMs: [15_000, Number.POSITIVE_INFINITY] },
};

describe.each(['high', 'medium', 'low'] as const)('%s', (priority) => {
  const samples = renderBurst(callFor(priority), SAMPLES_PER_SECOND);
  const pulses = pulsesIn(samples);
  const table = TABLE[priority];

  test('pulses, their lengths and the gaps between them', () => {
    expect(pulses).toHaveLength(table.pulses);
    for (const [i, pulse] of pulses.entries()) {
      // Whichever share of the full loudness a length or a gap is measured at.
      for (const share of [0.1, 0.5, 0.9]) {
        within(pulse.to(share) - pulse.from(share), ...table.lengthMs);
        const before = pulses[i - 1];
        if (before === undefined) continue;
        const gapMs = pulse.from(share) - before.to(share);
        if (priority === 'high' && i === 5) within(gapMs, 350, 1300);
        // Between three and two: longer than a gap, shorter than the pause in the middle (from memory).
        else if (priority === 'high' && (i === 3 || i === 8)) within(gapMs, 126, 349);
        else within(gapMs, ...table.gapMs);
      }
    }
  });

  test('each pulse rises and falls in 10 to 20 % of its length, and none is louder than another', () => {
    for (const pulse of pulses) {
      const lengthMs = callFor(priority).pulses[0]?.lengthMs ?? Number.NaN;
      within((pulse.from(0.9) - pulse.from(0.1)) / lengthMs, 0.1, 0.2);
      within((pulse.to(0.1) - pulse.to(0.9)) / lengthMs, 0.1, 0.2);
      within(Math.abs(decibels(pulse.loudest / (pulses[0]?.loudest ?? 1))), 0, 0.5);
    }
    within(
      samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0),
      0.9,
      1,
    );
  });

  test('a low fundamental with four harmonics or more, all within 10 dB', () => {
    for (const pulse of pulses) {
      const part = windowed(samples, pulse.from(0.9), pulse.to(0.9));
      const tones = Array.from({ length: 1991 }, (_, i) => 20 + 2 * i);
      const strengths = new Map(tones.map((hz) => [hz, strengthOf(part, hz)]));
      const at = (hz: number): number => strengths.get(hz) ?? 0;
      const loudest = Math.max(...strengths.values());
      const peaks = tones.filter((hz) => at(hz) > loudest / 3.17 && at(hz) >= at(hz - 2) && at(hz) >= at(hz + 2));
      const [fundamental = Number.NaN, ...harmonics] = peaks;
      // Under 500 Hz it goes round obstacles.
      within(fundamental, 150, 500);
      expect(harmonics.filter((hz) => hz >= 300 && hz <= 4000).length).toBeGreaterThanOrEqual(4);
      for (const hz of harmonics) within(Math.abs(hz / fundamental - Math.round(hz / fundamental)), 0, 0.02);
      within(decibels(Math.max(...peaks.map(at)) / Math.min(...peaks.map(at))), 0, 10);
    }
  }, 60_000);

  test('in a loop the pause stands behind the burst', () => {
    const { pauseMs } = callFor(priority);
    const looped = renderBurst(callFor(priority), SAMPLES_PER_SECOND, pauseMs);
    const lastMs = pulses.at(-1)?.to(0.1) ?? Number.NaN;
    within(looped.length / SAMPLES_PER_MS - lastMs, ...table.pauseMs);
  });
});

test('at another rate of samples it is the same sound', () => {
  const one = renderBurst(callFor('high'), 44_100);
  const other = renderBurst(callFor('high'), 48_000);
  within(one.length / 44_100 - other.length / 48_000, -0.001, 0.001);
});
