// Pours that nobody noted: a fall out of a boil with the shape of something cold, and how much it must have been.
import type { Course, Fall, SeenPour } from './course.ts';
import { beliefOf, COLD_C, fullKgPerS, massKg, type Setting } from './course-time.ts';
import { pourIntoAll } from './course-mix.ts';
import { LEVEL, FIRE, SIZE, varianceOf } from './filter/belief.ts';
import { massShareOf } from './filter/mix.ts';
import { steamForWarming } from './filter/liquid.ts';

/** Something poured cools at once; a pan whose fire went out takes longer to its lowest, ms. */
const FALLS_WITHIN_MS = 150_000;
/** What a fire puts back in half an hour it has put back; after that it was something else, ms. */
const RECOVERS_WITHIN_MS = 30 * 60_000;
/** A tip lifted out and put back recovers with far less heat than the liquid would need: this share of it. */
const LEAST_HEAT_SHARE = 0.35;
const MOST_HEAT_SHARE = 3;
/** A pour that was noted so long before or after a fall is the one that was seen, ms. */
export const NOTED_BEFORE_MS = 6 * 60_000;
export const NOTED_AFTER_MS = 8 * 60_000;
/** Whoever says no to a pour means the one at this time, ms. */
const SAME_POUR_MS = 60_000;
/** Smaller than this a dip is stirring, L. */
const LEAST_LITRES = 0.15;
/** When it began to boil again is seen to about this, s; lag and gradual pouring blunt a dip by this share. */
const RECOVERY_SIGMA_S = 12;
const DIP_SHARE = 0.25;
const HEAT_SHARE = 0.15;
const KEEP = 12;

/** It boils again: what was the fall before? */
export function endFall(course: Course, setting: Setting, fall: Fall): void {
  course.fall = null;
  const { noted, refused, sapBrix } = setting;
  if (fall.heatS <= 0 || fall.lowestAt - fall.at > FALLS_WITHIN_MS || course.t - fall.at > RECOVERS_WITHIN_MS) return;
  if (noted.some((at) => at > fall.at - NOTED_BEFORE_MS && at < fall.at + NOTED_AFTER_MS)) return;
  const litres = litresOfFall(course, setting, fall);
  if (litres === null || litres.value < LEAST_LITRES) return;
  const taken = !refused.some((at) => Math.abs(at - fall.at) < SAME_POUR_MS);
  const pour: SeenPour = { at: fall.at, litres: litres.value, sigma: litres.sigma, taken, added: null };
  if (taken) {
    const poured = { litres: litres.value, share: litres.sigma / litres.value, brix: sapBrix, guessed: true };
    pour.added = pourIntoAll(course, setting, poured);
  }
  course.seen = [...course.seen.slice(1 - KEEP), pour];
}

/** From the heat that it swallowed and from how far it cooled what was there, the surer the heavier; null for no pour. */
function litresOfFall(course: Course, setting: Setting, fall: Fall): { value: number; sigma: number } | null {
  const now = beliefOf(course, setting);
  const boilsAt = (setting.around.waterC ?? 100) + fall.fromC;
  const fellC = fall.fromC - fall.lowestC;
  const steam = fullKgPerS(now);
  const coldKg = (steam * fall.heatS) / steamForWarming(setting.sapBrix, COLD_C, boilsAt);
  const there = massKg(now);
  const dipKg = (there * fellC) / Math.max(5, boilsAt - COLD_C - fellC);
  const needs = (there + dipKg) * steamForWarming(0, boilsAt - fellC, boilsAt);
  const got = (steam * fall.heatSinceLowestS) / Math.max(1e-6, needs);
  const heat = new Array<number>(SIZE).fill(0);
  heat[LEVEL] = heat[FIRE] = 1;
  const heatShare = Math.hypot(Math.sqrt(varianceOf(now, heat)), RECOVERY_SIGMA_S / fall.heatS, HEAT_SHARE);
  const massShare = massShareOf(now);
  const unsure = Math.exp(Math.hypot(heatShare, massShare));
  if (got < LEAST_HEAT_SHARE / unsure || got > MOST_HEAT_SHARE * unsure) return null;
  const dipShare = Math.hypot(massShare, DIP_SHARE);
  const [a, b] = [1 / heatShare ** 2, 1 / dipShare ** 2];
  const value = Math.exp((a * Math.log(Math.max(1e-3, coldKg)) + b * Math.log(Math.max(1e-3, dipKg))) / (a + b));
  return { value, sigma: value / Math.sqrt(a + b) };
}
