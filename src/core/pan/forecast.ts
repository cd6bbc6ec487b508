// When: the time until a strength or a depth is reached, with its middle 80 %, as if the fire stays and nothing is poured in.
import { isOff } from './course.ts';
import { intensity, nowOf, type Setting } from './course-time.ts';
import { FIRE_KINDS, weightsOf, type Bank } from './filter/bank.ts';
import { type Belief, FIRE, LEVEL, SIZE, SUGAR, varianceOf, WATER, waterOf } from './filter/belief.ts';
import { LEVEL_VARIANCE_PER_S } from './filter/predict.ts';
import { HOT_VOLUME, litresOf, massOfLitres, waterPerSugar } from './filter/liquid.ts';
import { slopeOfRecent } from './phase.ts';
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

/** Whether heat goes in, as far as anybody can tell. */
export function isHeated({ course }: PanModel, { design }: Setting): boolean {
  if (isOff(course) || course.flame <= 0 || course.bank === null) return false;
  if (design.ceilingC !== null) return true;
  if (course.debtKg === null) return false;
  const cools = course.phase !== 'boiling' && course.debtKg > 0 && (slopeOfRecent(course) ?? 0) < COOLS_C_PER_MIN;
  return !cools || course.t - course.disturbedAt < 120_000;
}

/** No block for so long, and a pan that nobody told of is not known, ms. */
const UNSEEN_MS = 45_000;

/** Something is known of the pan: somebody told how much is in it, or its probe or a hand reading showed it just now. */
export const isKnown = ({ course }: PanModel, t: number): boolean =>
  course.told || t - (course.recentTimes.at(-1) ?? -Infinity) <= UNSEEN_MS || t - course.handAt <= HAND_LASTS_MS;

/** A thermometer read by hand shows a pan for so long, ms. */
const HAND_LASTS_MS = 600_000;
/** The forecast of a pan that nobody told of rests on its curve alone, and must be known so well by it. */
const USELESS_UNTOLD = 0.6;

/** Time until the pan holds a strength, °Bx; 0 once there, null when not known. */
export function timeToStrength(pan: PanModel, setting: Setting, brix: number, t: number): TimeLeft | null {
  if (!isHeated(pan, setting)) return null;
  const now = nowOf(pan.course, setting);
  const water = waterOf(now);
  const over = water - waterPerSugar(brix);
  if (!isKnown(pan, t)) return null;
  if (over <= 0) return { seconds: 0, low: 0, high: 0, sigma: 0 };
  const slopes = new Array<number>(SIZE).fill(0);
  slopes[WATER] = water;
  const left = timeFor(pan, setting, now, over, slopes, t);
  const useless =
    left !== null &&
    !pan.course.told &&
    !pan.course.reachedFinish &&
    (left.sigma > USELESS_UNTOLD || pan.course.phase !== 'boiling');
  return useless ? null : left;
}

/** Time until a depth is reached, mm; 0 once there, null when not known. */
export function timeToDepth(pan: PanModel, setting: Setting, mm: number, t: number): TimeLeft | null {
  if (!isHeated(pan, setting) || !contentsKnown(pan, setting)) return null;
  const now = nowOf(pan.course, setting);
  const u = waterAtDepth(now, setting, mm);
  if (u === null) return null;
  const water = waterOf(now);
  const over = water - u;
  if (over <= 0) return { seconds: 0, low: 0, high: 0, sigma: 0 };
  // The mass that stands at that depth is fixed, so the water to go hangs on the sugar, too.
  const slopes = new Array<number>(SIZE).fill(0);
  slopes[WATER] = water;
  slopes[SUGAR] = 1 + u;
  return timeFor(pan, setting, now, over, slopes, t);
}

/** Water per sugar when the liquid has fallen to a depth; below 0 where the sugar alone stands higher. */
export function waterAtDepth(now: Belief, { design }: Setting, mm: number): number | null {
  const litres = design.vessel === null ? null : litresAtDepth(design.vessel, mm);
  if (litres === null) return null;
  const sugar = Math.exp(now.x[SUGAR]!);
  let u = 1;
  for (let round = 0; round < 4; round++) u = massOfLitres(litres / HOT_VOLUME, 100 / (1 + Math.max(0, u))) / sugar - 1;
  return u;
}

