// How sure a strength is that was worked out from a rise: the error of the reading and of the model together.
import type { SugarShares } from '../boil/entries.ts';
import { Z80 } from '../quantities/spread.ts';
import { riseFromStrength, strengthFromRise } from './sugar-solution.ts';

/** Published tables are printed to a tenth and scatter this much even in thin sap, °C. */
const MODEL_FLOOR_C = 0.02;

/** Near the finish this gives 0.08 °C for maple (rise 4.0) and 0.15 °C for birch (rise 6.0). */
const sucroseShareOfRise = 0.02;
const moreForHexoses = 0.0055;
/**
 * Acids and minerals add 0.6 (birch) to 1.4 (maple) times their share to the rise; their particles may weigh 50 to
 * 110 g/mol in place of the assumed 75, so that about half of that is unsure (a judgement, not a measurement).
 */
const moreForOthers = 0.5;

const greatestBrix = 80;

/** What is known of a measured rise, °C (1 sigma). */
export interface RiseErrors {
  /** Of the measured rise: probe, water point and depth together; 0 or more. */
  riseSigmaC: number;
  /** Of the model for this sap; that of a sap that nobody measured unless said, 0 where it is in riseSigmaC already. */
  modelSigmaC?: number | undefined;
}

/**
 * Standard error of the water-activity model itself at a rise, °C; acids and minerals are in it only as far as
 * `shares.others` says.
 * Source: the scatter of published sucrose equations and of hexose models near 66 °Bx, taken as a share of the rise.
 */
export function modelRiseSigmaCelsius(riseC: number, shares: SugarShares): number {
  return Math.hypot(MODEL_FLOOR_C, modelShareOfRise(shares) * Math.max(0, riseC));
}

/** The share of the rise by which the model may be off for a sap that nobody measured (1 sigma). */
export function modelShareOfRise(shares: SugarShares): number {
  return Math.hypot(sucroseShareOfRise + moreForHexoses * (1 - shares.sucrose), moreForOthers * (shares.others ?? 0));
}

/**
 * Standard uncertainty of the strength worked out from a rise, °Bx, by the local slope of strength over rise.
 * Range as strengthFromRise; outside it, or with an error that is less than 0 or no number, null.
 */
export function strengthSigmaBrix(
  riseC: number,
  errors: RiseErrors,
  shares: SugarShares,
  pressureHpa: number,
): number | null {
  const brix = strengthFromRise(riseC, shares, pressureHpa);
  const sigma = wholeSigmaCelsius(riseC, errors, shares);
  if (brix === null || sigma === null) return null;
  const below = Math.max(0, brix - 0.25);
  const above = Math.min(greatestBrix, brix + 0.25);
  const riseBelow = riseFromStrength(below, shares, pressureHpa);
  const riseAbove = riseFromStrength(above, shares, pressureHpa);
  if (riseBelow === null || riseAbove === null) return null;
  const brixPerCelsius = (above - below) / (riseAbove - riseBelow);
  return brixPerCelsius * sigma;
}

/**
 * The middle 80 % of the strength worked out from a rise, °Bx, held within 0 and 80.
 * Arguments and range as strengthSigmaBrix. Strength grows with rise, so the ends of the rise's range give
 * the ends exactly, where the slope alone would be wrong in thin sap.
 */
export function strengthRange80(
  riseC: number,
  errors: RiseErrors,
  shares: SugarShares,
  pressureHpa: number,
): { low: number; high: number } | null {
  const sigma = wholeSigmaCelsius(riseC, errors, shares);
  if (strengthFromRise(riseC, shares, pressureHpa) === null || sigma === null) return null;
  const spread = Z80 * sigma;
  const low = strengthFromRise(Math.max(0, riseC - spread), shares, pressureHpa);
  const high = strengthFromRise(Math.max(0, riseC + spread), shares, pressureHpa);
  return { low: low ?? 0, high: high ?? greatestBrix };
}

function wholeSigmaCelsius(riseC: number, errors: RiseErrors, shares: SugarShares): number | null {
  const { riseSigmaC, modelSigmaC = modelRiseSigmaCelsius(riseC, shares) } = errors;
  return riseSigmaC >= 0 && modelSigmaC >= 0 ? Math.hypot(riseSigmaC, modelSigmaC) : null;
}
