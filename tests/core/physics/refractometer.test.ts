// Checks a refractometer's temperature correction against the OIV table, and where it is not to be trusted.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { invertCorrectionBrix, trueBrixFromRefractometer } from '../../../src/core/physics/refractometer.ts';
import { readTable } from './published-table.ts';

const plain = (readingBrix: number, sampleCelsius: number, referenceCelsius = 20): number | null =>
  trueBrixFromRefractometer({ readingBrix, sampleCelsius, referenceCelsius, compensated: false });
const compensated = (readingBrix: number, sampleCelsius: number): number | null =>
  trueBrixFromRefractometer({ readingBrix, sampleCelsius, referenceCelsius: 20, compensated: true });

test('OIV-MA-AS2-02 Table I, 10 to 16 °C and 10 to 75 °Bx, within 0.0065 °Bx (printed to 0.01)', () => {
  for (const row of readTable('refractometer_temp_correction_oiv')) {
    for (let brix = 10; brix <= 75; brix += 5) {
      const correction = (plain(brix, row.number('T_C')) ?? NaN) - brix;
      expect(Math.abs(correction - row.number(`B${brix}`))).toBeLessThan(0.0065);
    }
  }
});

test('its row of 17 °C, which the fit never saw: −0.20 at 10 °Bx to −0.23 at 70 °Bx, within 0.01 °Bx', () => {
  const row = [-0.2, -0.2, -0.21, -0.21, -0.22, -0.22, -0.23, -0.23, -0.23, -0.23, -0.23, -0.23, -0.23];
  for (const [index, printed] of row.entries()) {
    const brix = 10 + 5 * index;
    expect(Math.abs((plain(brix, 17) ?? NaN) - brix - printed)).toBeLessThan(0.01);
  }
});

test('at 30 °C: +0.76 to +0.81 °Bx in the international table (from memory), within 0.02', () => {
  for (const brix of [10, 30, 50, 66]) {
    const correction = (plain(brix, 30) ?? NaN) - brix;
    expect(correction).toBeGreaterThan(0.74);
    expect(correction).toBeLessThan(0.83);
  }
});

test('one that was made for another temperature is right at that one', () => {
  expect(plain(66, 17, 17)).toBe(66);
  const moved = (plain(66, 25, 15) ?? NaN) - 66;
  const apart = (plain(66, 25) ?? NaN) - (plain(66, 15) ?? NaN);
  expect(moved).toBeCloseTo(apart, 9);
});

test('a compensated one is taken at its word, and hot syrup is not known to either', () => {
  expect(compensated(66, 27)).toBe(66);
  expect(compensated(66, 80)).toBeNull();
  expect(plain(66, 80)).toBeNull();
  expect(plain(81, 20)).toBeNull();
});

test('invert sugar: 66 °Bx of nothing but hexoses may be 1.45 °Bx more (AOAC 932.14, from memory), birch 1.3', () => {
  expect(invertCorrectionBrix(66, 1)).toBeCloseTo(1.452, 9);
  expect(invertCorrectionBrix(66, 0.88)).toBeCloseTo(1.28, 2);
  expect(invertCorrectionBrix(66, 0)).toBe(0);
});

test('it stays near its reading over the declared range', () => {
  const reading = fc.double({ min: 0, max: 80, noNaN: true });
  fc.assert(
    fc.property(reading, fc.double({ min: 10, max: 30, noNaN: true }), (brix, celsius) => {
      expect(Math.abs((plain(brix, celsius) ?? NaN) - brix)).toBeLessThan(0.9);
    }),
  );
});

test('whatever comes in, the answer is a number in range or not known, never NaN', () => {
  fc.assert(
    fc.property(fc.double(), fc.double(), fc.double(), fc.boolean(), (readingBrix, sample, reference, compensated) => {
      const read = { readingBrix, sampleCelsius: sample, referenceCelsius: reference, compensated };
      const answer = trueBrixFromRefractometer(read);
      expect(answer === null || (answer >= 0 && answer <= 81)).toBe(true);
    }),
  );
});
