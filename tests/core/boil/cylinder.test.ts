// Checks how long a cylinder lasts: by a burner's nominal power, by two notes of what is left, and by the flame.
import { expect, test } from 'vitest';
import { type CylinderLeft, cylinderLeft } from '../../../src/core/boil/cylinder.ts';
import type { Mark } from '../../../src/core/boil/entries.ts';
import type { KeptMark } from '../../../src/core/boil/state.ts';

const noted = (minute: number, mark: Mark, withdrawn = false): KeptMark => ({
  t: minute * 60_000,
  at: minute * 60_000,
  mark,
  withdrawn,
  changes: [],
  evidence: null,
  questioned: false,
  doubted: false,
  wild: false,
  doubt: null,
  remark: null,
  refused: null,
  weighed: false,
  seenAs: null,
  countsAs: null,
  swell: null,
  reminded: false,
  corrections: [],
  takenC: null,
});
const fuel = (minute: number, kg: number): KeptMark => noted(minute, { kind: 'fuel', pan: 'p1', kg });
const flame = (minute: number, level: number): KeptMark => noted(minute, { kind: 'flame', pan: 'p1', level });

const at = (minute: number, marks: KeptMark[], powerW: number | null = 46_350): CylinderLeft | null =>
  cylinderLeft(marks, 'p1', powerW, minute * 60_000);

test('46.35 kW of propane burn a gram a second (46.35 MJ/kg, a dealer’s data sheet)', () => {
  const left = at(20, [fuel(10, 5)]);
  expect(left?.kg).toBeCloseTo(5 - 0.6, 9);
  expect(left?.seconds).toBeCloseTo(4400, 6);
});

test('a lower flame burns less, none burns nothing, and a flame from before counts', () => {
  expect(at(20, [flame(5, 0.5), fuel(10, 5)])?.kg).toBeCloseTo(4.7, 9);
  expect(at(20, [fuel(10, 5), flame(15, 0)])).toEqual({ kg: expect.closeTo(4.7, 9) as number, seconds: Infinity });
});

test('two notes of one cylinder tell more than the plate on the burner', () => {
  const left = at(60, [fuel(0, 5), fuel(60, 3.2)]);
  expect(left?.seconds).toBeCloseTo(3.2 / (1.8 / 3600), 6);
  expect(at(60, [fuel(0, 5), fuel(60, 3.2)], null)?.seconds).toBeCloseTo(6400, 6);
});

test('a fresh cylinder is no consumption', () => {
  expect(at(70, [fuel(0, 2), fuel(60, 11)])?.kg).toBeCloseTo(11 - 0.6, 9);
});

test('empty is 0, never less; what nobody said, or took back, is not known', () => {
  expect(at(600, [fuel(0, 1)])).toEqual({ kg: 0, seconds: 0 });
  expect(at(10, [])).toBeNull();
  expect(at(10, [fuel(0, 1)], null)).toBeNull();
  expect(at(10, [noted(0, { kind: 'fuel', pan: 'p1', kg: 1 }, true)])).toBeNull();
});
