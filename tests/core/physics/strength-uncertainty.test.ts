// Checks that the range of a strength is as wide as its errors make it, and stays where strength can be.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  modelRiseSigmaCelsius,
  strengthRange80,
  strengthSigmaBrix,
} from '../../../src/core/physics/strength-uncertainty.ts';
import { sugarShares } from '../../../src/core/physics/sugar-shares.ts';
import { riseFromStrength, strengthFromRise } from '../../../src/core/physics/sugar-solution.ts';

const maple = sugarShares('maple');
const birch = sugarShares('birch');
const finish = {
  maple: riseFromStrength(66, maple, 1013.25) ?? NaN,
  birch: riseFromStrength(66, birch, 1013.25) ?? NaN,
};

test('the model is off by 0.08 °C for maple and 0.15 °C for birch at 66 °Bx: the scatter of published equations', () => {
  expect(modelRiseSigmaCelsius(finish.maple, maple)).toBeCloseTo(0.08, 2);
  expect(modelRiseSigmaCelsius(finish.birch, birch)).toBeCloseTo(0.15, 2);
});

test('a perfect probe leaves the model: 0.4 °Bx for maple and 0.5 °Bx for birch at 66 °Bx', () => {
  expect(strengthSigmaBrix(finish.maple, { riseSigmaC: 0 }, maple, 1013.25)).toBeCloseTo(0.4, 1);
  expect(strengthSigmaBrix(finish.birch, { riseSigmaC: 0 }, birch, 1013.25)).toBeCloseTo(0.5, 1);
});

test('what is known of this sap takes the place of the model, and leaves the probe alone', () => {
  const error = (modelSigmaC?: number): number =>
    strengthSigmaBrix(finish.birch, { riseSigmaC: 0.03, modelSigmaC }, birch, 1013.25) ?? NaN;
  const perCelsius = error(0) / 0.03;
  expect(error(0.04) / perCelsius).toBeCloseTo(0.05, 6);
  expect(error() / perCelsius).toBeCloseTo(Math.hypot(0.03, modelRiseSigmaCelsius(finish.birch, birch)), 6);
  expect(strengthRange80(finish.birch, { riseSigmaC: 0.03, modelSigmaC: NaN }, birch, 1013.25)).toBeNull();
});

test('acids and minerals make the model less sure: half of their share of the rise', () => {
  const withOthers = { ...birch, others: 0.05 };
  expect(modelRiseSigmaCelsius(6, withOthers)).toBeCloseTo(
    Math.hypot(modelRiseSigmaCelsius(6, birch), 0.5 * 0.05 * 6),
    6,
  );
  expect(strengthSigmaBrix(6, { riseSigmaC: 0 }, withOthers, 1013.25)).toBeGreaterThan(
    strengthSigmaBrix(6, { riseSigmaC: 0 }, birch, 1013.25) ?? NaN,
  );
});

test('0.1 °C is 0.47 °Bx for maple and 0.35 °Bx for birch near 66 °Bx: the slopes of the model', () => {
  // A reading error that drowns the model's leaves only the slope.
  expect(
    Math.abs((strengthSigmaBrix(finish.maple, { riseSigmaC: 100 }, maple, 1013.25) ?? NaN) / 1000 - 0.47),
  ).toBeLessThan(0.01);
  expect(
    Math.abs((strengthSigmaBrix(finish.birch, { riseSigmaC: 100 }, birch, 1013.25) ?? NaN) / 1000 - 0.35),
  ).toBeLessThan(0.01);
});

test('where the curve is nearly straight the range is 1.2816 standard uncertainties either side', () => {
  const sigma = strengthSigmaBrix(finish.maple, { riseSigmaC: 0.05 }, maple, 1013.25) ?? NaN;
  const range = strengthRange80(finish.maple, { riseSigmaC: 0.05 }, maple, 1013.25);
  expect((range?.high ?? NaN) - (range?.low ?? NaN)).toBeCloseTo(2 * 1.2816 * sigma, 2);
});

test('in thin sap nearly nothing is known: 0.15 °C of error in 0.2 °C of rise leaves 0 to over 20 °Bx', () => {
  const range = strengthRange80(0.2, { riseSigmaC: 0.15 }, maple, 1013.25);
  expect(range?.low).toBeLessThan(1);
  expect(range?.high).toBeGreaterThan(19);
});

test('a range that reaches over 80 °Bx ends there, and below water at 0', () => {
  expect(strengthRange80(9.2, { riseSigmaC: 2 }, maple, 1013.25)?.high).toBe(80);
  expect(strengthRange80(-0.1, { riseSigmaC: 0.2 }, maple, 1013.25)?.low).toBe(0);
});

test('the range holds the strength, lies within 0 to 80, and grows with the error', () => {
  const anyRise = fc.double({ min: -0.3, max: 9, noNaN: true });
  const anySigma = fc.double({ min: 0, max: 5, noNaN: true });
  const anyPressure = fc.double({ min: 500, max: 1100, noNaN: true });
  fc.assert(
    fc.property(anyRise, anySigma, fc.constantFrom(maple, birch), anyPressure, (riseC, sigma, shares, pressure) => {
      const brix = strengthFromRise(riseC, shares, pressure);
      const range = strengthRange80(riseC, { riseSigmaC: sigma }, shares, pressure);
      const wider = strengthRange80(riseC, { riseSigmaC: sigma + 0.1 }, shares, pressure);
      if (brix === null || range === null || wider === null) {
        // At 500 hPa a rise of 9 °C is over 80 °Bx: then all three are not known.
        expect([brix, range, wider]).toEqual([null, null, null]);
        return;
      }
      expect(0 <= range.low && range.low <= brix && brix <= range.high && range.high <= 80).toBe(true);
      expect(wider.low <= range.low && wider.high >= range.high).toBe(true);
      expect(strengthSigmaBrix(riseC, { riseSigmaC: sigma }, shares, pressure)).toBeGreaterThan(0);
    }),
  );
});

test('not known where strength is not, or where the error is no error', () => {
  expect(strengthRange80(15, { riseSigmaC: 0.1 }, maple, 1000)).toBeNull();
  expect(strengthSigmaBrix(15, { riseSigmaC: 0.1 }, maple, 1000)).toBeNull();
  for (const sigma of [-0.1, NaN]) {
    expect(strengthRange80(4, { riseSigmaC: sigma }, maple, 1000)).toBeNull();
    expect(strengthSigmaBrix(4, { riseSigmaC: sigma }, maple, 1000)).toBeNull();
  }
});
