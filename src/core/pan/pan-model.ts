// The pan model, first form: temperature to rise, strength, rate and contents of one pan, step by step.
import { addTo, type Contents, correctByStrength, unknownContents } from './contents.ts';
import type { PanLimits } from './limits.ts';
import type { PanDesign } from './setup.ts';
import { latentHeatKjPerKg } from '../physics/heat.ts';
import { strengthFromRise } from '../physics/sugar-solution.ts';
import {
  addPoint,
  brixOfWaterPerSugar,
  type EvaporationLine,
  lineNow,
  type LineNow,
  moveOn,
  startLine,
  waterPerSugar,
} from './evaporation-line.ts';
import {
  closeBlock,
  forgetRecent,
  hearReading,
  rateOfRise,
  startTrack,
  type TemperatureTrack,
} from './temperature-track.ts';

/** What all pans share at one moment. */
export interface Surroundings {
  /** Water's boiling point as this pan's probe reads it, °C; null while not known. */
  waterC: number | null;
  /** Standard uncertainty of the rise that comes from water point and probe offset together, °C. */
  waterSigmaC: number;
  /** Station pressure that goes with the water point, hPa. */
  pressureHpa: number | null;
  limits: PanLimits;
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
  /** °C added to the rise of this pan by a density reading. */
  riseCorrectionC: number;
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
  /** Last strength by an instrument, and when, ms. */
  density: { brix: number; at: number } | null;
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
    riseCorrectionC: 0,
    reachedFinish: false,
    reachedPast: false,
    pastBlocks: 0,
    finishBlocks: 0,
    belowBlocks: 0,
    density: null,
    byHand: null,
    steppedTo: t,
  };
}

/** Memory of the line, s of heat: long enough for a steady slope, short enough to follow a burner. */
const MEMORY_S = 900;
/** Under a ceiling only density readings make the line, hours apart. */
const CEILING_MEMORY_S = 8 * 3600;
/** A line must span so much heat before its slope is believed, s. */
const LEAST_SPAN_S = 180;
/** Below this strength the rise is lost in noise and offset (0.1 °C is 5–6 °Bx, physics.md 4.5), °Bx. */
const LEAST_LINE_BRIX = 8;
/** How far under the water point a pan still counts as boiling, °C: superheat, foam and offsets. */
const BOIL_MARGIN_C = 0.6;
/** After something cold went in, so long before a boil is believed again, ms. */
const SETTLE_MS = 45_000;
/** Share of each block that the usual rise follows: about half a minute of memory. */
const FOLLOW = 0.2;
/** A rate under this counts as a plateau after something cold went in, °C/min. */
const PLATEAU_C_PER_MIN = 0.4;

/** A reading of this pan's probe, offset included, °C; t in ms, not before the last one. */
export function panHears(pan: PanModel, t: number, celsius: number): void {
  hearReading(pan.track, t, celsius);
}

/** Brings the model to t (ms): at most once a second; blocks of readings are used as they close. */
export function panStep(pan: PanModel, design: PanDesign, around: Surroundings, t: number): void {
  const seconds = (t - pan.steppedTo) / 1000;
  pan.steppedTo = t;
  if (seconds > 0) evaporate(pan, design, seconds);
  const block = closeBlock(pan.track, t);
  if (block === null) return;
  pan.rateCPerMin = rateOfRise(pan.track, t, Math.max(pan.disturbedAt, pan.boilingFrom));
  if (around.waterC === null) {
    pan.riseC = null;
    pan.brix = null;
    return;
  }
  pan.riseC = block.celsius - around.waterC + pan.riseCorrectionC;
  if (pan.off) {
    // It cools: what the probe says is no boil, and tells nothing of the strength.
    if (pan.phase === 'boiling') disturb(pan, t);
    pan.brix = null;
    return;
  }
  if (design.ceilingC === null) followBoil(pan, design, around, block.t, pan.riseC);
  else followBelowBoil(pan, t);
}

