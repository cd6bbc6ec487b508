// Checks uncertainties carried through calculations, against a worked example and against what must hold anyway.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Measured } from '../../../src/core/quantities/measured.ts';
import {
  combined,
  exactly,
  measured,
  middle80,
  plus,
  through,
  times,
  weightedMean,
} from '../../../src/core/quantities/propagation.ts';

const of = (value: number, sigma: number, id: string): Measured =>
  measured(value, sigma, { kind: 'probe', at: 0, of: id });

test('end gauge, JCGM 100 example H.1 (numbers from memory): 50.000838 mm with 32 nm, first order', () => {
  // Lengths in nm: the standard, the comparator's difference, then expansion and temperatures with their differences.
  const parts = [
    of(50_000_623, 25, 'standard'),
    of(215, 9.7, 'comparator'),
    of(0, 0.58e-6, 'difference of expansion'),
    of(11.5e-6, 1.2e-6, 'expansion'),
    of(-0.1, 0.41, 'temperature'),
    of(0, 0.029, 'difference of temperature'),
  ];
  const gauge = combined(parts, (v) => v[0]! + v[1]! - v[0]! * (v[2]! * v[4]! + v[3]! * v[5]!));
  expect(gauge?.value).toBe(50_000_838);
  expect(Math.abs((gauge?.sigma ?? NaN) - 32)).toBeLessThan(0.5);
  const brings = gauge?.origins.map(({ of: part, sigma }) => [part, Math.abs(sigma)] as const) ?? [];
  for (const [index, nanometres] of [25, 9.7, 2.9, 0, 0, 16.6].entries()) {
    expect(Math.abs((brings[index]?.[1] ?? NaN) - nanometres), brings[index]?.[0]).toBeLessThan(0.1);
  }
});

test('independent parts add by their squares, and each keeps its own', () => {
  const sum = plus(of(100, 3, 'a'), times(of(5, 4, 'b'), -1));
  expect(sum.value).toBe(95);
  expect(sum.sigma).toBe(5);
  expect(sum.origins.map(({ sigma }) => sigma)).toEqual([3, -4]);
});

test('what rests on the same probe cancels in a difference and doubles in a sum', () => {
  const pan = of(104, 0.5, 'A/T1');
  const water = of(99.8, 0.5, 'A/T1');
  expect(plus(pan, times(water, -1)).sigma).toBe(0);
  expect(plus(pan, water).sigma).toBe(1);
  const other = plus(water, of(0, 0.1, 'weather'));
  expect(plus(pan, times(other, -1)).sigma).toBeCloseTo(0.1, 12);
});

test('two assumptions are independent, however alike they look', () => {
  const assumed = measured(1, 3, { kind: 'assumed', at: null });
  expect(plus(assumed, { ...assumed, sigma: 4, origins: [{ kind: 'assumed', at: null, sigma: 4 }] }).sigma).toBe(5);
});

test('a function stretches the uncertainty by its slope, given or found', () => {
  const found = through(of(3, 0.01, 'a'), (x) => x * x);
  expect(found?.value).toBe(9);
  expect(found?.sigma).toBeCloseTo(0.06, 9);
  expect(through(of(3, 0.01, 'a'), (x) => x * x, 6)?.sigma).toBeCloseTo(0.06, 12);
  expect(through(exactly(3), (x) => x * x)).toEqual(exactly(9));
});

test('at the end of a range the slope is taken on the side that is there; beyond it nothing is known', () => {
  const root = (x: number): number | null => (x >= 0 ? 2 * x : null);
  expect(through(of(0, 0.1, 'a'), root)?.sigma).toBeCloseTo(0.2, 12);
  expect(through(of(-1, 0.1, 'a'), root)).toBeNull();
  expect(through(of(1, 0.1, 'a'), (x) => (x === 1 ? 1 : null))).toBeNull();
  expect(through(of(1, 0.1, 'a'), () => NaN)).toBeNull();
});

test('two readings weigh by 1/σ²: 10 ± 1 and 13 ± 2 are 10.6 ± 0.894', () => {
  const mean = weightedMean([of(10, 1, 'a'), of(13, 2, 'b')]);
  expect(mean?.value).toBeCloseTo(10.6, 12);
  expect(mean?.sigma).toBeCloseTo(Math.sqrt(0.8), 12);
  expect(weightedMean([])).toBeNull();
  expect(weightedMean([of(10, 1, 'a'), exactly(12)])?.value).toBe(12);
});

test('two readings of one thing that are wrong together are no better than one', () => {
  expect(weightedMean([of(10, 1, 'a'), of(11, 1, 'a')])?.sigma).toBeCloseTo(1, 12);
});

test('eight of ten: 1.2816 standard uncertainties either side', () => {
  const { low, high } = middle80(of(66, 0.5, 'a'));
  expect(low).toBeCloseTo(65.3592, 9);
  expect(high).toBeCloseTo(66.6408, 9);
});

const sigma = fc.double({ min: 0, max: 100, noNaN: true });
const value = fc.double({ min: -1e3, max: 1e3, noNaN: true });

test('sums do not depend on their order, and no uncertainty is lost or made', () => {
  fc.assert(
    fc.property(value, sigma, value, sigma, fc.constantFrom('a', 'b'), (x, u, y, v, id) => {
      const [one, other] = [of(x, u, 'a'), of(y, v, id)];
      const [there, back] = [plus(one, other), plus(other, one)];
      expect(there.value).toBe(back.value);
      expect(there.sigma).toBeCloseTo(back.sigma, 9);
      expect(there.sigma).toBeCloseTo(Math.hypot(...there.origins.map((origin) => origin.sigma)), 6);
      expect(there.sigma).toBeLessThanOrEqual(u + v + 1e-9);
    }),
  );
});

test('a straight line in several values is carried exactly', () => {
  fc.assert(
    fc.property(value, sigma, value, sigma, (x, u, y, v) => {
      const whole = combined([of(x, u, 'a'), of(y, v, 'b')], ([a, b]) => 3 * a! - 2 * b! + 7);
      expect(whole?.value).toBeCloseTo(3 * x - 2 * y + 7, 9);
      expect(Math.abs((whole?.sigma ?? NaN) - Math.hypot(3 * u, 2 * v))).toBeLessThan(1e-5 * (1 + u + v));
    }),
  );
});
