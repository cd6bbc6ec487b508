// When: the time until a strength or a depth is reached, with its middle 80 %, as if the fire stays and nothing is poured in.
import { type Course, isOff } from './course.ts';
import { intensity, beliefOf, type Setting, volumeNow } from './course-time.ts';
import { type Belief, blank, FIRE, LEVEL, SIZE, SUGAR, varianceOf, WATER, waterOf } from './filter/belief.ts';
import { massShareOf, USEFUL_SHARE } from './filter/mix.ts';
import { FIRES, LEVEL_VARIANCE_PER_S } from './filter/predict.ts';
import { HOT_VOLUME, litresOf, massOfLitres, waterPerSugar } from './filter/liquid.ts';
import { slopeOfRecent } from './phase.ts';
import { fallInDoubt } from './pan-signs.ts';
import { isMoreThanPossible } from './contents-possible.ts';
import type { PanModel } from './pan-state.ts';
import { depthAtLitres, litresAtDepth } from '../physics/vessel.ts';
import { Z80 } from '../quantities/spread.ts';

export interface TimeLeft {
  seconds: number;
  low: number;
  high: number;
  /** Standard deviation of its logarithm. */
  sigma: number;
}

/** A forecast further ahead than this says nothing, s. */
const FURTHEST_S = 24 * 3600;
/** A forecast known worse than to this, standard deviation of its logarithm, is not known. */
const USELESS = 1.1;
/** No forecast is surer than this: a person looks, then acts, s. */
const LEAST_SIGMA_S = 6;
/** A pan that is not yet boiling and falls faster than this has lost its fire, °C/min. */
const COOLS_C_PER_MIN = -0.3;

/** What is known of a pan at one moment, worked out once for all that is asked of it. */
export interface Look {
  pan: PanModel;
  setting: Setting;
  /** ms */
  t: number;
  /** null where nothing has happened to the pan yet. */
  now: Belief | null;
  /** Heat goes in, as far as anybody can tell. */
  heated: boolean;
  /** Share to which the litres are known; Infinity while nobody told of them, or it fell. */
  litresShare: number;
  /** It fell out of thick syrup and nobody noted why: how strong it is now, how much, and so when it is done, nobody can tell. */
  fell: boolean;
}

/** What is known of a pan at t, ms of boil time. */
export function lookAt(pan: PanModel, setting: Setting, t: number): Look {
  const { course } = pan;
  const now = course.belief === null ? null : beliefOf(course, setting);
  const fell = fallInDoubt(pan.signs, course) !== null;
  return {
    pan,
    setting,
    t,
    now,
    heated: isHeated(pan, setting),
    litresShare: now === null || !course.told || fell ? Infinity : massShareOf(now),
    fell,
  };
}

/** Where no probe shows how fast it thickens, all rests on the amount: one that cannot be so, and is hours late, says nothing. */
function isLateByGuess({ pan: { course }, setting, t }: Look, now: Belief, left: TimeLeft | null): boolean {
  if (left === null || left.seconds <= MINUTES_S || t - (course.recentTimes.at(-1) ?? -Infinity) <= UNSEEN_MS)
    return false;
  return isMoreThanPossible(now, course, setting.design);
}

function isHeated({ course }: PanModel, { design }: Setting): boolean {
  if (isOff(course) || course.flame <= 0 || course.belief === null) return false;
  if (design.ceilingC !== null) return true;
  if (course.debtKg === null) return false;
  const cools = course.phase !== 'boiling' && course.debtKg > 0 && (slopeOfRecent(course) ?? 0) < COOLS_C_PER_MIN;
  return !cools || course.t - course.disturbedAt < COOLS_AFTER_MS;
}

/** A pour cools, too, but not for longer than this, ms. */
const COOLS_AFTER_MS = 120_000;

/** No block for so long, and a pan that nobody told of is not known, ms. */
const UNSEEN_MS = 45_000;

/** Something is known of the pan: somebody told how much is in it, or its probe or a hand reading showed it just now. */
export const isKnown = ({ pan: { course }, t }: Look): boolean =>
  course.told || t - (course.recentTimes.at(-1) ?? -Infinity) <= UNSEEN_MS || t - course.handAt <= HAND_LASTS_MS;

/** No thermometer shows its strength now (ms): it is kept below a boil, or none was in it of late. */
export const isCounted = ({ course }: PanModel, ceilingC: number | null, t: number): boolean =>
  ceilingC !== null || (t - (course.recentTimes.at(-1) ?? -Infinity) > UNSEEN_MS && t - course.handAt > HAND_LASTS_MS);

