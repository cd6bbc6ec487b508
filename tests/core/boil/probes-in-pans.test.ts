// Checks pans with several tips or none, power-on values after a plug was pulled, and pours that nobody marked.
import { expect, test } from 'vitest';
import type { Entry } from '../../../src/core/boil/entries.ts';
import { boilView } from '../../../src/core/boil/view.ts';
import {
  boilingAt,
  foldAll,
  inOrder,
  lines,
  mark,
  onePot,
  readingAt,
  tarnHollow,
  told,
  waterCelsius,
} from './tarn-hollow.ts';

const water = waterCelsius(1013.25);
const twoTips = tarnHollow({ pans: [{ id: 'p1', name: 'Back pot', probe: ['A/1', 'A/2'] }] });

test('of two tips in one pan one may be lost: it is called, and the pan is read by the other', () => {
  const celsius = boilingAt(50, 'maple');
  const heard = lines(0, 180_000, { T1: (t) => (t < 60_000 ? celsius : null), T2: () => celsius });
  const { state, transitions } = foldAll(twoTips, heard, 180_000);
  expect(told(transitions)).toEqual(['p1 probe-lost raised']);
  const reading = readingAt(state, 'p1', 180_000);
  expect(reading.probe).toBe('ok');
  expect(Math.abs(reading.brix! - 50)).toBeLessThan(0.3);
});

test('a lost tip stays lost when its port is opened again, though the other tip of its pan is heard', () => {
  const heard = lines(0, 180_000, { T1: () => water, T2: (t) => (t < 60_000 ? water : null) });
  const entries = inOrder([{ t: 0, port: 'A', state: 'open' }], heard, [{ t: 120_000, port: 'A', state: 'open' }]);
  expect(told(foldAll(twoTips, entries, 180_000).transitions)).toEqual(['p1 probe-lost raised']);
});

test('the alarm of a port that leaves the boil is over, not active for ever', () => {
  const header = tarnHollow({ ports: [{ id: 'A' }, { id: 'B' }] });
  const entries = inOrder(lines(0, 60_000, { T1: () => water, T2: () => water }), [
    { t: 10_000, port: 'B', state: 'lost' },
    { t: 30_000, set: { ports: [{ id: 'A' }] } },
  ]);
  const { state, transitions } = foldAll(header, entries, 60_000);
  expect(told(transitions)).toContain('B port-lost raised');
  expect(boilView(state, 60_000).alarms.filter((alarm) => alarm.condition === 'active')).toEqual([]);
});

test('a pan without a probe is not called lost, and says what it does not know', () => {
  const header = tarnHollow({ pans: [{ id: 'p1', name: 'Back pot' }], probes: [] });
  const { state, transitions } = foldAll(header, [], 600_000);
  expect(transitions).toEqual([]);
  expect(readingAt(state, 'p1', 600_000)).toEqual({
    pan: 'p1',
    temperature_c: null,
    water_c: expect.closeTo(water, 3) as number,
    rise_c: null,
    rate_c_per_min: null,
    brix: null,
    brix_low: null,
    brix_high: null,
    litres: null,
    depth_mm: null,
    evaporation_l_per_h: null,
    finish_in_s: null,
    finish_low_s: null,
    finish_high_s: null,
    scorch_in_s: null,
    top_up_in_s: null,
    stage: 'unknown',
    probe: null,
  });
});

test('a board that was plugged in again may begin with 85.000: that is no temperature', () => {
  const entries = inOrder(lines(0, 60_000, { T1: () => water }), lines(91_000, 120_000, { T1: () => water }), [
    { t: 0, port: 'A', state: 'open' },
    { t: 60_000, port: 'A', state: 'lost' },
    { t: 90_000, port: 'A', state: 'open' },
    { t: 90_500, port: 'A', line: 'T1=85.000C' },
  ] as Entry[]);
  const { state } = foldAll(
    onePot(),
    entries.filter((entry) => entry.t <= 90_500),
    90_600,
  );
  expect(readingAt(state, 'p1', 90_600).temperature_c).not.toBe(85);
  expect(boilView(state, 90_600).probes[0]).toMatchObject({ celsius: null, state: 'broken' });
});

test('a pour of cold sap that nobody marked makes no call, and the pan is read again once it boils', () => {
  const stirred = (t: number): number => Math.min(boilingAt(40, 'maple'), 90 + ((t - 300_000) / 60_000) * 3);
  const heard = lines(0, 900_000, { T1: (t) => (t < 300_000 ? boilingAt(45, 'maple') : stirred(t)) });
  const { transitions } = foldAll(onePot(), heard, 900_000);
  expect(told(transitions)).toEqual([]);
  const during = foldAll(
    onePot(),
    heard.filter((entry) => entry.t <= 330_000),
    330_000,
  ).state;
  expect(readingAt(during, 'p1', 330_000)).toMatchObject({ brix: null, finish_in_s: null, stage: 'warming' });
  const after = foldAll(onePot(), heard, 900_000).state;
  const reading = readingAt(after, 'p1', 900_000);
  expect(Math.abs(reading.brix! - 40)).toBeLessThan(3);
  expect(reading.brix_low!).toBeLessThan(40);
  expect(reading.brix_high!).toBeGreaterThan(40);
});