/** Time for so much water per sugar to go, kg/kg; `slopes` say how that hangs on the state. */
function timeFor(
  pan: PanModel,
  setting: Setting,
  now: Belief,
  over: number,
  slopes: number[],
  t: number,
): TimeLeft | null {
  const { course } = pan;
  const { x } = now;
  const perS = Math.max(1e-9, intensity(course, setting)) * Math.exp(x[LEVEL]! - x[SUGAR]!);
  const owed = (setting.design.ceilingC === null ? (course.debtKg ?? 0) : 0) / Math.exp(x[SUGAR]!);
  const kind = kindOf(course.bank!);
  const seconds = secondsOfHeat((over + owed) / perS, x[FIRE]!, kind.lastsS);
  if (!(seconds < FURTHEST_S)) return null;
  const now_ = perS * Math.exp(x[FIRE]! * Math.exp(-seconds / kind.lastsS));
  const swing = kind.lastsS * (1 - Math.exp(-seconds / kind.lastsS));
  const weights = slopes.map((slope) => slope / now_);
  weights[SUGAR] = weights[SUGAR]! + over / perS;
  weights[LEVEL] = weights[LEVEL]! - (over + owed) / perS;
  weights[FIRE] = weights[FIRE]! - swing;
  const later = 2 * kind.variance * kind.lastsS * Math.max(0, seconds - swing) - kind.variance * swing * swing;
  const level = (LEVEL_VARIANCE_PER_S * seconds ** 3) / 3;
  const sigmaS = Math.sqrt(varianceOf(now, weights) + Math.max(0, later) + level + LEAST_SIGMA_S ** 2);
  return spread(Math.max(0, seconds - (t - course.t) / 1000), sigmaS);
}

/** Seconds until the fire has given so many seconds of its usual heat, starting from what it gives now: t + w τ (1 − e^(−t/τ)) = heat. */
function secondsOfHeat(heat: number, fire: number, lastsS: number): number {
  const more = Math.expm1(Math.max(-1, Math.min(1, fire)));
  let t = heat / (1 + more);
  for (let round = 0; round < 6; round++) {
    const fade = Math.exp(-t / lastsS);
    t = Math.max(0, t - (t + more * lastsS * (1 - fade) - heat) / (1 + more * fade));
  }
  return t;
}

/** The fire as all beliefs together have it. */
function kindOf(bank: Bank): { lastsS: number; variance: number } {
  const weights = weightsOf(bank);
  let lastsS = 0;
  let variance = 0;
  weights.forEach((w, i) => {
    lastsS += w * FIRE_KINDS[i]!.lastsS;
    variance += w * FIRE_KINDS[i]!.swing ** 2;
  });
  return { lastsS, variance };
}

/** Never negative: where it is known badly the range is that of a logarithm. */
function spread(seconds: number, sigmaS: number): TimeLeft | null {
  const sigma = Math.sqrt(Math.log1p((sigmaS / Math.max(seconds, sigmaS / 2)) ** 2));
  if (sigma > USELESS && sigmaS > 600) return null;
  return {
    seconds,
    low: seconds * Math.exp(-Z80 * sigma),
    high: Math.max(seconds * Math.exp(Z80 * sigma), seconds + sigmaS),
    sigma,
  };
}

/** Contents known worse than this are better called not known, share. */
const USEFUL_SHARE = 0.35;

/** Standard deviation of the logarithm of the litres. */
export function litresShare(pan: PanModel, setting: Setting): number {
  const now = nowOf(pan.course, setting);
  const weights = new Array<number>(SIZE).fill(0);
  weights[SUGAR] = 1;
  const u = waterOf(now);
  weights[WATER] = u / (1 + u);
  return Math.sqrt(varianceOf(now, weights));
}

export function contentsKnown(pan: PanModel, setting: Setting): boolean {
  return pan.course.told && pan.course.bank !== null && litresShare(pan, setting) < USEFUL_SHARE;
}

/** Litres at 20 °C; null while known too badly to be of use; 0 in a pan that was emptied. */
export function litresNow(pan: PanModel, setting: Setting): number | null {
  if (pan.course.emptied) return 0;
  if (!contentsKnown(pan, setting)) return null;
  const { x } = nowOf(pan.course, setting);
  return litresOf(Math.exp(x[SUGAR]!), waterOf({ x }));
}

/** Depth of the liquid as it stands, mm (4 % more than at 20 °C when hot); null while litres or vessel are not known. */
export function depthMm(pan: PanModel, setting: Setting): number | null {
  const litres = litresNow(pan, setting);
  const { vessel } = setting.design;
  return litres === null || vessel === null ? null : depthAtLitres(vessel, litres * HOT_VOLUME);
}

/** Steam leaving now, kg/s, and the standard deviation of its logarithm; null where it is not known. */
export function evaporation(pan: PanModel, setting: Setting): { kgPerS: number; sigma: number } | null {
  const { course } = pan;
  if (isOff(course)) return { kgPerS: 0, sigma: 0 };
  if (course.bank === null) return null;
  if (setting.design.ceilingC === null && (course.debtKg === null || course.debtKg > 0)) return null;
  const now = nowOf(course, setting);
  const weights = new Array<number>(SIZE).fill(0);
  weights[LEVEL] = weights[FIRE] = 1;
  return {
    kgPerS: intensity(course, setting) * Math.exp(now.x[LEVEL]! + now.x[FIRE]!),
    sigma: Math.sqrt(varianceOf(now, weights)),
  };
}
