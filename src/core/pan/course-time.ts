// Time in the course of a pan: heat first pays for what is cold, then boils water away.
import type { Surroundings } from './pan-state.ts';
import type { PanDesign } from './setup.ts';
import { type Belief, FIRE, LEVEL, SUGAR, variance, waterOf } from './filter/belief.ts';
import type { Base } from './filter/base.ts';
import { brixOfWaterPerSugar, HOT_VOLUME, riseOfWater, steamForWarming, volumeShare } from './filter/liquid.ts';
import { stillShare } from './still-surface.ts';
import { FIRES, passTime } from './filter/predict.ts';
import { startBelief } from './filter/start.ts';
import { type Course, isOff } from './course.ts';
import { judgeCount } from './finish.ts';

/** What a pan's course needs to know of the pan and the air. */
export interface Setting {
  design: PanDesign;
  around: Surroundings;
  /** When people say that they poured, ms, and which pours that were seen they say were none. */
  noted: readonly number[];
  refused: readonly number[];
  /** The sap that a pour nobody noted would be. */
  sapBrix: number;
}

/** Time is passed in steps that end on this grid, ms, so that the steps are the same whenever something was noted. */
export const GRID_MS = 5000;

/** Cold sap, unless its temperature was noted, °C (trade: kept below 4). */
export const COLD_C = 5;

/** Base of a pan as its surroundings tell it now. */
export const baseOf = ({ waterSigmaC, sapShare, sapShareSigma, waterSapCovariance }: Surroundings): Base => ({
  sapShare,
  offsetVariance: Math.min(25, waterSigmaC * waterSigmaC),
  sapVariance: sapShareSigma * sapShareSigma,
  covariance: Number.isFinite(waterSapCovariance) ? waterSapCovariance : 0,
});

/** What is believed of the pan, begun if nothing has happened to it yet. */
export function beliefOf(course: Course, { design, around }: Setting): Belief {
  const base = (course.base ??= baseOf(around));
  return (course.belief ??= startBelief(design, base, FIRES[design.heatKind].swing));
}

/** Mass in the pan, kg. */
export const massKg = ({ x }: Belief): number => Math.exp(x[SUGAR]!) * (1 + waterOf({ x }));

/** Steam at full flame, kg/s. */
export const fullKgPerS = ({ x }: Belief): number => Math.exp(x[LEVEL]! + x[FIRE]!);

/** Heat that warms the pan's contents from so far under their boil, as kg of steam. */
export function debtFor(belief: Belief, around: Surroundings, underC: number): number {
  const boilsAt = around.waterC ?? 100;
  const brix = brixOfWaterPerSugar(waterOf(belief));
  return massKg(belief) * steamForWarming(brix, boilsAt - underC, boilsAt);
}

/** A thermometer read in a pan that nothing heats stands so long, ms (judgement). */
const COOLING_READ_MS = 10 * 60_000;

/**
 * Volume of what is in the pan as it stands over its volume at 20 °C: by its thermometer, or by the heat that it still
 * owes to what was poured in; that of a boil where nobody can tell how warm it is.
 */
export function volumeNow(course: Course, setting: Setting, belief: Belief): number {
  const { around, design } = setting;
  const brix = brixOfWaterPerSugar(waterOf(belief));
  const boilsAt = around.waterC ?? 100;
  if (isOff(course) || design.ceilingC !== null) {
    const readAt = Math.max(course.handAt, course.recentTimes.at(-1) ?? -Infinity);
    const isRead = course.riseC !== null && course.t - readAt <= COOLING_READ_MS;
    return isRead ? volumeShare(brix, boilsAt + course.riseC!) : HOT_VOLUME;
  }
  const { debtKg, phase } = course;
  if (phase === 'boiling' || debtKg === null || debtKg === 0) return HOT_VOLUME;
  const perDegree = steamForWarming(brix, boilsAt - MIDDLE_C, boilsAt) / MIDDLE_C;
  return volumeShare(brix, boilsAt - debtKg / massKg(belief) / perDegree);
}

/** The heat of a degree hardly hangs on where it is: that of so far under a boil stands for all, °C. */
const MIDDLE_C = 90;

/** Brings the course to t (ms); what was at or before its own moment is done. */
export function passTo(course: Course, setting: Setting, t: number): void {
  while (course.t < t) {
    const next = Math.min(t, (Math.floor(course.t / GRID_MS) + 1) * GRID_MS);
    passStep(course, setting, (next - course.t) / 1000);
    course.t = next;
    if (next % GRID_MS === 0 && next - (course.recentTimes.at(-1) ?? 0) > UNSEEN_MS) judgeUnseen(course, setting);
  }
}

/** No block for so long, and the finish is judged by what was counted, ms. */
const UNSEEN_MS = 30_000;

/** A pan without a probe in it reaches its finish all the same. */
function judgeUnseen(course: Course, setting: Setting): void {
  if (course.belief === null || !course.told || isOff(course) || course.debtKg !== 0) return;
  judgeByCount(course, setting);
}

/** Holds what was counted against the finish, where no thermometer shows it. */
export function judgeByCount(course: Course, setting: Setting): void {
  const { inDoubt, reachedFinish, reachedPast } = course;
  judgeCount(course, beliefOf(course, setting), setting.around.limits.finish);
  // What was poured in may be of any strength: no count ends what was reached.
  if (inDoubt && reachedFinish)
    Object.assign(course, { reachedFinish, reachedPast: reachedPast || course.reachedPast });
}

function passStep(course: Course, setting: Setting, seconds: number): void {
  const { belief } = course;
  if (belief === null) return;
  const flame = intensity(course, setting);
  const lit = !isOff(course);
  const boiling = lit ? boilingSeconds(course, setting, seconds) : 0;
  if (course.warming !== null && lit) course.warming.heatS += seconds * flame;
  if (course.fall !== null && lit) {
    course.fall.heatS += seconds * flame;
    course.fall.heatSinceLowestS += seconds * flame;
  }
  const tended = setting.design.ceilingC === null;
  const passing = { flame, seconds, boiling, wanderC: course.wanderC, tended };
  passTime(belief, FIRES[setting.design.heatKind], passing);
  if (boiling > 0 && course.phase === 'boiling') {
    const share = Math.sqrt(variance(belief, LEVEL));
    course.boiledWith = { lnKgPerS: belief.x[LEVEL]!, share, t: course.t };
  }
}

/** By how much water leaves, against full flame; below a boil, against a usual ceiling. */
export function intensity(course: Course, setting: Setting): number {
  const { design, around } = setting;
  if (design.ceilingC === null) return course.flame;
  const celsius = course.riseC === null ? design.ceilingC - STILL_COOLER_C : (around.waterC ?? 100) + course.riseC;
  const u = waterOf(beliefOf(course, setting));
  return stillShare(celsius, riseOfWater(u, design.shares, around.pressureHpa ?? 1013.25).riseC);
}

/** Who guards a ceiling stays so much under it (practice), °C. */
const STILL_COOLER_C = 4;

/** Of so many seconds those in which steam leaves; the others pay what is owed. */
function boilingSeconds(course: Course, { design }: Setting, seconds: number): number {
  if (design.ceilingC !== null || course.debtKg === 0) return seconds;
  if (course.debtKg === null || course.flame === 0) return 0;
  const perSecond = fullKgPerS(course.belief!) * course.flame;
  const paid = Math.min(course.debtKg, perSecond * seconds);
  course.debtKg -= paid;
  return seconds - paid / perSecond;
}
