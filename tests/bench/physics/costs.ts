// What one call of the physics costs, and one reading of a probe all the way to a strength with its range, in µs.
import { densityKgPerM3 } from '../../../src/core/physics/density.ts';
import { headSigmaC } from '../../../src/core/physics/head.ts';
import { modelRiseSigmaCelsius, strengthRange80 } from '../../../src/core/physics/strength-uncertainty.ts';
import { sugarShares } from '../../../src/core/physics/sugar-shares.ts';
import { riseFromStrength, strengthFromRise } from '../../../src/core/physics/sugar-solution.ts';
import { tipCelsius } from '../../../src/core/physics/thermocouple.ts';
import { saturationPressureHpa, saturationTemperatureCelsius } from '../../../src/core/physics/water-point.ts';
import { middleMilliseconds } from '../timing.ts';

const CALLS = 100_000;
/** Numbers that go round, so that no call is like the one before. */
const TURNS = 997;
const HPA = 950;
const WATER_C = saturationTemperatureCelsius(HPA) ?? NaN;
const maple = sugarShares('maple');
const birch = { ...sugarShares('birch'), others: 0.05 };

/** Strength and its range from a temperature, as a reading takes it; null while it is not boiling. */
function strengthOf(celsius: number | null): number | null {
  if (celsius === null) return null;
  const riseC = Math.max(0, celsius - WATER_C);
  const brix = strengthFromRise(riseC, birch, HPA);
  if (brix === null) return null;
  const riseSigmaC = Math.hypot(0.05, headSigmaC(40, brix, HPA) ?? 0);
  const errors = { riseSigmaC, modelSigmaC: modelRiseSigmaCelsius(riseC, birch) };
  const range = strengthRange80(riseC, errors, birch, HPA);
  return range === null ? null : range.high - range.low;
}

/** What is called, with a number from 0 to 1; null where it does not know. */
const calls: Record<string, (turn: number) => number | null> = {
  'water point from pressure': (turn) => saturationTemperatureCelsius(900 + 150 * turn),
  'pressure from water point': (turn) => saturationPressureHpa(95 + 6 * turn),
  'rise from strength': (turn) => riseFromStrength(80 * turn, maple, HPA),
  'strength from rise, maple (goal: under 2)': (turn) => strengthFromRise(5 * turn, maple, HPA),
  'strength from rise, birch with acids (goal: under 2)': (turn) => strengthFromRise(7 * turn, birch, HPA),
  'range of a strength': (turn) => strengthRange80(5 * turn, { riseSigmaC: 0.1 }, maple, HPA)?.low ?? null,
  'head of the liquid': (turn) => headSigmaC(100 * turn, 60, HPA),
  density: (turn) => densityKgPerM3(80 * turn, 99),
  'thermocouple K with cold junction': (turn) => tipCelsius('K', 3.1 + 0.3 * turn, 20),
  'one reading, number on the line -> strength and range': (turn) => strengthOf(Number((98.2 + 6 * turn).toFixed(2))),
  'one reading, millivolts -> strength and range': (turn) => strengthOf(tipCelsius('K', 3.22 + 0.24 * turn, 20)),
};

export async function printCosts(): Promise<void> {
  for (const [name, call] of Object.entries(calls)) {
    let known = 0;
    const cost = await middleMilliseconds(5, () => {
      for (let i = 0; i < CALLS; i++) if (call((i % TURNS) / TURNS) !== null) known += 1;
    });
    const doubt = known === 6 * CALLS ? '' : `, known in ${((100 * known) / (6 * CALLS)).toFixed(0)} %`;
    console.log(`  ${name.padEnd(60)} ${((1000 * cost) / CALLS).toFixed(2).padStart(6)} µs a call${doubt}`);
  }
}
