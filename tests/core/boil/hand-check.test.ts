// The thermometer that is read by hand, checked in boiling water: what it teaches, when it is asked about, and how it is taken back.
import { expect, test } from 'vitest';
import type { Entry, Header, Mark } from '../../../src/core/boil/entries.ts';
import { explain } from '../../../src/core/boil/explain.ts';
import { learntOf } from '../../../src/core/boil/learnt.ts';
import { boilView } from '../../../src/core/boil/view.ts';
import { boilingAt, foldAll, inOrder, lines, mark, onePot, readingAt, tarnHollow } from './tarn-hollow.ts';

const MINUTE_MS = 60_000;
/** ISO 2533 and IF97 at the sea: what water boils at there. */
const WATER_C = 99.97;
const byHand = (over: Partial<Header> = {}): Header =>
  tarnHollow({ ports: [], probes: [], pans: [{ id: 'p1', name: 'Back pot', sap: 'maple' }], ...over });
const at = (minutes: number, what: Mark): Entry => mark(minutes * MINUTE_MS, what);
const read = (minutes: number, celsius: number): Entry => at(minutes, { kind: 'reading', pan: 'p1', celsius });
const check = (minutes: number, celsius: number, more: Partial<Mark> = {}): Entry =>
  at(minutes, { kind: 'water-check', celsius, ...more } as Mark);
const after = (entries: Entry[], minutes: number, header = byHand()) => {
  const { state } = foldAll(header, entries, minutes * MINUTE_MS);
  const t = minutes * MINUTE_MS;
  return { state, now: readingAt(state, 'p1', t), view: boilView(state, t) };
};

test('a check of the thermometer in the hand corrects what it reads after, and what it read before', () => {
  const tooHighC = 1.5;
  const thick = boilingAt(60, 'maple') + tooHighC;
  const { now: unchecked, state: before } = after([read(2, thick)], 3);
  expect(before.around['p1']!.waterSigmaC).toBeGreaterThan(0.8);
  for (const entries of [
    [check(1, WATER_C + tooHighC), read(2, thick)],
    [read(1.5, thick), check(2, WATER_C + tooHighC)],
  ]) {
    const { now, state } = after(entries, 3);
    // Nine parts of ten: 0.8 and 0.3 °C against a dial read to 0.3 °C.
    expect(now.temperature_c!).toBeLessThan(thick - 0.75 * tooHighC);
    expect(Math.abs(now.brix! - 60)).toBeLessThan(3);
    expect(Math.abs(unchecked.brix! - 60)).toBeGreaterThan(5);
    expect(state.around['p1']!.waterSigmaC).toBeLessThan(0.35);
  }
});

test('a reading is told with what it was taken for, and that stays as it was', () => {
  const { view, now } = after([check(1, WATER_C + 1.5), read(2, 103)], 3);
  expect(view.marks.map(({ takenC }) => takenC)).toEqual([null, now.temperature_c]);
  expect(view.marks[1]!.takenC).toBeLessThan(102);
  const later = after([read(1, 103), check(2, WATER_C + 1.5)], 3);
  expect(later.view.marks[0]!.takenC).toBeCloseTo(103, 6);
  expect(later.now.temperature_c).toBeLessThan(102);
});

test('where not even the height is known, a check alone tells how hot water boils, about as well as the thermometer', () => {
  const { state, view } = after([check(1, 97)], 2, byHand({ site: {} }));
  expect(state.water.celsius).toBeCloseTo(97, 0);
  expect(view.water.from).toMatchObject({ kind: 'boiling-check' });
  expect(state.water.sigmaC).toBeGreaterThan(0.7);
});

test('what was said of a check that was left out is let go when it is taken back, and when another counts', () => {
  const wild = check(2, 88, { id: 'w' });
  const said = (entries: Entry[]) => after([check(1, WATER_C), ...entries], 5).view.notices;
  expect(said([wild])).toEqual([expect.stringContaining('88.0 °C is far from where water boils here')]);
  expect(said([wild, at(3, { kind: 'withdraw', id: 'w' })])).toEqual([]);
  expect(said([wild, check(3, WATER_C + 0.1)])).toEqual([]);
  expect(said([wild, check(3, 85)])).toHaveLength(2);
  expect(said([wild, read(3, 103)])).toHaveLength(1);
});

test('a check taken back leaves what was known before it', () => {
  const thick = boilingAt(60, 'maple') + 1.5;
  const taken = at(3, { kind: 'withdraw', id: 'c' });
  const { now } = after([check(1, WATER_C + 1.5, { id: 'c' }), read(2, thick), taken], 4);
  const never = after([read(2, thick)], 4).now;
  expect(now.temperature_c).toBe(never.temperature_c);
  // The pan's belief was taken there and back on a curve that bends.
  expect(Math.abs(now.brix! - never.brix!)).toBeLessThan(1);
  expect(now.brix_high! - now.brix_low!).toBeGreaterThan(never.brix_high! - never.brix_low!);
});

