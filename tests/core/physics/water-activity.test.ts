// Checks the water-activity model at room temperature, where laboratories measured it.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { SugarShares } from '../../../src/core/boil/entries.ts';
import {
  brixFromMoleFraction,
  energyRatio,
  logActivity,
  logActivitySlope,
  mixOf,
  moleFractionFromBrix,
} from '../../../src/core/physics/water-activity.ts';

const sucrose: SugarShares = { sucrose: 1, glucose: 0, fructose: 0 };
const glucose: SugarShares = { sucrose: 0, glucose: 1, fructose: 0 };
const fructose: SugarShares = { sucrose: 0, glucose: 0, fructose: 1 };

function knownMix(shares: SugarShares): NonNullable<ReturnType<typeof mixOf>> {
  const mix = mixOf(shares);
  if (mix === null) throw new Error('not a mix');
  return mix;
}

function waterActivity(brix: number, shares: SugarShares): number {
  const mix = knownMix(shares);
  return Math.exp(logActivity(moleFractionFromBrix(brix, mix), energyRatio(mix, 25)));
}

/** a_w = x_w exp(-K x_s²), Norrish 1966. */
function norrish(brix: number, k: number, molarMass: number): number {
  const x = brix / molarMass / (brix / molarMass + (100 - brix) / 18.01528);
  return (1 - x) * Math.exp(-k * x * x);
}

test('25 °C: Norrish 1966 with K = 6.47 sucrose (read), 2.25 glucose (from memory), 2.15 fructose (read) to 66 °Bx, within 0.003', () => {
  for (const brix of [5, 10, 20, 30, 40, 50, 60, 66]) {
    expect(Math.abs(waterActivity(brix, sucrose) - norrish(brix, 6.47, 342.2965))).toBeLessThan(0.003);
    expect(Math.abs(waterActivity(brix, glucose) - norrish(brix, 2.25, 180.156))).toBeLessThan(0.003);
    expect(Math.abs(waterActivity(brix, fructose) - norrish(brix, 2.15, 180.156))).toBeLessThan(0.003);
  }
});

test('honey of 16 to 18 % water at 25 °C: 0.271 + 0.0177 W of Rüegg & Blanc 1981 (from memory), within 0.01', () => {
  const honey: SugarShares = { sucrose: 0, glucose: 0.45, fructose: 0.55 };
  for (const water of [16, 17, 18])
    expect(Math.abs(waterActivity(100 - water, honey) - (0.271 + 0.0177 * water))).toBeLessThan(0.01);
});

test('strength and mole fraction undo each other, and the slope is that of the curve', () => {
  const part = fc.double({ min: 0, max: 1, noNaN: true });
  fc.assert(
    fc.property(part, part, fc.double({ min: 0, max: 90, noNaN: true }), (s, others, brix) => {
      const mix = knownMix({ sucrose: s, glucose: 1 - s, fructose: 0, others: 0.3 * others });
      const x = moleFractionFromBrix(brix, mix);
      expect(brixFromMoleFraction(x, mix)).toBeCloseTo(brix, 9);
      const ratio = energyRatio(mix, 100);
      const chord = (logActivity(x + 1e-6, ratio) - logActivity(x, ratio)) / 1e-6;
      expect(logActivitySlope(x + 0.5e-6, ratio)).toBeCloseTo(chord, 5);
    }),
  );
});
