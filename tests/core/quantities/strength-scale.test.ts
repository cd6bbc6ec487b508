// Checks that a strength comes back from whatever scale it was read on.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { brixFromStrength, strengthFromBrix } from '../../../src/core/quantities/strength-scale.ts';

const scales = ['brix', 'baume', 'sg'] as const;

test('there and back is the same on every scale, and stronger is more', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 84, noNaN: true }), fc.constantFrom(...scales), (brix, scale) => {
      const value = strengthFromBrix(brix, scale) ?? NaN;
      expect(Math.abs((brixFromStrength(value, scale) ?? NaN) - brix)).toBeLessThan(1e-6);
      expect(strengthFromBrix(brix + 0.1, scale)).toBeGreaterThan(value);
    }),
  );
});

test('36 °Bé is 66.9 °Bx in whole degrees (Vermont rule), and what is no strength is not known', () => {
  expect(Math.abs((brixFromStrength(36, 'baume') ?? NaN) - 66.9)).toBeLessThan(0.3);
  for (const scale of scales)
    expect([strengthFromBrix(NaN, scale), brixFromStrength(NaN, scale)]).toEqual([null, null]);
  expect(brixFromStrength(2, 'sg')).toBeNull();
});
