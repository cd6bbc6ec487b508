// What is known of one pan, as plain data: the model reads and moves it, marks change it.
import { type Course, startCourse } from './course.ts';
import type { PanLimits } from './limits.ts';
import { type PanSigns, startSigns } from './pan-signs.ts';
import { startTrack, type TemperatureTrack } from './temperature-track.ts';
import { type Past, startPast } from './timeline.ts';

/** What all pans share at one moment. */
export interface Surroundings {
  /** Water's boiling point as this pan's probe reads it, °C; null while not known. */
  waterC: number | null;
  /** Standard uncertainty of the rise that comes from water point and probe error together, °C. */
  waterSigmaC: number;
  /** By which share this sap's rise is more than its sugars' alone, as density readings taught, and how sure that is. */
  sapShare: number;
  sapShareSigma: number;
  /** Covariance of the two errors, °C. */
  waterSapCovariance: number;
  /** Station pressure that goes with the water point, hPa. */
  pressureHpa: number | null;
  limits: PanLimits;
}

/** A measured rise as the sugars alone would make it, °C: what is taught of this sap is taken off. */
export const sugarRiseC = (around: Surroundings, riseC: number): number => riseC / (1 + around.sapShare);

/** Standard uncertainty of that rise, from water point, probe and sap together, °C. */
export function sugarRiseSigmaC(around: Surroundings, riseC: number): number {
  const { waterSigmaC, sapShareSigma, waterSapCovariance } = around;
  return Math.sqrt(Math.max(0, waterSigmaC ** 2 + 2 * riseC * waterSapCovariance + (riseC * sapShareSigma) ** 2));
}

export interface PanModel {
  track: TemperatureTrack;
  course: Course;
  past: Past;
  signs: PanSigns;
  rateCPerMin: number | null;
  /** Last temperature read by hand, and when, ms. */
  byHand: { celsius: number; at: number } | null;
  /** When people say that they poured, ms, and which pours that were seen they say were none. */
  noted: number[];
  refused: number[];
}

/** A pan of which nothing is known yet, from t, ms of boil time. */
export function startPan(t: number): PanModel {
  return {
    track: startTrack(),
    course: startCourse(t),
    past: startPast(),
    signs: startSigns(),
    rateCPerMin: null,
    byHand: null,
    noted: [],
    refused: [],
  };
}
