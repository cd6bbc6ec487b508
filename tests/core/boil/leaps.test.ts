// A tip that climbs faster than a pan can: said of the probe, and taken neither for a rise that runs away nor for a boil.
import { expect, test } from 'vitest';
import { foldAll, lines, mark, onePot, readingAt, tarnHollow, told } from './tarn-hollow.ts';

/** In something else until `at` (s), then in liquid, with a tip that follows in `lagS`. */
const putIn = (from: number, into: number, at: number, lagS: number) => (t: number) =>
  into + (from - into) * (t < at * 1000 ? 1 : Math.exp(-(t / 1000 - at) / lagS));

test.each([
  ['out of cold air into sap that boils', 8, 100.2, 5],
  ['out of the air into thick syrup', 15, 102.5, 7],
  ['out of a warm pot into thick syrup, slowly', 60, 102.5, 12],
  ['out of the air into a pan that warms', 10, 70, 7],
])('a tip put %s', (_, from, into, lagS) => {
  const { state, transitions } = foldAll(onePot(), lines(0, 600_000, { T1: putIn(from, into, 300, lagS) }), 600_000);
  const [raised, ...rest] = transitions.filter(({ alarm }) => alarm === 'probe-suspect');
  expect(raised).toMatchObject({ event: 'raised', why: expect.stringContaining('put into hot liquid') });
  expect(raised!.t).toBeLessThanOrEqual(320_000);
  expect(rest.map(({ event }) => event)).toEqual(['cleared']);
  expect(rest[0]!.t).toBeLessThanOrEqual(420_000);
  expect(told(transitions).filter((one) => !one.includes('probe-suspect'))).toEqual([]);
  expect(readingAt(state, 'p1', 600_000)).toMatchObject({ probe: 'ok' });
});

test('one that was heard in the air for seconds only is no rise that runs away either', () => {
  const { transitions } = foldAll(onePot(), lines(0, 200_000, { T1: putIn(15, 102.5, 20, 6) }), 200_000);
  expect(told(transitions)).toEqual(['p1 probe-suspect raised', 'p1 probe-suspect cleared']);
});

test('a leap out of a boil to where no liquid is, is said of the probe and called as danger', () => {
  const leaps = lines(0, 360_000, { T1: (t) => (t < 300_000 ? 101 : 400) });
  const calls = told(foldAll(onePot(), leaps, 360_000).transitions);
  expect(calls).toContain('p1 probe-suspect raised');
  expect(calls).toContain('p1 scorch-risk raised');
});

test('a finish that was reached is not forgotten when the tip is put back', () => {
  const boils = (t: number): number => 104.5 - (t > 200_000 && t < 320_000 ? 80 : 0);
  const { transitions } = foldAll(onePot(), lines(0, 420_000, { T1: boils }), 420_000);
  expect(told(transitions)).toContain('p1 finish raised');
  const lastPast = told(transitions).filter((one) => one.includes('finish'));
  expect(lastPast.at(-1)).not.toContain('cleared');
});

test('the fastest pan is no tip: two litres over sixteen kilowatts, and a dip in the path of a pour', () => {
  const warms = (t: number): number => Math.min(100, 20 + (0.95 * t) / 1000);
  const suspect = (calls: string[]): string[] => calls.filter((one) => one.includes('probe-suspect'));
  expect(suspect(told(foldAll(onePot(), lines(0, 300_000, { T1: warms }), 300_000).transitions))).toEqual([]);
  const dips = (t: number): number => 100 - (t > 300_000 && t < 330_000 ? 40 : 0);
  expect(suspect(told(foldAll(onePot(), lines(0, 420_000, { T1: dips }), 420_000).transitions))).toEqual([]);
});

test('hot liquid that is poured over it, and said, is no leap', () => {
  const filled = lines(0, 420_000, { T1: putIn(12, 95, 300, 4) });
  const pour = mark(300_000, { kind: 'top-up', pan: 'p1', litres: 8, celsius: 95 });
  const entries = [...filled.slice(0, 300), pour, ...filled.slice(300)];
  expect(foldAll(onePot(), entries, 420_000).transitions).toEqual([]);
});

test('two probes that exchange a hot pan for a cold one are swapped, not put in', () => {
  const swap = lines(0, 500_000, { T1: (t) => (t < 300_000 ? 100.5 : 40), T2: (t) => (t < 300_000 ? 40 : 100.5) });
  const { transitions } = foldAll(tarnHollow(), swap, 500_000);
  const { book } = foldAll(tarnHollow(), swap, 400_000).state;
  expect(book.alarms.filter(({ alarm }) => alarm === 'probe-suspect').map(({ why }) => why)).toEqual([
    expect.stringContaining('swapped'),
    expect.stringContaining('swapped'),
  ]);
  expect(told(transitions)).toContain('p2 probe-suspect raised');
});