/** Water leaves by what was learnt or, until then, by the burner's nominal power. */
function evaporate(pan: PanModel, design: PanDesign, seconds: number): void {
  if (pan.off) return;
  moveOn(pan.line, seconds * pan.flame, design.ceilingC === null ? MEMORY_S : CEILING_MEMORY_S);
  const rate = evaporationKgPerS(pan, design);
  if (rate === null || pan.phase !== 'boiling') return;
  pan.evaporatedKg += rate * seconds;
  addTo(pan.contents, 0, -rate * seconds);
  pan.contents.countedKg += rate * seconds;
  if (pan.learntKgPerS === null) pan.contents.nominalKg += rate * seconds;
}

/** Water leaving now, kg/s, or null when neither strength nor power tells. */
export function evaporationKgPerS(pan: PanModel, design: PanDesign): number | null {
  if (pan.off || pan.flame === 0) return 0;
  if (pan.phase !== 'boiling' && design.ceilingC === null) return null;
  if (pan.learntKgPerS !== null) return pan.learntKgPerS * pan.flame;
  if (design.usefulPowerW === null || design.ceilingC !== null) return null;
  return (design.usefulPowerW * pan.flame) / (latentHeatKjPerKg(100)! * 1000);
}

function followBoil(pan: PanModel, design: PanDesign, around: Surroundings, t: number, rise: number): void {
  notePhase(pan, t, rise);
  if (pan.phase !== 'boiling') {
    pan.fit = null;
    pan.brix = null;
    pan.brixAt = t;
    return;
  }
  const seen = strengthFromRise(Math.max(0, rise), design.shares, around.pressureHpa ?? 1013.25);
  pan.brixAt = t;
  if (seen === null) {
    // Over 80 °Bx, or far outside: the strength is not known, the limits are judged by the rise itself.
    pan.brix = null;
    judgeFinish(pan, around.limits.finish.brix, 0);
    return;
  }
  const perC = brixPerC(design, around, rise, seen);
  const blockSigmaC = Math.hypot((pan.track.noise ?? 0.1) / 2, 0.03);
  if (seen >= LEAST_LINE_BRIX) addPoint(pan.line, waterPerSugar(seen), (100 / (seen * seen)) * perC * blockSigmaC);
  pan.fit = lineNow(pan.line, LEAST_SPAN_S);
  pan.brix = strengthNow(pan, seen, perC * blockSigmaC);
  learn(pan, perC * Math.hypot(blockSigmaC, around.waterSigmaC));
  judgeFinish(pan, around.limits.finish.brix, perC * blockSigmaC);
}

/** A fall that the boil itself cannot make is something cold going in, or a tip lifted out. */
function notePhase(pan: PanModel, t: number, rise: number): void {
  const noise = pan.track.noise ?? 0.1;
  if (pan.phase === 'boiling') {
    const fell = (pan.usualRiseC ?? rise) - rise;
    pan.usualRiseC = (pan.usualRiseC ?? rise) + (rise - (pan.usualRiseC ?? rise)) * FOLLOW;
    if (rise < -BOIL_MARGIN_C - 2 * noise || fell > Math.max(0.8, 6 * noise)) disturb(pan, t);
    return;
  }
  const settled = pan.disturbedAt < 0 || t - pan.disturbedAt >= SETTLE_MS;
  if (rise < -BOIL_MARGIN_C || !settled) return;
  const climbing = slopeOfLast(pan.track, 7);
  if (climbing === null || climbing >= PLATEAU_C_PER_MIN) return;
  pan.phase = 'boiling';
  // The climb to the boil is no part of the rate of the boil.
  pan.boilingFrom = t;
}

function slopeOfLast(track: TemperatureTrack, count: number): number | null {
  const times = track.blockTimes.slice(-count);
  const values = track.blockValues.slice(-count);
  if (times.length < 4) return null;
  const half = times.length >> 1;
  const mean = (list: number[]): number => list.reduce((sum, value) => sum + value, 0) / list.length;
  const minutes = (mean(times.slice(-half)) - mean(times.slice(0, half))) / 60_000;
  return (mean(values.slice(-half)) - mean(values.slice(0, half))) / minutes;
}