test('a check keeps what it changed in what the thermometer counts for', () => {
  const { view } = after([read(1, boilingAt(20, 'maple')), check(2, WATER_C + 1)], 3);
  const [correction] = view.marks.at(-1)!.corrections;
  expect(correction!.after.addedC! - correction!.before.addedC!).toBeLessThan(-0.5);
  // A reading alone teaches no thermometer.
  expect(after([read(1, boilingAt(20, 'maple'))], 3).view.marks.at(-1)!.corrections).toEqual([]);
});

test('a check that is far from where water boils acts on nothing until it is said again', () => {
  const far = check(1, WATER_C - 4);
  const once = after([far], 2);
  expect(once.view.marks[0]).toMatchObject({ questioned: true });
  expect(once.state.notices.map(({ sentence }) => sentence)).toEqual([
    'A check in boiling water needs plain water: 95.97 °C is far from where water boils here, so it was left out. Take the thermometer out of the pan first.',
  ]);
  expect(after([far, check(2, WATER_C - 4)], 3).view.marks[1]).toMatchObject({ questioned: false });
  expect(after([check(1, WATER_C - 4, { sure: true })], 3).view.marks[0]).toMatchObject({ questioned: false });
});

test('where not even the height is known, a check that no boiling water shows is asked about all the same', () => {
  const questioned = (celsius: number, ...more: Entry[]): unknown =>
    after([check(1, celsius), ...more], 3, byHand({ site: {} })).view.marks.at(-1)?.questioned;
  // 100 °F, and what syrup is done at.
  expect([37.8, 77, 106].map((celsius) => questioned(celsius))).toEqual([true, true, true]);
  expect([88, 93, 98, 103].map((celsius) => questioned(celsius))).toEqual([false, false, false, false]);
  expect(questioned(37.8, check(2, 37.8))).toBe(false);
});

test('a check that is what the thermometer read in a thick pan is asked about, but only where more than it says so', () => {
  const thick = boilingAt(40, 'maple');
  const told = at(0, { kind: 'top-up', pan: 'p1', litres: 10, brix: 40, celsius: 95 });
  const doubt = (entries: Entry[]): unknown => after(entries, 10).view.marks.at(-1)?.doubt;
  expect(doubt([told, read(5, thick), check(8, thick + 0.1)])).toMatch(
    /this is what the thermometer reads in its pan/u,
  );
  expect(doubt([told, read(5, thick), check(8, WATER_C + 0.1)])).toBeNull();
  // A thermometer that shows too much does so in both, and nobody told of the pan.
  expect(doubt([read(5, thick), check(8, thick)])).toBeNull();
});

test('beside a probe, what the check taught goes for what the hand reads there', () => {
  const hot = boilingAt(55, 'maple');
  const tooHighC = 1.2;
  const heard = lines(0, 8 * MINUTE_MS, { T1: () => hot });
  const brixAfter = (...entries: Entry[]): number => after(inOrder(heard, entries), 8, onePot()).now.brix!;
  const checks = at(0.5, { kind: 'water-check', probe: 'A/1', celsius: WATER_C });
  const right = brixAfter(checks);
  const hand = [3, 4, 5].map((minutes) => read(minutes, hot + tooHighC));
  expect(Math.abs(brixAfter(checks, check(1, WATER_C + tooHighC), ...hand) - right)).toBeLessThan(0.3);
});

test('a check of the hand stands for what a pan with a probe had supposed of that thermometer', () => {
  const hot = boilingAt(55, 'maple');
  const width = (...entries: Entry[]): number => {
    // The probe was silent from the start on.
    const { brix_low: low, brix_high: high } = after(entries, 4, onePot()).now;
    return high! - low!;
  };
  expect(width(read(1, hot), check(2, WATER_C), read(3.5, hot))).toBeLessThan(
    0.75 * width(read(1, hot), read(3.5, hot)),
  );
});

test('it is what would make a reading by hand surer, and no more once it was made', () => {
  const readings = [20, 25, 30].map((minutes) => read(minutes, boilingAt(60 + minutes / 10, 'maple')));
  const filled = at(0, { kind: 'top-up', pan: 'p1', litres: 20, brix: 2 });
  const asks = (...more: Entry[]): unknown => {
    const { state } = after(inOrder([filled, ...readings], more), 31);
    return explain(state, 'p1', 'temperature', 31 * MINUTE_MS)?.surer;
  };
  expect(asks()).toBe('water-check');
  expect(asks(check(1, WATER_C))).not.toBe('water-check');
});

test('what the thermometer in the hand was off is not kept for the next boil: it may be another then', () => {
  expect(learntOf(after([check(1, WATER_C + 1)], 2).state)).toBeNull();
});
