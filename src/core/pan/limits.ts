// The marks on a pan's scale at today's pressure: where its finish and its scorch limit lie, in strength and in rise.
import type { PanDesign } from './setup.ts';
import { riseFromStrength, strengthFromRise } from '../physics/sugar-solution.ts';
import { waterPerSugar } from './evaporation-line.ts';

/** One limit: its strength, its rise (null while the pressure is not known), and what a degree there is in water per sugar. */
export interface Limit {
  brix: number;
  riseC: number | null;
  waterPerSugarPerC: number;
}

export interface PanLimits {
  finish: Limit;
  scorch: Limit;
}

/** A finish given as a rise is that rise at today's pressure. */
export function panLimitsAt(design: PanDesign, pressureHpa: number | null): PanLimits {
  const pressure = pressureHpa ?? 1013.25;
  const byRise = design.finishRiseC === null ? null : strengthFromRise(design.finishRiseC, design.shares, pressure);
  return {
    finish: limitAt(byRise ?? design.finishBrix, design, pressure, pressureHpa !== null),
    scorch: limitAt(design.scorchBrix, design, pressure, pressureHpa !== null),
  };
}

function limitAt(brix: number, design: PanDesign, pressure: number, known: boolean): Limit {
  const riseC = riseFromStrength(brix, design.shares, pressure);
  const nearby = riseC === null ? null : strengthFromRise(riseC - 0.2, design.shares, pressure);
  const perC = nearby === null ? 0 : (waterPerSugar(Math.max(1, nearby)) - waterPerSugar(brix)) / 0.2;
  return { brix, riseC: known ? riseC : null, waterPerSugarPerC: perC };
}
