// The marks on a pan's scale at today's pressure: where its finish and its scorch limit lie, in strength and in rise.
import type { PanDesign } from './setup.ts';
import { riseFromStrength, strengthFromRise } from '../physics/sugar-solution.ts';
import { normalQuantile } from '../quantities/spread.ts';
import { waterPerSugar } from './filter/liquid.ts';

/** One limit: its strength, its rise (null while the pressure is not known), and what a degree there is in water per sugar. */
export interface Limit {
  brix: number;
  riseC: number | null;
  waterPerSugarPerC: number;
}

export interface PanLimits {
  finish: Limit & {
    /** So many standard deviations of the water's logarithm must lie beyond it before it counts as reached. */
    sigmas: number;
  };
  scorch: Limit;
  /** Rise that the sugars alone make at a strength (THIN_BRIX) far under most finishes, °C; null where it is not known. */
  thinRiseC: number | null;
}

/** °Bx; what shows less is not asked how strong it is, only that it is no finish. */
export const THIN_BRIX = 40;

/**
 * A finish given as a rise is that rise at today's pressure. `sapShare` is by which share this sap's rise is more than
 * its sugars' alone. `finishProbability` (0 to 1) is how likely the finish must be reached before it is called.
 */
export function panLimitsAt(
  design: PanDesign,
  pressureHpa: number | null,
  sapShare: number,
  finishProbability: number,
): PanLimits {
  const air = { pressure: pressureHpa ?? 1013.25, known: pressureHpa !== null, more: 1 + sapShare };
  const { finishRiseC, shares } = design;
  const byRise = finishRiseC === null ? null : strengthFromRise(finishRiseC / air.more, shares, air.pressure);
  return {
    finish: { ...limitAt(byRise ?? design.finishBrix, design, air), sigmas: normalQuantile(finishProbability) },
    scorch: limitAt(design.scorchBrix, design, air),
    thinRiseC: riseFromStrength(THIN_BRIX, shares, air.pressure),
  };
}

function limitAt(brix: number, design: PanDesign, air: { pressure: number; known: boolean; more: number }): Limit {
  const { pressure, known, more } = air;
  const riseC = riseFromStrength(brix, design.shares, pressure);
  const nearby = riseC === null ? null : strengthFromRise(riseC - 0.2, design.shares, pressure);
  const perC = nearby === null ? 0 : (waterPerSugar(Math.max(1, nearby)) - waterPerSugar(brix)) / 0.2;
  return { brix, riseC: known && riseC !== null ? riseC * more : null, waterPerSugarPerC: perC / more };
}