/** A thermometer read by hand shows a pan for so long, ms. */
const HAND_LASTS_MS = 600_000;
/** The forecast of a pan that nobody told of rests on its curve alone, and must be known so well by it. */
const USELESS_UNTOLD = 0.6;
/** A wide share is no harm where it is a matter of minutes: one that may be late by less than this is said, s. */
const MINUTES_S = 900;
/** It is reached: no time is left. */
export const THERE: TimeLeft = { seconds: 0, low: 0, high: 0, sigma: 0 };

/** Time until the pan holds a strength, °Bx; 0 once there, null when not known. */
export function timeToStrength(look: Look, brix: number): TimeLeft | null {
  const { now, pan } = look;
  if (now === null || !look.heated || look.fell || !isKnown(look)) return null;
  const water = waterOf(now);
  const over = water - waterPerSugar(brix);
  if (over <= 0) return THERE;
  const slopes = blank();
  slopes[WATER] = water;
  const left = timeFor(look, now, over, slopes);
  const { told, reachedFinish, phase } = pan.course;
  const wide = left !== null && left.sigma > USELESS_UNTOLD && left.high - left.seconds > MINUTES_S;
  const useless = !told && !reachedFinish && (wide || phase !== 'boiling');
  return useless || isLateByGuess(look, now, left) ? null : left;
}

/** Time until a depth is reached, mm; 0 once there, null when not known. */
export const timeToDepth = (look: Look, mm: number): TimeLeft | null =>
  look.litresShare >= USEFUL_SHARE ? null : countToDepth(look, mm);

/**
 * Time until a pan that no thermometer shows may be low, counted by the middle of what went in and boiled away, however
 * unsure: to a depth, mm, or in a vessel that nobody described until it would be as thick as its finish. null where nobody
 * told of an amount.
 */
export function countToLow(look: Look, mm: number): number | null {
  const { now, setting } = look;
  if (now === null || !look.heated || look.litresShare === Infinity) return null;
  const u = waterAtDepth(now, setting, mm) ?? waterPerSugar(setting.around.limits.finish.brix);
  return Math.max(0, secondsFor(look, now, waterOf(now) - u));
}

/** The same however badly the litres are known, as long as somebody told of them: its range says how badly. */
export function countToDepth(look: Look, mm: number): TimeLeft | null {
  const { now } = look;
  if (now === null || !look.heated || look.litresShare === Infinity) return null;
  const u = waterAtDepth(now, look.setting, mm);
  if (u === null) return null;
  const water = waterOf(now);
  const over = water - u;
  if (over <= 0) return THERE;
  // The mass that stands at that depth is fixed, so the water to go hangs on the sugar, too.
  const slopes = blank();
  slopes[WATER] = water;
  slopes[SUGAR] = 1 + u;
  return timeFor(look, now, over, slopes);
}

/** Water per sugar when the liquid has fallen to a depth; below 0 where the sugar alone stands higher. */
export function waterAtDepth(now: Belief, { design }: Setting, mm: number): number | null {
  const litres = design.vessel === null ? null : litresAtDepth(design.vessel, mm);
  if (litres === null) return null;
  const sugar = Math.exp(now.x[SUGAR]!);
  let u = waterOf(now);
  for (let round = 0; round < 2; round++) u = massOfLitres(litres / HOT_VOLUME, 100 / (1 + Math.max(0, u))) / sugar - 1;
  return u;
}

/** Seconds for so much water per sugar to go, kg/kg, by the middle alone; what is owed to what is cold comes first. */
function secondsFor({ pan: { course }, setting, t }: Look, { x }: Belief, over: number): number {
  const sugar = Math.exp(x[SUGAR]!);
  const perS = (Math.max(1e-9, intensity(course, setting)) * Math.exp(x[LEVEL]!)) / sugar;
  const owed = setting.design.ceilingC === null ? (course.debtKg ?? 0) / sugar : 0;
  const { lastsS } = FIRES[setting.design.heatKind];
  return secondsOfHeat((Math.max(0, over) + owed) / perS, x[FIRE]!, lastsS) - (t - course.t) / 1000;
}

