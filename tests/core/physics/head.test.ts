// Checks what the weight of the liquid above does to the boiling point, and that nonsense is not known.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { headRiseC, headSigmaC } from '../../../src/core/physics/head.ts';

test('1 cm of 66 °Bx syrup at sea level is 1.25 hPa and 0.035 °C: computed apart from density and the saturation line', () => {
  expect(Math.abs((headRiseC(10, 66, 1013.25) ?? NaN) - 1.25 * 0.02765)).toBeLessThan(0.0001);
});

test('10 cm of water near 100 °C is 9.4 hPa and 0.26 °C: by hand, 958.4 kg/m³ and 0.0276 °C/hPa', () => {
  expect(Math.abs((headRiseC(100, 0, 1013.25) ?? NaN) - 9.4 * 0.0276)).toBeLessThan(0.003);
});

test('a tip anywhere in the liquid: the whole over the root of 12, and 50 mm where nobody knows the depth', () => {
  expect(headSigmaC(40, 60, 950)).toBeCloseTo((headRiseC(40, 60, 950) ?? NaN) / 3.4641, 6);
  expect(headSigmaC(null, 60, 950)).toBe(headSigmaC(50, 60, 950));
  expect(headSigmaC(0, 60, 950)).toBe(0);
});

test('deeper, stronger and thinner air each make it more', () => {
  const anyDepth = fc.double({ min: 0.1, max: 1900, noNaN: true });
  fc.assert(
    fc.property(
      anyDepth,
      fc.double({ min: 0, max: 79, noNaN: true }),
      fc.double({ min: 500, max: 1040, noNaN: true }),
      (mm, brix, hpa) => {
        const here = headRiseC(mm, brix, hpa) ?? NaN;
        expect(headRiseC(mm + 1, brix, hpa)).toBeGreaterThan(here);
        expect(headRiseC(mm, brix + 1, hpa)).toBeGreaterThan(here);
        expect(headRiseC(mm, brix, hpa + 10)).toBeLessThan(here);
      },
    ),
  );
});

test('whatever comes in, it is 0 or more or not known, never NaN', () => {
  fc.assert(
    fc.property(fc.double(), fc.double(), fc.double(), (mm, brix, hpa) => {
      for (const found of [headRiseC(mm, brix, hpa), headRiseC(mm, 60, 1000), headSigmaC(30, brix, hpa)])
        expect(found === null || found >= 0).toBe(true);
    }),
  );
  for (const mm of [-1, 2001, NaN, Infinity]) expect(headRiseC(mm, 60, 1000)).toBeNull();
  for (const value of [-1, NaN, Infinity]) {
    expect(headRiseC(10, value, 1000)).toBeNull();
    expect(headSigmaC(10, 60, value)).toBeNull();
  }
});
