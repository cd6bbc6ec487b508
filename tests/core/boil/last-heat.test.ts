// What a pan showed last is kept with its moment once nobody hears it any more; a tip in the air tells of no stage.
import { expect, test } from 'vitest';
import type { Entry } from '../../../src/core/boil/entries.ts';
import { explain } from '../../../src/core/boil/explain.ts';
import { boilView } from '../../../src/core/boil/view.ts';
import { foldAll, inOrder, lines, mark, readingAt, steadyCelsius, tarnHollow } from './tarn-hollow.ts';

const MINUTE_MS = 60_000;
const OUT_MS = 15 * MINUTE_MS;
const heat = { kind: 'propane' as const, power_w: 9000 };
const header = tarnHollow({
  pans: [{ id: 'p1', name: 'Back pot', probe: 'A/1', vessel: { shape: 'round', diameter_mm: 300 }, heat }],
});
const pot = { fromBrix: 30, k: 0.0004, start: 0, sap: 'maple' as const };
const told = [
  mark(0, { kind: 'density', pan: 'p1', brix: 30, celsius: 15.56 }),
  mark(0, { kind: 'depth', pan: 'p1', mm: 90 }),
];
const boils = (until: number): Entry[] => inOrder(told, lines(1000, until, { T1: (t) => steadyCelsius(pot, t) }));
/** The tip hangs in the air from `OUT_MS` on. */
const inAir = (t: number): number =>
  t < OUT_MS ? steadyCelsius(pot, t) : 20 + (steadyCelsius(pot, OUT_MS) - 20) * Math.exp(-(t - OUT_MS) / 12_000);

const seen = (entries: Entry[], t: number) => {
  const { state } = foldAll(header, entries, t);
  return { last: boilView(state, t).lastHeats, reading: readingAt(state, 'p1', t) };
};

test('a probe that fell silent leaves what it showed last, and when', () => {
  expect(seen(boils(OUT_MS), OUT_MS - 1000).last).toEqual([]);
  const { last, reading } = seen(boils(OUT_MS), OUT_MS + 6 * MINUTE_MS);
  expect(reading).toMatchObject({ probe: 'lost', temperature_c: null });
  expect(last).toHaveLength(1);
  expect(last[0]!.pan).toBe('p1');
  expect(Math.abs(last[0]!.celsius - steadyCelsius(pot, OUT_MS))).toBeLessThan(0.1);
  expect(Math.abs(last[0]!.at - OUT_MS)).toBeLessThan(10_000);
});

test('of a probe that was hung elsewhere it is what it showed in the pan, not on its way out', () => {
  const moved = mark(OUT_MS + 40_000, { kind: 'move-probe', probe: 'A/1', pan: null, happened: OUT_MS });
  const entries = inOrder(told, lines(1000, OUT_MS + 40_000, { T1: inAir }), [moved]);
  const { last } = seen(entries, OUT_MS + 3 * MINUTE_MS);
  expect(last[0]!.celsius).toBeGreaterThan(100);
  expect(last[0]!.at).toBeLessThanOrEqual(OUT_MS);
});

test('a tip that hangs in the air and then falls silent is no last heat of the pan', () => {
  const entries = inOrder(told, lines(1000, OUT_MS + 5 * MINUTE_MS, { T1: inAir }));
  const { last } = seen(entries, OUT_MS + 8 * MINUTE_MS);
  expect(last[0]!.celsius).toBeGreaterThan(100);
});

test('a reading by hand that is too old to count is what was seen last', () => {
  const noProbe = tarnHollow({ probes: [], pans: [{ id: 'p1', name: 'Back pot' }] });
  const read = mark(MINUTE_MS, { kind: 'reading', pan: 'p1', celsius: 101 });
  const view = (t: number) => boilView(foldAll(noProbe, [read], t).state, t).lastHeats;
  expect(view(5 * MINUTE_MS)).toEqual([]);
  expect(view(15 * MINUTE_MS)).toEqual([{ pan: 'p1', celsius: 101, at: MINUTE_MS }]);
  expect(boilView(foldAll(noProbe, [], MINUTE_MS).state, MINUTE_MS).lastHeats).toEqual([]);
});

test('while a tip hangs in the air its pan is not said to warm up', () => {
  const entries = inOrder(told, lines(1000, OUT_MS + 5 * MINUTE_MS, { T1: inAir }));
  expect(seen(entries, OUT_MS + 3 * MINUTE_MS).reading.stage).toBe('unknown');
  expect(seen(boils(OUT_MS), OUT_MS - 1000).reading.stage).toBe('thickening');
});

test('a strength goes on by count once its probe was taken away, and rests on the volumes, not on a thermometer that nobody read', () => {
  const moved = mark(OUT_MS, { kind: 'move-probe', probe: 'A/1', pan: null });
  const t = OUT_MS + MINUTE_MS;
  const { state } = foldAll(header, inOrder(boils(OUT_MS), [moved]), t);
  expect(readingAt(state, 'p1', t)).toMatchObject({ probe: null, temperature_c: null, stage: 'thickening' });
  expect(explain(state, 'p1', 'strength', t)!.parts.map(({ kind }) => kind)).toEqual(['volume']);
});
