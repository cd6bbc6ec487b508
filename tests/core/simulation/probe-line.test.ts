// What probes do to a temperature: lag, noise, resolution, offset, spikes, and every way to be broken.
import { expect, test } from 'vitest';
import type { Deed, ProbeFault } from '../../../src/core/simulation/scenario.ts';
import { onePot, readingsOf, wholeBoil, type OnePot } from './one-pot.ts';

const readings = (given: OnePot): { t: number; celsius: number }[] => readingsOf(wholeBoil(onePot(given)).entries);

const lines = (given: OnePot): string[] =>
  wholeBoil(onePot(given)).entries.flatMap((entry) => ('line' in entry ? [entry.line] : []));

const fault = (seconds: number, kind: ProbeFault): Deed => ({
  when: { at: seconds * 1000 },
  acts: [{ act: 'probe', probe: 'A/1', fault: kind }],
});

/** Still, cold water in a big pot with the flame off: nothing moves but what the test moves. */
const still = { litres: 10, brix: 0, celsius: 5.0001, level: 0 };

test('a tip follows a step of its liquid by 63 % within its lag', () => {
  const hot: Deed = {
    when: { at: 60_000 },
    acts: [
      { act: 'draw-off', pan: 'p1', litres: 'all' },
      { act: 'pour', pan: 'p1', litres: 10, brix: 0, celsius: 65 },
    ],
  };
  const series = readings({ pan: still, probe: { lagSeconds: 8 }, deeds: [hot], endsAt: 200_000 });
  const before = series[50]?.celsius ?? NaN;
  const at = (seconds: number): number => series.find(({ t }) => t >= seconds * 1000)?.celsius ?? NaN;
  expect((at(67.1) - before) / (at(180) - before)).toBeCloseTo(1 - Math.exp(-1), 1);
});

test('noise has the given spread and readings stand on the resolution', () => {
  const series = readings({ probe: { noiseCelsius: 0.15, resolutionCelsius: 0.25 }, endsAt: 3_000_000 });
  expect(series.every(({ celsius }) => celsius * 4 === Math.round(celsius * 4))).toBe(true);
  const steps = readings({ probe: { noiseCelsius: 0.15 }, endsAt: 3_000_000 }).slice(600);
  const differences = steps.slice(1).map(({ celsius }, index) => celsius - (steps[index]?.celsius ?? NaN));
  const spread = Math.sqrt(differences.reduce((sum, d) => sum + d * d, 0) / differences.length / 2);
  expect(spread).toBeCloseTo(0.15, 1);
  expect(Math.abs(spread - 0.15)).toBeLessThan(0.02);
});

test('an offset shifts every reading', () => {
  const plain = readings({ endsAt: 60_000 });
  const shifted = readings({ probe: { biasCelsius: 1.5 }, endsAt: 60_000 });
  expect(shifted.map(({ celsius }) => celsius - 1.5)).toEqual(plain.map(({ celsius }) => expect.closeTo(celsius, 6)));
});

test('spikes come about as often as asked and last one line', () => {
  const series = readings({ probe: { spikesPerHour: 30 }, endsAt: 3_600_000 }).slice(300);
  const middle = [...series].sort((a, b) => a.celsius - b.celsius)[series.length >> 1]?.celsius ?? NaN;
  const wild = series.filter(({ celsius }) => Math.abs(celsius - middle) > 3.5);
  expect(wild.length).toBeGreaterThan(15);
  expect(wild.length).toBeLessThan(50);
});

test('a broken probe says nan, a silent one says nothing, and both come back', () => {
  expect(
    lines({ deeds: [fault(10, 'open'), fault(20, 'none')], endsAt: 30_000 }).filter((line) => line === 'T1=nan'),
  ).toHaveLength(10);
  const series = readings({ deeds: [fault(10, 'silent'), fault(20, 'none')], endsAt: 30_000 });
  expect(series.filter(({ t }) => t >= 10_000 && t < 20_000)).toEqual([]);
  expect(series.at(-1)?.t).toBe(29_200);
});

test('a fault changes no reading before or after it', () => {
  const sound = lines({ probe: { noiseCelsius: 0.1 }, endsAt: 60_000 });
  const faulty = lines({ probe: { noiseCelsius: 0.1 }, deeds: [fault(10, 'open'), fault(20, 'none')], endsAt: 60_000 });
  expect(faulty.map((line, index) => (line === 'T1=nan' ? sound[index] : line))).toEqual(sound);
});

test('a tip lifted into the steam of a thick boil sits a little under water’s boiling point', () => {
  const series = readings({ pan: { litres: 8, brix: 55, celsius: 99 }, deeds: [fault(600, 'out')], endsAt: 1_200_000 });
  const { state } = wholeBoil(onePot({ endsAt: 1000 }));
  expect(series.find(({ t }) => t > 590_000)?.celsius).toBeGreaterThan(state.air.waterCelsius + 1.5);
  const bare = series.at(-1)?.celsius ?? NaN;
  expect(bare).toBeLessThan(state.air.waterCelsius);
  expect(bare).toBeGreaterThan(state.air.waterCelsius - 2);
});

test('a tip higher than the liquid is bare by itself', () => {
  const covered = readings({ pan: { litres: 3, brix: 55, celsius: 99 }, probe: { tipMm: 20 }, endsAt: 900_000 });
  const bare = readings({ pan: { litres: 3, brix: 55, celsius: 99 }, probe: { tipMm: 60 }, endsAt: 900_000 });
  expect(covered.at(-1)?.celsius ?? NaN).toBeGreaterThan((bare.at(-1)?.celsius ?? NaN) + 2);
});