/** Something cold or unknown reached the tip: strength and slope start anew, contents stay. */
export function disturb(pan: PanModel, t: number): void {
  pan.phase = pan.phase === 'cold' ? 'cold' : 'settling';
  pan.disturbedAt = t;
  pan.line = startLine();
  pan.fit = null;
  pan.usualRiseC = null;
}

/** How much strength a degree of rise is worth here, °Bx/°C. */
function brixPerC(design: PanDesign, around: Surroundings, rise: number, seen: number): number {
  const nearby = strengthFromRise(Math.max(0, rise) + 0.1, design.shares, around.pressureHpa ?? 1013.25);
  return nearby === null ? Infinity : Math.max(1, (nearby - seen) / 0.1);
}

/** Blocks in a row that the line does not explain before it starts anew: the fire has changed. */
const LEFT_BEHIND_BLOCKS = 4;

/** The line's level where it agrees with the probe, else what this block says: a line must not hide what is there. */
function strengthNow(pan: PanModel, seen: number, sigmaBrix: number): number {
  if (pan.fit === null || pan.fit.u <= 0) return seen;
  const byLine = brixOfWaterPerSugar(pan.fit.u);
  const agrees = Math.abs(byLine - seen) <= Math.max(0.6, 2.5 * sigmaBrix);
  pan.leftBehind = agrees ? 0 : pan.leftBehind + 1;
  if (agrees) return byLine;
  if (pan.leftBehind >= LEFT_BEHIND_BLOCKS) {
    pan.line = startLine();
    pan.leftBehind = 0;
  }
  return seen;
}

/** A slope known to this share tells the evaporation. */
const TELLING_SLOPE = 0.15;

/** The rise corrects the contents where it knows the strength better than the count does. */
function learn(pan: PanModel, sigmaBrix: number): void {
  if (pan.brix === null || pan.brix <= 0 || pan.fit === null) return;
  correctByStrength(pan.contents, pan.brix, sigmaBrix);
  const { sugarKg } = pan.contents;
  if (sugarKg === null || pan.contents.sugarGuessed || pan.fit.kSigma > TELLING_SLOPE * pan.fit.k) return;
  pan.learntKgPerS = pan.fit.k * sugarKg;
}

/** A volume seen by eye tells the evaporation once so much of the water was counted off since the last one. */
const TELLING_LOSS = 0.15;

/** The water that a depth shows, against what was counted, corrects the evaporation: called before the contents change. */
export function learnFromVolume(pan: PanModel, design: PanDesign, waterSeenKg: number): void {
  const { waterKg, countedKg } = pan.contents;
  const rate = evaporationKgPerS(pan, design);
  if (
    waterKg === null ||
    rate === null ||
    rate === 0 ||
    pan.flame === 0 ||
    countedKg < TELLING_LOSS * (waterKg + countedKg)
  )
    return;
  const factor = (countedKg + waterKg - waterSeenKg) / countedKg;
  if (factor > 0.2 && factor < 3) pan.learntKgPerS = (rate / pan.flame) * factor;
}

/** How far under the finish the strength must fall before the finish counts as not reached, °Bx. */
const FINISH_DEADBAND_BRIX = 1;
/** How far beyond its finish a pan is past it, °Bx: about 0.2–0.3 °C of rise; and where that ends again. */
const PAST_FINISH_BRIX = 1;
const PAST_ENDS_BRIX = 0.4;
/** Below this spread of a block one block is enough to say that the finish is reached, °Bx. */
const QUIET_BRIX = 0.4;
/** A noisy probe needs a wider deadband, so many standard deviations of a block. */
const NOISES = 6;
/** Noise alone does not put a pan past its finish, or back before it, so many blocks in a row. */
const SURE_BLOCKS = 3;

