// Checks that strength and rise undo each other for any mix and pressure, grow together, and are not known outside their range.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { SugarShares } from '../../../src/core/boil/entries.ts';
import { sugarShares } from '../../../src/core/physics/sugar-shares.ts';
import { riseFromStrength, strengthFromRise } from '../../../src/core/physics/sugar-solution.ts';

const maple = sugarShares('maple');
const seaLevelHpa = 1013.25;

const rise = (brix: number, shares: SugarShares, hpa = seaLevelHpa): number =>
  riseFromStrength(brix, shares, hpa) ?? NaN;
const strength = (riseC: number, shares: SugarShares, hpa = seaLevelHpa): number =>
  strengthFromRise(riseC, shares, hpa) ?? NaN;

const share = fc.integer({ min: 0, max: 100 });
/** Any mix; parts of a whole, and up to three tenths of others. */
const anyMix: fc.Arbitrary<SugarShares> = fc
  .tuple(share, share, fc.integer({ min: 1, max: 100 }), fc.integer({ min: 0, max: 30 }))
  .map(([s, g, f, others]) => ({
    sucrose: s / (s + g + f),
    glucose: g / (s + g + f),
    fructose: f / (s + g + f),
    others: others / 100,
  }));
const anyPressure = fc.double({ min: 500, max: 1100, noNaN: true });
const anyBrix = fc.double({ min: 0, max: 80, noNaN: true });

/** The strength by halving a bracket of riseFromStrength alone: it shares no step with strengthFromRise. */
function strengthByHalving(riseC: number, shares: SugarShares, hpa: number): number {
  let [low, high] = [0, 80];
  while (high - low > 1e-8) {
    const middle = (low + high) / 2;
    if (rise(middle, shares, hpa) < riseC) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

test('at 10,000 points of any mix, pressure and rise the strength is within 1e-6 °Bx of a bracketed solve of the rise', () => {
  let worst = 0;
  const point = fc.property(anyMix, anyPressure, fc.double({ min: 0, max: 1, noNaN: true }), (shares, hpa, part) => {
    const riseC = part * rise(80, shares, hpa);
    worst = Math.max(worst, Math.abs(strength(riseC, shares, hpa) - strengthByHalving(riseC, shares, hpa)));
  });
  fc.assert(point, { numRuns: 10_000, seed: 66 });
  expect(worst).toBeLessThan(1e-6);
});

test('strength from rise undoes rise from strength to 1e-6 °Bx for any mix, pressure and strength', () => {
  fc.assert(
    fc.property(anyBrix, anyMix, anyPressure, (brix, shares, pressure) => {
      const back = strength(rise(brix, shares, pressure), shares, pressure);
      expect(Math.abs(back - brix)).toBeLessThan(1e-6);
    }),
    { numRuns: 2000 },
  );
});

test('stronger boils hotter and hotter is stronger, for any mix and pressure', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 79.9, noNaN: true }), anyMix, anyPressure, (brix, shares, pressure) => {
      const riseHere = rise(brix, shares, pressure);
      expect(rise(brix + 0.1, shares, pressure)).toBeGreaterThan(riseHere);
      expect(strength(riseHere + 0.001, shares, pressure)).toBeGreaterThan(strength(riseHere, shares, pressure));
    }),
    { numRuns: 1000 },
  );
});

test('plain water rises by nothing, and a noisy probe a little below the water point reads 0 °Bx', () => {
  expect(rise(0, maple)).toBeCloseTo(0, 9);
  expect(strengthFromRise(-0.29, maple, seaLevelHpa)).toBe(0);
  expect(strengthFromRise(-0.31, maple, seaLevelHpa)).toBeNull();
});

test('a rise too small to count is 0 °Bx or next to it, never less', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1e-9, noNaN: true }), anyMix, anyPressure, (riseC, shares, pressure) => {
      const found = strength(riseC, shares, pressure);
      expect(found >= 0 && found < 1e-5).toBe(true);
    }),
  );
});

test('whatever comes in, the answer is a number in range or not known, never NaN', () => {
  const anything = fc.double();
  fc.assert(
    fc.property(
      anything,
      fc.tuple(anything, anything, anything),
      anything,
      anything,
      (value, [s, g, f], o, pressure) => {
        for (const shares of [maple, { ...maple, others: o }, { sucrose: s, glucose: g, fructose: f }]) {
          for (const hpa of [seaLevelHpa, pressure]) {
            const answers = [riseFromStrength(value, shares, hpa), strengthFromRise(value, shares, hpa)];
            for (const answer of answers) expect(answer === null || (answer >= 0 && answer <= 80)).toBe(true);
          }
        }
      },
    ),
  );
});

test('outside the declared range nothing is known', () => {
  for (const brix of [-0.01, 80.01, NaN, Infinity, -Infinity]) expect(riseFromStrength(brix, maple, 1000)).toBeNull();
  for (const pressure of [499, 1101, -1, NaN, Infinity]) {
    expect(strengthFromRise(4, maple, pressure)).toBeNull();
    expect(riseFromStrength(66, maple, pressure)).toBeNull();
  }
  for (const riseC of [20, Infinity, -Infinity, NaN]) expect(strengthFromRise(riseC, maple, 1000)).toBeNull();
  expect(strengthFromRise(4, { sucrose: 0.5, glucose: 0.3, fructose: 0.1 }, 1000)).toBeNull();
  expect(strengthFromRise(4, { sucrose: 1.1, glucose: -0.1, fructose: 0 }, 1000)).toBeNull();
  for (const others of [-0.01, 0.31, NaN, Infinity]) {
    expect(strengthFromRise(4, { ...maple, others }, 1000)).toBeNull();
    expect(riseFromStrength(66, { ...maple, others }, 1000)).toBeNull();
  }
});
