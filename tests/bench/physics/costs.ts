// What one call of the physics costs, in µs.
import { riseFromStrength, strengthFromRise } from '../../../src/core/physics/sugar-solution.ts';
import { sugarShares } from '../../../src/core/physics/sugar-shares.ts';
import { saturationTemperatureCelsius } from '../../../src/core/physics/water-point.ts';
import { middleMilliseconds } from '../timing.ts';

const CALLS = 100_000;
const maple = sugarShares('maple');

/** What is called, with a number from 0 to 1 that goes round so that no call is like the one before. */
const calls: Record<string, (turn: number) => unknown> = {
  'water point from pressure': (turn) => saturationTemperatureCelsius(900 + 150 * turn),
  'rise from strength': (turn) => riseFromStrength(80 * turn, maple, 950),
  'strength from rise': (turn) => strengthFromRise(0.2 + 5 * turn, maple, 950),
};

export async function printCosts(): Promise<void> {
  for (const [name, call] of Object.entries(calls)) {
    let known = 0;
    const cost = await middleMilliseconds(5, () => {
      for (let i = 0; i < CALLS; i++) if (call((i % 997) / 997) !== null) known += 1;
    });
    console.log(
      `  ${name.padEnd(60)} ${((1000 * cost) / CALLS).toFixed(2).padStart(6)} µs a call${known > 0 ? '' : ', never known'}`,
    );
  }
}
