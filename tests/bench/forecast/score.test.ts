// The judge of forecasts and strengths: which moments count, and what is counted of them.
import { expect, test } from 'vitest';
import { disturbances, lastDisturbance } from './disturbances.ts';
import { minute, panCase, sampleOf } from './pan-case.ts';
import { strengthsOf, timesBefore, type StrengthSample, type TimeSample } from './score.ts';
import { leadFigures, quantile, spreadOf, strengthFigures, strengthGroups } from './tally.ts';

test('the moments before a finish are the leads that lie after the last pour or turn of the flame', () => {
  const disturbed = [
    { t: 12 * minute, poured: true },
    { t: 65 * minute, poured: false },
  ];
  const one = panCase({ minutes: 90, disturbed, said: (at) => ({ finish_in_s: (80 - at) * 60 * 1.5 }) });
  const times = timesBefore(one, 80 * minute);
  expect(times.map(({ leadMin }) => leadMin)).toEqual([15, 10, 5, 3]);
  expect(times.map(({ left }) => left)).toEqual([900, 600, 300, 180]);
  expect(times.map(({ said, left }) => (said ?? 0) / left)).toEqual([1.5, 1.5, 1.5, 1.5]);
  expect(timesBefore({ ...one, disturbed: [] }, 80 * minute)).toHaveLength(6);
  expect(timesBefore({ ...one, disturbed: [] }, 20 * minute).map(({ leadMin }) => leadMin)).toEqual([15, 10, 5, 3]);
});

test('a moment between two readings counts its own time left, not the lead', () => {
  const times = timesBefore(panCase({ minutes: 90, said: () => ({ finish_in_s: 60 }) }), 80 * minute + 7000);
  expect(times.map(({ left }) => left)).toEqual([3607, 1807, 907, 607, 307, 187]);
});

const moment = (given: Partial<TimeSample>): TimeSample => ({
  pan: 'p1',
  leadMin: 10,
  left: 600,
  said: 600,
  low: 500,
  high: 700,
  boiling: true,
  line: null,
  law: null,
  lawOnTruth: null,
  ...given,
});

test('errors are shares of the time left; silence counts against the answers and not into the errors', () => {
  const times = [
    moment({ said: 660, low: 610, high: 700 }),
    moment({ said: 480 }),
    moment({ said: null, low: null, high: null }),
    moment({ said: null, low: null, high: null, boiling: false }),
    moment({ leadMin: 5, said: 0 }),
    moment({ said: 600, line: 2400, law: 300 }),
  ];
  const figures = leadFigures(times, 10);
  expect(figures).toMatchObject({ leadMin: 10, count: 5, line: 3, law: 0.5 });
  expect(figures.median).toBeCloseTo(0.1, 9);
  expect(figures.bias).toBeCloseTo(0, 9);
  expect(figures.p90).toBeCloseTo(0.18, 9);
  expect(figures.held).toBeCloseTo(2 / 3, 9);
  expect(figures.answered).toBeCloseTo(3 / 4, 9);
});

test('strength counts once a minute from 25 °Bx on, over live fire, until it burns', () => {
  const one = panCase({
    minutes: 60,
    truly: (at) => ({ brix: at, level: at < 50 ? 1 : 0, burned: at > 45 }),
    said: (at) => ({ brix: at + 1, brix_low: at - 0.5, brix_high: at + (at < 35 ? 2 : -0.1) }),
  });
  const samples = strengthsOf(one);
  expect(samples).toHaveLength(21);
  expect(samples.every(({ error }) => Math.abs((error ?? 0) - 1) < 1e-9)).toBe(true);
  expect(samples.filter(({ held }) => held)).toHaveLength(10);
});

test('each strength is in exactly one group, and not known is no error', () => {
  const known = { checked: true, mix: 'alike', blind: null } as const;
  const all: StrengthSample[] = [
    { error: 0.5, held: true, ...known },
    { error: -1.5, held: false, ...known, mix: 'unlike' },
    { error: null, held: false, ...known, mix: 'taught', checked: false },
    { error: 2, held: true, ...known, mix: 'taught' },
    { error: 2, held: true, ...known, blind: 'no-probe' },
    { error: 2, held: true, ...known, checked: false, blind: 'below-a-boil' },
  ];
  for (const one of all) expect(strengthGroups.filter(({ has }) => has(one))).toHaveLength(1);
  expect(new Set(all.map((one) => strengthGroups.find(({ has }) => has(one))?.name)).size).toBe(6);
  const figures = strengthFigures(all.slice(0, 3));
  expect(figures).toMatchObject({ count: 3, median: 1, bias: -0.5, held: 0.5 });
  expect(figures.answered).toBeCloseTo(2 / 3, 9);
});

test('quantiles lie straight between values; what never came is missing and not in them', () => {
  expect(quantile([4, 1, 3, 2], 0.5)).toBe(2.5);
  expect(quantile([10], 0.9)).toBe(10);
  expect(quantile([], 0.5)).toBeNaN();
  expect(spreadOf([1, null, 3])).toEqual({ count: 3, p10: 1.2, p50: 2, p90: 2.8, missing: 1 });
});

test('hands are found by flame, by litres that jump, and by the pours of the truth', () => {
  const samples = Array.from({ length: 13 }, (_, index) =>
    sampleOf({ t: index * 10_000, level: index < 4 ? 1 : 0.5, litres: (index < 8 ? 5 : 4) - 0.01 * index }),
  );
  const found = disturbances(
    samples,
    [
      { t: 25_000, what: 'poured', pan: 'p1' },
      { t: 1, what: 'poured', pan: 'p2' },
    ],
    'p1',
  );
  expect(found).toEqual([
    { t: 25_000, poured: true },
    { t: 40_000, poured: false },
    { t: 80_000, poured: true },
  ]);
  expect(lastDisturbance(found, 60_000)).toBe(40_000);
  expect(lastDisturbance(found, 60_000, true)).toBe(25_000);
  expect(lastDisturbance(found, 1000)).toBe(-1);
});
