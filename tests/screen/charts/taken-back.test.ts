// A reading that was taken back stands in no curve, and one of the same number that was noted later does.
import { expect, test } from 'vitest';
import { takenBackOf, withoutTakenBack } from '../../../src/screen/charts/taken-back.ts';
import type { Mark, Now } from '../../../src/screen/client/types.ts';

const noted = (t: number, mark: Mark, more: Partial<Now['marks'][number]> = {}): Now['marks'][number] => ({
  t,
  at: t,
  mark,
  withdrawn: false,
  questioned: false,
  doubt: null,
  corrections: [],
  cameTo: null,
  takenC: null,
  ...more,
});
const marks = [
  noted(10_000, { kind: 'reading', pan: 'p1', celsius: 101, id: 'a' }, { takenC: 100.9 }),
  noted(20_000, { kind: 'reading', pan: 'p1', celsius: 130, id: 'b' }, { takenC: 129.9, withdrawn: true }),
  noted(60_000, { kind: 'reading', pan: 'p1', celsius: 130, id: 'c' }, { takenC: 129.9 }),
];
const rows = [
  [10_000, 100.9, 100.9],
  [20_000, 100.9, 129.9],
  [22_000, 129.9, 129.9],
  [30_000, 100.9, 129.9],
  [32_000, 100.9, 100.9],
  [60_000, 129.9, 129.9],
] as const;
const none = rows.map(() => null);
const curve = {
  t: rows.map(([t]) => t),
  low: rows.map(([, low]) => low),
  high: rows.map(([, , high]) => high),
  water: none,
  finish: none,
  scorch: none,
};

test('what only a reading that was taken back showed is left out', () => {
  const taken = takenBackOf({ marks }, 'p1');
  expect(taken).toEqual([{ from: 20_000, to: 60_000, celsius: 129.9 }]);
  const left = withoutTakenBack(curve, taken);
  expect(left.t).toEqual([10_000, 32_000, 60_000]);
  expect(left.high).toEqual([100.9, 100.9, 129.9]);
  expect(left.water).toHaveLength(3);
});

test('the same number twice, of which one was taken back, stays', () => {
  const twice = [marks[0]!, noted(20_000, marks[0]!.mark, { takenC: 100.9, withdrawn: true })];
  expect(takenBackOf({ marks: twice }, 'p1')).toEqual([]);
});

test('nothing taken back leaves the curve as it is', () => {
  expect(takenBackOf({ marks }, 'p2')).toEqual([]);
  expect(withoutTakenBack(curve, [])).toBe(curve);
});
