// Checks syrup from sap against the balance worked out apart, the trade's rules and its worked examples.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { yieldOf } from '../../../src/core/physics/yield.ts';

const ratio = (brixSap: number, brixSyrup: number): number => 1 / (yieldOf(1, brixSap, brixSyrup)?.litres ?? NaN);

test('sap over syrup by volume: the exact balance as worked out apart, K/x − c, within 0.02 %', () => {
  for (const [brixSyrup, atOne, atTwo, atThree, atEight, atTwelve] of [
    [65.5, 86.26, 42.96, 28.53, 10.49, 6.88],
    [66.0, 87.12, 43.39, 28.81, 10.6, 6.95],
    [66.9, 88.67, 44.17, 29.33, 10.78, 7.08],
    [67.0, 88.85, 44.25, 29.39, 10.81, 7.09],
    [68.0, 90.59, 45.12, 29.96, 11.02, 7.23],
  ] as const) {
    for (const [brixSap, printed] of [
      [1, atOne],
      [2, atTwo],
      [3, atThree],
      [8, atEight],
      [12, atTwelve],
    ] as const) {
      expect(Math.abs(ratio(brixSap, brixSyrup) - printed)).toBeLessThan(0.0055 + 2e-4 * printed);
    }
  }
});

test('rule of 86 (C. H. Jones): worked by Ohio State Extension 2012, 2 % → 43, 2.5 % → 34.4, 3 % → 28.7', () => {
  for (const [brixSap, printed] of [
    [2, 43],
    [2.5, 34.4],
    [3, 28.7],
  ] as const) {
    expect(Math.abs(100 / (yieldOf(100, brixSap, 66)?.ruleOf86Litres ?? NaN) - printed)).toBeLessThan(0.05);
  }
});

test('its revision (Perkins & Isselhardt, UVM): 2.0 % → 43.23, 2.4 % → 35.97, and within 0.4 % of the exact balance to 12 %', () => {
  const revised = (brixSap: number): number => 1 / (yieldOf(1, brixSap, 66)?.revisedRuleLitres ?? NaN);
  expect(Math.abs(revised(2) - 43.23)).toBeLessThan(0.005);
  expect(Math.abs(revised(2.4) - 35.97)).toBeLessThan(0.005);
  for (const brixSap of [1, 2, 4, 8, 12])
    expect(Math.abs(revised(brixSap) / ratio(brixSap, 66) - 1)).toBeLessThan(0.004);
});

test('the rule of 86 fails for concentrated sap: 12 % would give 7.17 where 6.9 is exact at its own 65.5 °Bx, so it is not told', () => {
  expect(86 / 12 / ratio(12, 65.5)).toBeGreaterThan(1.04);
  expect(yieldOf(100, 12, 66)?.ruleOf86Litres).toBeNull();
  expect(yieldOf(100, 12, 66)?.revisedRuleLitres).not.toBeNull();
  expect(86 / 8 / ratio(8, 65.5)).toBeLessThan(1.026);
  expect(yieldOf(100, 8, 66)?.ruleOf86Litres).toBeCloseTo((100 * 8) / 86, 9);
});

test('a thin or thick syrup has no rule', () => {
  for (const brixSyrup of [60, 70]) {
    expect(yieldOf(100, 2, brixSyrup)).toMatchObject({ ruleOf86Litres: null, revisedRuleLitres: null });
  }
});

test('ledgers (common practice): 3340 gal of maple sap → 73.125 gal is 1.9 % sap; 268 L of birch → 4 L is 1.3 % sap at 67 °Bx', () => {
  expect(yieldOf(3340, 1.9, 66)?.litres).toBeCloseTo(73.1, 0);
  expect(yieldOf(268, 1.33, 67)?.litres).toBeCloseTo(4, 1);
});

test('usual sap : syrup by volume: maple of 2 °Bx about 40 : 1 (extension), birch of 1 °Bx 60 to 180 : 1 (trade)', () => {
  expect(ratio(2, 66)).toBeGreaterThan(38);
  expect(ratio(2, 66)).toBeLessThan(46);
  expect(ratio(1, 67)).toBeGreaterThan(60);
  expect(ratio(1, 67)).toBeLessThan(180);
});

test('the last stretch, per litre at 66 °Bx: 1.42 L at 50, 1.26 at 55, 1.13 at 60, 0.944 at 68.9; 60 → 66 drives off 0.133 L (worked out apart)', () => {
  for (const [brix, litres] of [
    [50, 1.42],
    [55, 1.26],
    [60, 1.13],
  ] as const) {
    expect(Math.abs(ratio(brix, 66) - litres)).toBeLessThan(0.006);
  }
  expect(Math.abs((yieldOf(1, 66, 68.9)?.litres ?? NaN) - 0.944)).toBeLessThan(0.0015);
  const last = yieldOf(1, 60, 66);
  expect(Math.abs((last?.evaporatedLitres ?? NaN) / (last?.litres ?? NaN) - 0.133)).toBeLessThan(0.001);
});

test('what goes in comes out: sugar and mass are kept at any strength', () => {
  const brix = fc.double({ min: 0.1, max: 85, noNaN: true });
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1e5, noNaN: true }), brix, brix, (litres, one, other) => {
      const [thin, thick] = [Math.min(one, other), Math.max(one, other)];
      const found = yieldOf(litres, thin, thick);
      expect(found).not.toBeNull();
      if (found === null) return;
      const whole = yieldOf(litres, thin, thin);
      expect(Math.abs((found.kg * thick) / 100 - ((whole?.kg ?? NaN) * thin) / 100)).toBeLessThan(1e-9 * (1 + litres));
      expect(Math.abs(found.kg + found.evaporatedLitres * 0.9982 - (whole?.kg ?? NaN))).toBeLessThan(
        1e-5 * (1 + litres),
      );
    }),
  );
});

test('no sap, no sugar or syrup thinner than sap: no yield is known, but for no sap', () => {
  expect(yieldOf(0, 2, 66)?.litres).toBe(0);
  for (const [litres, sap, syrup] of [
    [100, 0, 66],
    [100, 67, 66],
    [-1, 2, 66],
    [Infinity, 2, 66],
    [100, 2, 90],
    [NaN, 2, 66],
  ] as const) {
    expect(yieldOf(litres, sap, syrup)).toBeNull();
  }
});
