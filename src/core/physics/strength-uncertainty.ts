// How sure a strength is that was worked out from a rise: the error of the reading and of the model together.
import type { SugarShares } from '../boil/entries.ts';
import { Z80 } from '../quantities/spread.ts';
import { riseFromStrength, strengthFromRise } from './sugar-solution.ts';

/** Published tables are printed to a tenth and scatter this much even in thin sap, °C. */
const modelFloorCelsius = 0.02;

/** Near the finish this gives 0.08 °C for maple (rise 4.0) and 0.15 °C for birch (rise 6.0). */
const sucroseShareOfRise = 0.02;
const moreForHexoses = 0.0055;

const greatestBrix = 80;

/**
 * Standard error of the water-activity model itself at a rise, °C; non-sugar solids are not in it.
 * Source: the scatter of published sucrose equations and of hexose models near 66 °Bx, taken as a share of the rise.
 */
export function modelRiseSigmaCelsius(riseC: number, shares: SugarShares): number {
  return Math.hypot(modelFloorCelsius, modelShareOfRise(shares) * Math.max(0, riseC));
}

/** The share of the rise by which the model may be off for a sap that nobody measured (1 sigma). */
export function modelShareOfRise(shares: SugarShares): number {
  return sucroseShareOfRise + moreForHexoses * (1 - shares.sucrose);
}

/**
 * Standard uncertainty of the strength worked out from a rise, °Bx, by the local slope of strength over rise.
 * `riseSigmaC` is the standard uncertainty of the measured rise (probe and water point), °C, 0 or more;
 * the model's own error is added here. Range as strengthFromRise; outside it null.
 */
export function strengthSigmaBrix(
  riseC: number,
  riseSigmaC: number,
  shares: SugarShares,
  pressureHpa: number,
): number | null {
  const brix = strengthFromRise(riseC, shares, pressureHpa);
  if (brix === null || !(riseSigmaC >= 0)) return null;
  const below = Math.max(0, brix - 0.25);
  const above = Math.min(greatestBrix, brix + 0.25);
  const riseBelow = riseFromStrength(below, shares, pressureHpa);
  const riseAbove = riseFromStrength(above, shares, pressureHpa);
  if (riseBelow === null || riseAbove === null) return null;
  const brixPerCelsius = (above - below) / (riseAbove - riseBelow);
  return brixPerCelsius * wholeSigmaCelsius(riseC, riseSigmaC, shares);
}

/**
 * The middle 80 % of the strength worked out from a rise, °Bx, held within 0 and 80.
 * Arguments and range as strengthSigmaBrix. Strength grows with rise, so the ends of the rise's range give
 * the ends exactly, where the slope alone would be wrong in thin sap.
 */
export function strengthRange80(
  riseC: number,
  riseSigmaC: number,
  shares: SugarShares,
  pressureHpa: number,
): { low: number; high: number } | null {
  if (strengthFromRise(riseC, shares, pressureHpa) === null || !(riseSigmaC >= 0)) return null;
  const spread = Z80 * wholeSigmaCelsius(riseC, riseSigmaC, shares);
  const low = strengthFromRise(Math.max(0, riseC - spread), shares, pressureHpa);
  const high = strengthFromRise(Math.max(0, riseC + spread), shares, pressureHpa);
  return { low: low ?? 0, high: high ?? greatestBrix };
}

function wholeSigmaCelsius(riseC: number, riseSigmaC: number, shares: SugarShares): number {
  return Math.hypot(riseSigmaC, modelRiseSigmaCelsius(riseC, shares));
}
