// The call patterns keep to the figures of IEC 60601-1-8 as alarms.md lists them.
import { expect, test } from 'vitest';
import { HARMONIC_STRENGTHS, RISE_SHARE, burstLengthMs, callFor } from '../../../src/screen/sound/patterns.ts';
import type { Call } from '../../../src/screen/sound/patterns.ts';

const gaps = (call: Call): number[] =>
  call.pulses.slice(1).map((pulse, i) => {
    const before = call.pulses[i];
    return before === undefined ? Number.NaN : pulse.startMs - before.startMs - before.lengthMs;
  });

function within(value: number | undefined | null, least: number, greatest: number): void {
  expect(value).toBeGreaterThanOrEqual(least);
  expect(value).toBeLessThanOrEqual(greatest);
}

test('high: ten short pulses, three and two, a pause, three and two', () => {
  const high = callFor('high');
  expect(high.pulses).toHaveLength(10);
  for (const pulse of high.pulses) within(pulse.lengthMs, 75, 200);
  const all = gaps(high);
  for (const i of [0, 1, 3, 5, 6, 8]) within(all[i], 50, 125);
  within(all[4], 350, 1300);
  // Between three and two the gap is longer than within them: a number from memory, two gaps and a pulse.
  for (const i of [2, 7]) expect(all[i]).toBe(2 * (all[0] ?? 0) + (high.pulses[0]?.lengthMs ?? 0));
  within(high.pauseMs, 2500, 15_000);
});

test('medium: three pulses; low: one or two', () => {
  const medium = callFor('medium');
  expect(medium.pulses).toHaveLength(3);
  for (const gap of gaps(medium)) within(gap, 125, 250);
  within(medium.pauseMs, 2500, 30_000);
  const low = callFor('low');
  within(low.pulses.length, 1, 2);
  expect(low.pauseMs).toBeGreaterThan(15_000);
  for (const pulse of [...medium.pulses, ...low.pulses]) within(pulse.lengthMs, 125, 250);
});

test.each(['high', 'medium', 'low'] as const)('%s: a low note with four harmonics that carry', (priority) => {
  const { fundamentalHz } = callFor(priority);
  within(fundamentalHz, 150, 500);
  const harmonics = HARMONIC_STRENGTHS.map((_, i) => fundamentalHz * (i + 1)).slice(1);
  expect(harmonics.filter((hz) => hz >= 300 && hz <= 4000).length).toBeGreaterThanOrEqual(4);
});

test('levels lie within 10 dB, rise and fall within a tenth and a fifth of a pulse', () => {
  const spreadDb = 20 * Math.log10(Math.max(...HARMONIC_STRENGTHS) / Math.min(...HARMONIC_STRENGTHS));
  expect(spreadDb).toBeLessThanOrEqual(10);
  within(RISE_SHARE, 0.1, 0.2);
});

test('the length of a burst reaches to the end of its last pulse', () => {
  expect(
    burstLengthMs({
      pulses: [
        { startMs: 0, lengthMs: 100 },
        { startMs: 300, lengthMs: 150 },
      ],
      pauseMs: 3000,
      fundamentalHz: 440,
    }),
  ).toBe(450);
});
