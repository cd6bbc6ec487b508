// The pan model, first form: temperature to rise, strength, rate and contents of one pan, step by step.
import type { PanDesign } from './setup.ts';
import { strengthFromRise } from '../physics/sugar-solution.ts';
import { evaporate, learn } from './evaporation.ts';
import { addPoint, brixOfWaterPerSugar, lineNow, startLine, waterPerSugar } from './evaporation-line.ts';
import { judgeFinish } from './finish.ts';
import { disturb, type PanModel, sugarRiseC, sugarRiseSigmaC, type Surroundings } from './pan-state.ts';
import { closeBlock, forgetRecent, hearReading, rateOfRise, type TemperatureTrack } from './temperature-track.ts';

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
/** Well over water only sugar holds the temperature up, °C; there a thick pan may climb by so much and still boil, °C/min. */
const WELL_OVER_C = 1;
const THICK_CLIMB_C_PER_MIN = 2.5;

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
  pan.riseC = block.celsius - around.waterC;
  if (pan.off) {
    // It cools: what the probe says is no boil, and tells nothing of the strength.
    if (pan.phase === 'boiling') disturb(pan, t);
    pan.brix = null;
    return;
  }
  if (design.ceilingC === null) followBoil(pan, design, around, block.t, pan.riseC);
  else followBelowBoil(pan, t);
}

function followBoil(pan: PanModel, design: PanDesign, around: Surroundings, t: number, rise: number): void {
  notePhase(pan, t, rise);
  if (pan.phase !== 'boiling') {
    pan.fit = null;
    pan.brix = null;
    pan.brixAt = t;
    return;
  }
  const seen = strengthFromRise(sugarRiseC(around, Math.max(0, rise)), design.shares, around.pressureHpa ?? 1013.25);
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
  learn(pan, perC * Math.hypot(blockSigmaC, sugarRiseSigmaC(around, rise)));
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
  const most = rise > WELL_OVER_C ? THICK_CLIMB_C_PER_MIN : PLATEAU_C_PER_MIN;
  if (climbing === null || climbing >= most) return;
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

/** How much strength a degree of rise is worth here, °Bx/°C. */
function brixPerC(design: PanDesign, around: Surroundings, rise: number, seen: number): number {
  const higher = sugarRiseC(around, Math.max(0, rise) + 0.1);
  const nearby = strengthFromRise(higher, design.shares, around.pressureHpa ?? 1013.25);
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

/** Below a boil only instruments tell the strength; the line joins their readings. */
function followBelowBoil(pan: PanModel, t: number): void {
  pan.phase = 'boiling';
  pan.fit = lineNow(pan.line, LEAST_SPAN_S);
  const known = pan.fit !== null && pan.fit.u > 0 ? brixOfWaterPerSugar(pan.fit.u) : pan.densityBrix;
  pan.brix = known;
  pan.brixAt = t;
  if (known !== null && pan.contents.sugarKg !== null)
    pan.contents.waterKg = pan.contents.sugarKg * waterPerSugar(known);
}

/** After a gap nothing recent is known; contents and what was learnt stay. */
export function panAfterGap(pan: PanModel, t: number): void {
  pan.steppedTo = t;
  if (pan.phase !== 'cold') disturb(pan, t);
  nothingRecent(pan);
}

/** Where the probe of a pan went elsewhere or came back: the first minute is its lag, not the pan. */
export function panProbeMoved(pan: PanModel, t: number): void {
  disturb(pan, t);
  nothingRecent(pan);
}

function nothingRecent(pan: PanModel): void {
  forgetRecent(pan.track);
  pan.brix = null;
  pan.rateCPerMin = null;
  pan.riseC = null;
}

/** A thermometer read by hand is read to about this, °C (1 sigma). */
const HAND_SIGMA_C = 0.3;

/** A temperature read by hand at t (ms) stands for the pan as a block of readings would. */
export function panReadByHand(pan: PanModel, design: PanDesign, around: Surroundings, t: number): void {
  if (pan.byHand === null || around.waterC === null || design.ceilingC !== null) return;
  const rise = pan.byHand.celsius - around.waterC;
  pan.riseC = rise;
  pan.track.noise = HAND_SIGMA_C;
  pan.phase = rise >= -BOIL_MARGIN_C - HAND_SIGMA_C ? 'boiling' : pan.phase === 'cold' ? 'cold' : 'settling';
  pan.usualRiseC = rise;
  followBoil(pan, design, around, t, rise);
}

/** A rise that moves by more than this makes the line's older points wrong, °C. */
const MOVED_C = 0.12;

/**
 * The same pan seen through a corrected probe (its temperatures move by `byC`, °C), water point or sap.
 * The line starts anew where its older points no longer fit.
 */
export function panCorrected(pan: PanModel, before: Surroundings, after: Surroundings, byC: number): void {
  if (before === after && byC === 0) return;
  const waterBy = before.waterC === null || after.waterC === null ? 0 : after.waterC - before.waterC;
  const { track } = pan;
  if (byC !== 0) {
    track.values = track.values.map((value) => value + byC);
    track.blockValues = track.blockValues.map((value) => value + byC);
    track.open = track.open.map((value) => value + byC);
  }
  if (pan.usualRiseC !== null) pan.usualRiseC += byC - waterBy;
  const rise = pan.riseC ?? 0;
  if (pan.riseC !== null) pan.riseC += byC - waterBy;
  const moved = sugarRiseC(after, rise + byC - waterBy) - sugarRiseC(before, rise);
  if (Math.abs(moved) <= MOVED_C) return;
  pan.line = startLine();
  pan.fit = null;
}
