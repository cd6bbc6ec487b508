// What a person would do well to know beside the reading: how much may be poured in, and whether the batch ends too shallow.
import { type Belief, SUGAR, variance } from './filter/belief.ts';
import {
  brixOfWaterPerSugar,
  HOT_VOLUME,
  litresOf,
  massOfLitres,
  steamForWarming,
  waterPerSugar,
} from './filter/liquid.ts';
import { isOff } from './course.ts';
import { COLD_C } from './course-time.ts';
import { UNTOLD_SUGAR } from './contents-possible.ts';
import { type Look, steamAtBoil, waterAtDepth } from './forecast.ts';
import { depthAtLitres, litresAtDepth } from '../physics/vessel.ts';
import { Z80 } from '../quantities/spread.ts';

/** Cold that the fire takes back within this is a boil that was not lost, s (practice: a minute). */
const TAKEN_BACK_S = 60;

/** A fire that is known worse than this says nothing of what it takes, standard deviation of its logarithm. */
const USEFUL_FIRE = 0.7;

/**
 * Litres of cold sap (at 20 °C) that may go in at once without losing the boil for more than a minute, and after how many
 * seconds of boiling as much has left; null while the fire is not known. Of a pan that is still warmed it is what will hold.
 */
export function topUpRoom(look: Look): { litres: number; everyS: number } | null {
  const { now, pan, setting } = look;
  if (now === null || isOff(pan.course) || pan.course.debtKg === null) return null;
  const steam = steamAtBoil(pan.course, setting, now);
  if (steam.kgPerS <= 0 || steam.sigma > USEFUL_FIRE) return null;
  const perKg = steamForWarming(setting.sapBrix, COLD_C, setting.around.waterC ?? 100);
  const litres = (steam.kgPerS * TAKEN_BACK_S) / perKg / massOfLitres(1, setting.sapBrix);
  return { litres, everyS: litres / steam.kgPerS };
}

export interface EndsShallow {
  /** Depth at the finish, mm. */
  depthMm: number;
  /** Strength at which the liquid has fallen to the least depth: until then it goes into a smaller pot, °Bx. */
  brixToMove: number;
  /** Sap, L at 20 °C, that would make it end at the least depth. */
  moreSapLitres: number;
}

/** Whether this batch will stand lower than the least depth when it is finished, as if nothing more is poured in; `sapBrix` is that of its sap. */
export function endsShallow(look: Look, sapBrix: number): EndsShallow | null {
  const { now, setting } = look;
  const { design, around } = setting;
  if (now === null || design.vessel === null || look.litresShare === Infinity) return null;
  const litres = litresOf(Math.exp(now.x[SUGAR]!), waterPerSugar(around.limits.finish.brix));
  const depthMm = depthAtLitres(design.vessel, litres * HOT_VOLUME);
  const most = mostShare(look, now);
  const mostMm = most === null ? null : depthAtLitres(design.vessel, litres * HOT_VOLUME * most);
  if (depthMm === null || mostMm === null || mostMm >= design.minDepthMm) return null;
  const u = waterAtDepth(now, setting, design.minDepthMm);
  const least = smallestBatch(look, sapBrix);
  if (u === null || least === null) return null;
  const moreSapLitres = Math.max(0, least.sapLitres * (1 - litres / least.syrupLitres));
  return { depthMm, brixToMove: brixOfWaterPerSugar(Math.max(0.1, u)), moreSapLitres };
}

/** A batch known to this share is told of as it is believed. */
const SURE_SHARE = 0.25;

/** By how much more syrup than is believed it must still be too little; null where its sugar is as good as not known. */
function mostShare({ litresShare }: Look, now: Belief): number | null {
  if (litresShare <= SURE_SHARE) return 1;
  const sigma = Math.sqrt(variance(now, SUGAR));
  return sigma > UNTOLD_SUGAR ? null : Math.exp(Z80 * sigma);
}

export interface SmallestBatch {
  syrupLitres: number;
  sapLitres: number;
  /** How strong that sap is, °Bx. */
  sapBrix: number;
}

/** Litres of finished syrup, and of sap of `sapBrix`, that stand at this vessel's least depth; null without a vessel. */
export function smallestBatch({ setting }: Look, sapBrix: number): SmallestBatch | null {
  const { design, around } = setting;
  const hot = design.vessel === null ? null : litresAtDepth(design.vessel, design.minDepthMm);
  if (hot === null) return null;
  const syrupLitres = hot / HOT_VOLUME;
  const { brix } = around.limits.finish;
  const sapLitres = (massOfLitres(syrupLitres, brix) * brix) / sapBrix / massOfLitres(1, sapBrix);
  return { syrupLitres, sapLitres, sapBrix };
}

/** More sugar than was noted by so many standard deviations of that, and by this share of it at the least, is another amount. */
const MORE_SIGMAS = 3;
const MORE_SHARE = 0.6;

/** The boil shows far more sugar than all that was noted of this pan can hold: something went in that nobody noted. */
export function isMoreThanNoted({ pan: { course }, now }: Look): boolean {
  const { notedSugar, emptied } = course;
  if (now === null || notedSugar === null || emptied) return false;
  return now.x[SUGAR]! - notedSugar.ln > Math.max(Math.log1p(MORE_SHARE), MORE_SIGMAS * notedSugar.sigma);
}
