// Checks the normal quantile against the distribution's own published points.
import { expect, test } from 'vitest';
import { normalQuantile, Z80 } from '../../../src/core/quantities/spread.ts';

// Points of the standard normal distribution as every table has them (value from memory).
test.each([
  [0.5, 0],
  [0.8, 0.8416],
  [0.9, 1.2816],
  [0.95, 1.6449],
  [0.975, 1.96],
  [0.05, -1.6449],
])('a normal value stays under its quantile with probability %d', (probability, sigmas) => {
  expect(Math.abs(normalQuantile(probability) - sigmas)).toBeLessThan(5e-4);
});

test('the middle 80 % ends at its tenth and nine tenths', () => {
  expect(normalQuantile(0.9)).toBeCloseTo(Z80, 3);
});
