// What is known of one pan, as plain data: the model reads and moves it, marks change it.
import { type Contents, unknownContents } from './contents.ts';
import { type EvaporationLine, type LineNow, startLine } from './evaporation-line.ts';
import type { PanLimits } from './limits.ts';
import { startTrack, type TemperatureTrack } from './temperature-track.ts';

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

export type Phase = 'cold' | 'boiling' | 'settling';

export interface PanModel {
  track: TemperatureTrack;
  line: EvaporationLine;
  contents: Contents;
  /** Water counted off since the boil began, kg. */
  evaporatedKg: number;
  phase: Phase;
  /** When the pan last took in something cold, marked or seen, or a probe arrived, ms; -1 for never. */
  disturbedAt: number;
  /** When the boil was last seen to be steady after a climb, ms; -1 for never. */
  boilingFrom: number;
  /** When somebody last noted a pour, ms; -Infinity is no number in JSON, so a day before. */
  pouredAt: number;
  /** Share of full flame, 0…1. */
  flame: number;
  /** Emptied, or its flame marked off. */
  off: boolean;
  emptied: boolean;
  /** Useful heat as learnt from this pan's own evaporation, kg/s at full flame; null until learnt. */
  learntKgPerS: number | null;
  /** Strength now by the line or the last block, °Bx, and the moment it stands for, ms. */
  brix: number | null;
  brixAt: number;
  fit: LineNow | null;
  rateCPerMin: number | null;
  riseC: number | null;
  /** The rise of the last half minute of boiling, °C: the height that a fall is measured from. */
  usualRiseC: number | null;
  /** Blocks in a row that the line did not explain. */
  leftBehind: number;
  /** Strength was seen at or over the finish and has not fallen clearly below it since. */
  reachedFinish: boolean;
  /** The same for clearly beyond it. */
  reachedPast: boolean;
  /** Blocks in a row that were clearly beyond it. */
  pastBlocks: number;
  /** Blocks in a row at or over the finish. */
  finishBlocks: number;
  /** Blocks in a row that were clearly short of it. */
  belowBlocks: number;
  /** Last strength by an instrument, °Bx. */
  densityBrix: number | null;
  /** Last temperature read by hand, and when, ms. */
  byHand: { celsius: number; at: number } | null;
  steppedTo: number;
}

export function startPan(t: number): PanModel {
  return {
    track: startTrack(),
    line: startLine(),
    contents: unknownContents(),
    evaporatedKg: 0,
    phase: 'cold',
    disturbedAt: -1,
    boilingFrom: -1,
    pouredAt: -86_400_000,
    flame: 1,
    off: false,
    emptied: false,
    learntKgPerS: null,
    brix: null,
    brixAt: t,
    fit: null,
    rateCPerMin: null,
    riseC: null,
    usualRiseC: null,
    leftBehind: 0,
    reachedFinish: false,
    reachedPast: false,
    pastBlocks: 0,
    finishBlocks: 0,
    belowBlocks: 0,
    densityBrix: null,
    byHand: null,
    steppedTo: t,
  };
}

/** Something cold or unknown reached the tip: strength and slope start anew, contents stay. */
export function disturb(pan: PanModel, t: number): void {
  pan.phase = pan.phase === 'cold' ? 'cold' : 'settling';
  pan.disturbedAt = t;
  beginAnew(pan);
}

/** What was seen of the rise so far no longer fits: the line and the usual rise start anew, phase and contents stay. */
export function beginAnew(pan: PanModel): void {
  pan.line = startLine();
  pan.fit = null;
  pan.usualRiseC = null;
}
