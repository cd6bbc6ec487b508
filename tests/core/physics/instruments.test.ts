// Checks what a noted reading is taken to mean when half of it was left out, and how sure it is.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type NotedReading, readInstrument } from '../../../src/core/physics/instruments.ts';
import { sugarShares } from '../../../src/core/physics/sugar-shares.ts';

const maple = sugarShares('maple');
const birch = sugarShares('birch');
const brix = (noted: NotedReading): number => readInstrument(noted, maple)?.brix ?? NaN;
const sigma = (noted: NotedReading, shares = maple): number => readInstrument(noted, shares)?.sigma ?? NaN;

test('a reading without more is a hydrometer of 60 °F in a sample of 60 °F', () => {
  expect(brix({ brix: 66.9 })).toBeCloseTo(66.9, 6);
  expect(brix({ baume: 36.12 })).toBeCloseTo(66.9, 1); // ICUMSA, worked out apart
  expect(brix({ sg: 1.3317 })).toBeCloseTo(66.9, 1);
});

test('a hot reading goes through the float on every scale: hot marks of the Vermont-calibrated sheet at 211 °F', () => {
  expect(Math.abs(brix({ brix: 59.1, celsius: 99.44 }) - 66.9)).toBeLessThan(0.15);
  expect(Math.abs(brix({ baume: 32.1, celsius: 99.44 }) - 66.9)).toBeLessThan(0.15);
});

test('right off the boil at 104 °C a float still tells', () => {
  expect(brix({ brix: 58.53, celsius: 103.89 })).toBeCloseTo(66.9, 1); // 219 °F, worked out apart
});

test('a 20 °C stem is right at 20 °C', () => {
  expect(brix({ brix: 66, reference_celsius: 20, celsius: 20 })).toBeCloseTo(66, 6);
});

test('a refractometer: OIV row of 15 °C takes 0.38 off at 65 °Bx, a compensated one stands', () => {
  expect(brix({ brix: 65, instrument: 'refractometer', celsius: 15 })).toBeCloseTo(64.62, 2);
  expect(brix({ brix: 65, instrument: 'refractometer', celsius: 15, compensated: true })).toBeCloseTo(65, 6);
  expect(brix({ brix: 65, instrument: 'refractometer' })).toBeCloseTo(65, 6);
});

test('nothing read, hot syrup on glass, and readings off the scale mean nothing', () => {
  expect(readInstrument({}, maple)).toBeNull();
  expect(readInstrument({ brix: 66, instrument: 'refractometer', celsius: 80 }, maple)).toBeNull();
  for (const noted of [{ brix: 90 }, { baume: 150 }, { sg: 2 }, { brix: NaN }, { brix: 66, celsius: 120 }]) {
    expect(readInstrument(noted, maple)).toBeNull();
  }
});

test('the uncertainty is a few tenths of a °Bx, and more for each thing that is not known', () => {
  const cold = sigma({ brix: 66, celsius: 15.56 });
  expect(cold).toBeGreaterThan(0.3);
  expect(cold).toBeLessThan(0.36);
  expect(sigma({ brix: 66 })).toBeGreaterThan(cold + 0.1);
  expect(sigma({ brix: 59, celsius: 99 })).toBeGreaterThan(cold + 0.05);
  const glass = { brix: 66, instrument: 'refractometer' as const };
  expect(sigma({ ...glass, celsius: 20 })).toBeLessThan(sigma(glass));
  expect(sigma({ ...glass, compensated: true })).toBeLessThan(sigma(glass));
  const itself = (celsius: number): number => sigma({ ...glass, compensated: true, celsius }) ** 2;
  expect(Math.sqrt(itself(28) - itself(20))).toBeCloseTo(0.2, 9); // 0.2 to 0.3 °Bx at 10 K (common practice)
  const halfPerBaume = sigma({ baume: 35.67, celsius: 15.56 }) / cold;
  expect(halfPerBaume).toBeGreaterThan(0.9); // a quarter °Bé is half a °Bx
  expect(halfPerBaume).toBeLessThan(1.1);
});

test('a hot chart and the float part by 0.33 °Bx at most: 2 σ of a hot reading hold every point of the chart', () => {
  expect(2 * sigma({ brix: 62.8, celsius: 60 })).toBeGreaterThan(0.33);
});

test('glucose and fructose widen a refractometer by the unverified correction and shift nothing', () => {
  const glass = { brix: 66, instrument: 'refractometer' as const, celsius: 20 };
  expect(readInstrument(glass, birch)?.brix).toBe(readInstrument(glass, maple)?.brix);
  expect(sigma(glass, birch)).toBeGreaterThan(1.2);
  expect(sigma(glass, birch)).toBeLessThan(1.5);
  expect(sigma(glass, { ...birch, others: 0.1 })).toBeLessThan(sigma(glass, birch) - 0.05); // acids and minerals are no sugar
  expect(sigma({ brix: 66 }, birch)).toBe(sigma({ brix: 66 }, maple));
});

const noted: fc.Arbitrary<NotedReading> = fc.record(
  {
    brix: fc.double(),
    baume: fc.double({ min: -10, max: 160 }),
    sg: fc.double({ min: 0, max: 2 }),
    celsius: fc.double({ min: -20, max: 130 }),
    instrument: fc.constantFrom('hydrometer' as const, 'refractometer' as const),
    reference_celsius: fc.double({ min: 0, max: 60 }),
    compensated: fc.boolean(),
  },
  { requiredKeys: [] },
);

test('whatever was noted, it means a strength with an uncertainty, or nothing', () => {
  fc.assert(
    fc.property(noted, (reading) => {
      const read = readInstrument(reading, birch);
      expect(read === null || (read.brix >= 0 && read.brix <= 85 && read.sigma > 0.1 && read.sigma < 5)).toBe(true);
    }),
  );
});