/** Time for so much water per sugar to go, kg/kg; `slopes` say how that hangs on the state. */
function timeFor({ pan: { course }, setting, t }: Look, now: Belief, over: number, slopes: number[]): TimeLeft | null {
  const { x } = now;
  const fire = FIRES[setting.design.heatKind];
  const sugar = Math.exp(x[SUGAR]!);
  const perS = (Math.max(1e-9, intensity(course, setting)) * Math.exp(x[LEVEL]!)) / sugar;
  const owed = setting.design.ceilingC === null ? (course.debtKg ?? 0) / sugar : 0;
  const seconds = secondsOfHeat((over + owed) / perS, x[FIRE]!, fire.lastsS);
  if (!(seconds < FURTHEST_S)) return null;
  const fade = Math.exp(-seconds / fire.lastsS);
  const atTheEnd = perS * Math.exp(x[FIRE]! * fade);
  const swing = fire.lastsS * (1 - fade);
  for (let i = 0; i < SIZE; i++) slopes[i] = slopes[i]! / atTheEnd;
  slopes[SUGAR] = slopes[SUGAR]! + over / perS;
  slopes[LEVEL] = slopes[LEVEL]! - (over + owed) / perS;
  slopes[FIRE] = slopes[FIRE]! - swing;
  const later = fire.swing ** 2 * (2 * fire.lastsS * Math.max(0, seconds - swing) - swing * swing);
  const level = (LEVEL_VARIANCE_PER_S * seconds ** 3) / 3;
  const sigmaS = Math.sqrt(varianceOf(now, slopes) + Math.max(0, later) + level + LEAST_SIGMA_S ** 2);
  return spread(Math.max(0, seconds - (t - course.t) / 1000), sigmaS);
}

/** Seconds until the fire has given so many seconds of its usual heat, starting from what it gives now: t + w τ (1 − e^(−t/τ)) = heat. */
function secondsOfHeat(heat: number, fire: number, lastsS: number): number {
  const more = Math.expm1(Math.max(-1, Math.min(1, fire)));
  let t = heat / (1 + more);
  // Newton on a line that hardly bends: an eighth of a per cent is far under any range.
  for (let round = 0; round < 4; round++) {
    const fade = Math.exp(-t / lastsS);
    const step = (t + more * lastsS * (1 - fade) - heat) / (1 + more * fade);
    t = Math.max(0, t - step);
    if (Math.abs(step) < 1e-3 * t) break;
  }
  return t;
}

/** Never negative: where it is known badly the range is that of a logarithm. */
function spread(seconds: number, sigmaS: number): TimeLeft | null {
  const sigma = Math.sqrt(Math.log1p((sigmaS / Math.max(seconds, sigmaS / 2)) ** 2));
  if (sigma > USELESS && sigmaS > MINUTES_S) return null;
  const factor = Math.exp(Z80 * sigma);
  return { seconds, low: seconds / factor, high: Math.max(seconds * factor, seconds + sigmaS), sigma };
}

/** Litres at 20 °C; null while known too badly to be of use; 0 in a pan that was emptied. */
export function litresNow({ pan, now, litresShare }: Look): number | null {
  if (pan.course.emptied) return 0;
  if (now === null || litresShare >= USEFUL_SHARE) return null;
  return litresOf(Math.exp(now.x[SUGAR]!), waterOf(now));
}

/** Contents known worse than this are anybody's guess, share. */
const GUESSED_SHARE = 1;

/** What somebody told, where it is known too badly to be said as one number: its middle 80 %, L at 20 °C; null for any other. */
export function litresRoughly(look: Look): { low: number; high: number } | null {
  const { pan, now, litresShare } = look;
  if (pan.course.emptied || now === null || litresShare < USEFUL_SHARE || litresShare > GUESSED_SHARE) return null;
  const litres = litresOf(Math.exp(now.x[SUGAR]!), waterOf(now));
  const factor = Math.exp(Z80 * litresShare);
  return { low: litres / factor, high: litres * factor };
}

/** Volume as it stands over volume at 20 °C: 1.04 at a boil, and where nobody can tell how warm it is. */
export const swellOf = ({ pan: { course }, setting, now }: Look): number =>
  now === null ? HOT_VOLUME : volumeNow(course, setting, now);

/** Depth of so many litres as they stand, as warm as they are, mm; null while litres or vessel are not known. */
export function depthMm(look: Look, litres: number | null): number | null {
  const { vessel } = look.setting.design;
  return litres === null || vessel === null ? null : depthAtLitres(vessel, litres * swellOf(look));
}

/** Steam leaving now, kg/s, and the standard deviation of its logarithm; null where it is not known. */
export function evaporation({ pan: { course }, setting, now }: Look): { kgPerS: number; sigma: number } | null {
  if (isOff(course)) return { kgPerS: 0, sigma: 0 };
  if (now === null) return null;
  if (setting.design.ceilingC === null && (course.debtKg === null || course.debtKg > 0)) return null;
  return steamAtBoil(course, setting, now);
}

/** Steam that leaves once it boils, as `evaporation` tells it. */
export function steamAtBoil(course: Course, setting: Setting, now: Belief): { kgPerS: number; sigma: number } {
  const weights = blank();
  weights[LEVEL] = weights[FIRE] = 1;
  return {
    kgPerS: intensity(course, setting) * Math.exp(now.x[LEVEL]! + now.x[FIRE]!),
    sigma: Math.sqrt(varianceOf(now, weights)),
  };
}