/** Latches with deadbands, so that noise around a limit makes one call; null strength is off the scale: too strong. */
function judgeFinish(pan: PanModel, finishBrix: number, sigmaBrix: number): void {
  const brix = pan.brix ?? 100;
  const clearlyBelow = brix < finishBrix - Math.max(FINISH_DEADBAND_BRIX, NOISES * sigmaBrix);
  pan.belowBlocks = clearlyBelow ? pan.belowBlocks + 1 : 0;
  pan.finishBlocks = brix >= finishBrix ? pan.finishBlocks + 1 : 0;
  if (pan.finishBlocks >= (sigmaBrix > QUIET_BRIX ? 2 : 1)) pan.reachedFinish = true;
  else if (pan.belowBlocks >= SURE_BLOCKS) pan.reachedFinish = false;
  pan.pastBlocks = brix >= finishBrix + PAST_FINISH_BRIX ? pan.pastBlocks + 1 : 0;
  if (pan.pastBlocks >= SURE_BLOCKS) pan.reachedPast = true;
  else if (brix < finishBrix + Math.min(PAST_ENDS_BRIX, PAST_FINISH_BRIX - NOISES * sigmaBrix)) pan.reachedPast = false;
}

/** Poured into, emptied or off: whatever finish it had reached is over. */
export function finishIsOver(pan: PanModel): void {
  pan.reachedFinish = false;
  pan.reachedPast = false;
  pan.pastBlocks = 0;
  pan.finishBlocks = 0;
}

/** Below a boil only instruments tell the strength; the line joins their readings. */
function followBelowBoil(pan: PanModel, t: number): void {
  pan.phase = 'boiling';
  pan.fit = lineNow(pan.line, LEAST_SPAN_S);
  const known = pan.fit !== null && pan.fit.u > 0 ? brixOfWaterPerSugar(pan.fit.u) : (pan.density?.brix ?? null);
  pan.brix = known;
  pan.brixAt = t;
  if (known !== null && pan.contents.sugarKg !== null)
    pan.contents.waterKg = pan.contents.sugarKg * waterPerSugar(known);
}

/** After a gap nothing recent is known; contents and what was learnt stay. */
export function panAfterGap(pan: PanModel, t: number): void {
  forgetRecent(pan.track);
  pan.steppedTo = t;
  if (pan.phase !== 'cold') disturb(pan, t);
  pan.brix = null;
  pan.rateCPerMin = null;
  pan.riseC = null;
}

/** Where the probe of a pan went elsewhere or came back: the first minute is its lag, not the pan. */
export function panProbeMoved(pan: PanModel, t: number): void {
  forgetRecent(pan.track);
  disturb(pan, t);
  if (pan.phase !== 'cold') pan.phase = 'settling';
  pan.brix = null;
  pan.rateCPerMin = null;
  pan.riseC = null;
}

/** A thermometer read by hand is read to about this, °C (1 sigma). */
const HAND_SIGMA_C = 0.3;

/** A temperature read by hand at t (ms) stands for the pan as a block of readings would. */
export function panReadByHand(pan: PanModel, design: PanDesign, around: Surroundings, t: number): void {
  if (pan.byHand === null || around.waterC === null || design.ceilingC !== null) return;
  const rise = pan.byHand.celsius - around.waterC + pan.riseCorrectionC;
  pan.riseC = rise;
  pan.track.noise = HAND_SIGMA_C;
  pan.phase = rise >= -BOIL_MARGIN_C - HAND_SIGMA_C ? 'boiling' : pan.phase === 'cold' ? 'cold' : 'settling';
  pan.usualRiseC = rise;
  followBoil(pan, design, around, t, rise);
}

/** A rise that moves by more than this makes the line's older points wrong, °C. */
const MOVED_C = 0.12;

/**
 * The same pan seen through a corrected probe or water point: temperatures move by `byC`, the rise by `riseByC` (°C).
 * The line starts anew where its older points no longer fit.
 */
export function panCorrected(pan: PanModel, byC: number, riseByC: number): void {
  const { track } = pan;
  track.values = track.values.map((value) => value + byC);
  track.blockValues = track.blockValues.map((value) => value + byC);
  track.open = track.open.map((value) => value + byC);
  if (pan.usualRiseC !== null) pan.usualRiseC += riseByC;
  if (pan.riseC !== null) pan.riseC += riseByC;
  if (Math.abs(riseByC) <= MOVED_C) return;
  pan.line = startLine();
  pan.fit = null;
}
