// Checks that medians and slopes are what they should be and that wild values do not move them.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  median,
  medianOfLast,
  neighbourNoise,
  robustSlope,
  theilSenSlope,
} from '../../../src/core/pan/robust-statistics.ts';
import { nextNormal, randomStream } from '../../../src/core/simulation/random.ts';

test('the median is the middle value, or the mean of the two middle ones', () => {
  expect(median([10, 9, 100])).toBe(10);
  expect(median([4, 1, 3, 2])).toBe(2.5);
  expect(median([])).toBeNaN();
});

test('the median leaves its list as it was', () => {
  const values = [3, 1, 2];
  median(values);
  expect(values).toEqual([3, 1, 2]);
});

test('the median of the last few leaves the others out, and of fewer takes all', () => {
  expect(medianOfLast([900, 1, 3, 2], 3)).toBe(2);
  expect(medianOfLast([4, 1], 5)).toBe(2.5);
  expect(medianOfLast([1], 0)).toBeNaN();
});

test('a long list has its median as a short one', () => {
  const values = Array.from({ length: 101 }, (_, index) => (index * 37) % 101);
  expect(median(values)).toBe(50);
  expect(medianOfLast(values, 47)).toBe([...values.slice(-47)].sort((a, b) => a - b)[23]);
});

test('fewer than half wild values never carry the median outside the true ones', () => {
  const celsius = fc.double({ min: 97, max: 99, noNaN: true });
  const wild = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(fc.array(celsius, { minLength: 5, maxLength: 31 }), fc.array(wild, { maxLength: 4 }), (good, bad) => {
      const found = median([...bad, ...good]);
      expect(found).toBeGreaterThanOrEqual(Math.min(...good));
      expect(found).toBeLessThanOrEqual(Math.max(...good));
    }),
  );
});

test.each([0, 0.05, -0.3])('the noise of normal readings is found on a ramp of %d °C a reading', (step) => {
  const stream = randomStream(7, 'noise');
  const values = Array.from({ length: 2000 }, (_, index) => 98 + step * index + 0.2 * nextNormal(stream));
  expect(Math.abs(neighbourNoise(values) / 0.2 - 1)).toBeLessThan(0.06);
});

test('two wild readings in thirty hardly change the noise', () => {
  const stream = randomStream(8, 'noise');
  const values = Array.from({ length: 31 }, () => 98 + 0.2 * nextNormal(stream));
  const clean = neighbourNoise(values);
  values[10] = 158;
  values[20] = 38;
  expect(neighbourNoise(values) / clean).toBeLessThan(1.7);
  expect(neighbourNoise([98, 98.1, 98])).toBeNaN();
});

test('the robust slope keeps to the line through wild values, and sees a climb in coarse steps', () => {
  const times = Array.from({ length: 24 }, (_, index) => index * 5000);
  const climb = times.map((t) => 98 + t * 2e-6);
  const wild = climb.map((value, index) => (index % 6 === 0 ? value + 40 : value));
  const coarse = climb.map((value) => Math.round(value * 8) / 8);
  expect(Math.abs(robustSlope(times, wild, 0.02) / 2e-6 - 1)).toBeLessThan(0.01);
  expect(Math.abs(robustSlope(times, coarse, 0.02) / 2e-6 - 1)).toBeLessThan(0.4);
  expect(robustSlope([5, 5], [1, 2], 0.02)).toBeNaN();
});

test('a straight line gives its slope, and a quarter of wild values does not bend it', () => {
  const times = Array.from({ length: 40 }, (_, index) => index * 5000);
  const values = times.map((t, index) => (index % 4 === 0 ? (index % 8 === 0 ? 160 : 30) : 98 + t * 1e-5));
  expect(
    theilSenSlope(
      times,
      times.map((t) => 98 + t * 1e-5),
    ),
  ).toBeCloseTo(1e-5, 12);
  expect(Math.abs(theilSenSlope(times, values) / 1e-5 - 1)).toBeLessThan(0.05);
  expect(theilSenSlope([5, 5], [1, 2])).toBeNaN();
});