test('while sap warms up from cold no strength is said', () => {
  const heard = lines(0, 1_200_000, { T1: (t) => 5 + (90 * t) / 1_200_000 });
  const { state, transitions } = foldAll(onePot(), heard, 1_200_000);
  expect(told(transitions)).toEqual([]);
  const reading = readingAt(state, 'p1', 1_200_000);
  expect(reading).toMatchObject({ brix: null, finish_in_s: null, scorch_in_s: null, stage: 'warming' });
  expect(Math.abs(reading.rate_c_per_min! - 4.5)).toBeLessThan(0.1);
});

test('a pan kept below a boil: the ceiling is guarded, instruments tell the strength', () => {
  const header = tarnHollow({
    pans: [{ id: 'p1', name: 'Birch pan', sap: 'birch', probe: 'A/1', finish: { brix: 67, ceiling_c: 94 } }],
  });
  const density = (t: number, brix: number): Entry =>
    mark(t, { kind: 'density', pan: 'p1', brix, instrument: 'refractometer', compensated: true });
  const heard = lines(0, 3_120_000, { T1: (t) => (t > 3_000_000 && t < 3_060_000 ? 95 : 92), T2: () => 20 });
  const entries = inOrder(heard, [density(600_000, 50), density(1_500_000, 54), density(2_400_000, 58)]);
  const { state, transitions } = foldAll(header, entries, 3_120_000);
  expect(told(transitions)).toEqual(['p1 scorch-risk raised', 'p1 scorch-risk cleared']);
  const { brix, rise_c: rise } = readingAt(state, 'p1', 3_120_000);
  // Water per sugar: 1, 0.852, 0.724, so 0.14 in 900 s: 0.61 and 62 °Bx after another 720 s.
  expect(Math.abs(brix! - 62)).toBeLessThan(1.5);
  expect(rise!).toBeLessThan(0);
});

test('half the flame takes twice the time', () => {
  const pan = (t: number): number => 100 / (100 / 45 - (4e-4 * t) / 1000);
  const heard = lines(0, 600_000, { T1: (t) => boilingAt(pan(t), 'maple') });
  const full = foldAll(onePot(), heard, 600_000).state;
  const half = foldAll(onePot(), [...heard, mark(599_900, { kind: 'flame', pan: 'p1', level: 0.5 })], 600_000).state;
  const [long, short] = [half, full].map((state) => readingAt(state, 'p1', 600_000).finish_in_s!);
  expect(long! / short!).toBeCloseTo(2, 1);
});

test('a round pot of 400 mm with 10 L stands 83 mm deep when hot, and says when it will be at its least', () => {
  const pot = {
    id: 'p1',
    probe: 'A/1',
    vessel: { shape: 'round' as const, diameter_mm: 400 },
    heat: { kind: 'electric' as const, power_w: 5000 },
    min_depth_mm: 20,
  };
  const pour = mark(0, { kind: 'top-up', pan: 'p1', litres: 10, brix: 2 });
  const { state } = foldAll(
    tarnHollow({ pans: [pot] }),
    inOrder([pour], lines(0, 120_000, { T1: () => water + 0.1 })),
    120_000,
  );
  const reading = readingAt(state, 'p1', 120_000);
  // 10 L × 1.04 / 0.12566 m2 = 82.8 mm, less what boiled off in two minutes.
  expect(Math.abs(reading.depth_mm! - 82.2)).toBeLessThan(0.8);
  const perSecond = (reading.evaporation_l_per_h! * 1.04) / 3600 / 0.12566;
  expect(Math.abs(reading.top_up_in_s! / ((reading.depth_mm! - 20) / perSecond) - 1)).toBeLessThan(0.01);
  // 80 % of 5 kW over 2256 kJ/kg is 6.4 kg/h.
  expect(Math.abs(reading.evaporation_l_per_h! - 6.4)).toBeLessThan(0.1);
});

test('a pan that is off and cools says no strength, and its alarms hand over without a gap', () => {
  const off = mark(90_000, { kind: 'flame', pan: 'p1', level: 0 });
  const heard = lines(0, 180_000, {
    T1: (t) => boilingAt(66 + t / 30_000, 'maple') - Math.max(0, t - 90_000) / 30_000,
  });
  const { state, transitions } = foldAll(onePot(), inOrder(heard, [off]), 180_000);
  expect(readingAt(state, 'p1', 180_000)).toMatchObject({
    stage: 'off',
    brix: null,
    brix_low: null,
    finish_in_s: null,
  });
  const at = (alarm: string, event: string): number | undefined =>
    transitions.find((one) => one.alarm === alarm && one.event === event)?.t;
  expect(at('finish', 'cleared')).toBe(at('past-finish', 'raised'));
});
