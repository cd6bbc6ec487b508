// Water that leaves a pan kept below a boil: what an open, still surface loses at its temperature, against one at a usual ceiling.
import { surfaceEvaporationKgPerM2S } from '../physics/open-surface.ts';

/** A spring day in the yard; under the rim there is little wind (common practice). */
export const USUAL_AIR = { celsius: 5, vapourHpa: 6, windMetresPerSecond: 0.5 };

/** Ceilings of 90, 94 and 100 °C are quoted (trade, practice). */
const USUAL_CEILING_C = 94;

const air = { ...USUAL_AIR, pressureHpa: 1013.25 };

/** Water that leaves a still surface at a usual ceiling, kg/(m² s). */
export const STILL_KG_PER_M2_S = surfaceEvaporationKgPerM2S(USUAL_CEILING_C, 0, air) ?? 0;

/** The same at another temperature, °C, of a liquid that boils so much over water, °C: as a share of that. */
export function stillShare(celsius: number, riseC: number): number {
  const flow = surfaceEvaporationKgPerM2S(Math.min(110, Math.max(1, celsius)), riseC, air) ?? 0;
  return flow / STILL_KG_PER_M2_S;
}
