// The liquid as the filter needs it: its rise, litres and heat as functions of water per sugar, with their slopes.
import type { SugarShares } from '../../boil/entries.ts';
import { densityKgPerM3 } from '../../physics/density.ts';
import { latentHeatKjPerKg, specificHeatKjPerKgK } from '../../physics/heat.ts';
import { riseFromStrength } from '../../physics/sugar-solution.ts';

/** Water per sugar, kg/kg, of a strength in °Brix (greater than 0). */
export const waterPerSugar = (brix: number): number => (100 - brix) / brix;

/** Strength in °Brix of water per sugar. */
export const brixOfWaterPerSugar = (u: number): number => 100 / (1 + u);

/** Published rises end at 80 °Bx; beyond it the curve goes on as straight as it ended. */
const LEAST_U = waterPerSugar(80);
/** Step of the slope, share of u. */
const STEP = 0.02;

/** Rise that the sugars alone make, °C, and its slope over water per sugar (negative). */
export function riseOfWater(u: number, shares: SugarShares, pressureHpa: number): { riseC: number; slope: number } {
  const at = Math.max(u, LEAST_U);
  const more = at * (1 + STEP);
  const here = riseFromStrength(brixOfWaterPerSugar(at), shares, pressureHpa) ?? 0;
  const beside = riseFromStrength(brixOfWaterPerSugar(more), shares, pressureHpa) ?? 0;
  const slope = (beside - here) / (more - at);
  return { riseC: here + slope * (u - at), slope };
}

/** kg/L at 20 °C. */
const kgPerLitre = (u: number): number =>
  (densityKgPerM3(Math.min(84, brixOfWaterPerSugar(Math.max(0, u))), 20) ?? 1000) / 1000;

/** Litres at 20 °C of so much sugar with so much water each. */
export const litresOf = (sugarKg: number, u: number): number => (sugarKg * (1 + u)) / kgPerLitre(u);

/** By which share the litres grow with each kg/kg of water. */
export function litresSlope(u: number): number {
  const more = u * (1 + STEP) + 1e-3;
  return Math.log((1 + more) / kgPerLitre(more) / ((1 + u) / kgPerLitre(u))) / (more - u);
}

/** Mass of so many litres (at 20 °C) of a strength, kg. */
export const massOfLitres = (litres: number, brix: number): number =>
  (litres * (densityKgPerM3(Math.min(84, Math.max(0, brix)), 20) ?? 1000)) / 1000;

/** Volume at a boil over volume at 20 °C (ICUMSA density: 1.041 for water, 1.039 at 66 °Bx). */
export const HOT_VOLUME = 1.04;

/** Volume at a temperature, °C, over volume at 20 °C, of a strength in °Brix: never more than at a boil. */
export function volumeShare(brix: number, celsius: number): number {
  const strength = Math.min(84, Math.max(0, brix));
  const there = densityKgPerM3(strength, Math.min(104, Math.max(0, celsius)));
  const cold = densityKgPerM3(strength, 20);
  return there === null || cold === null ? HOT_VOLUME : Math.min(HOT_VOLUME, cold / there);
}

/** Water that the heat would boil away that warms a liquid from one temperature to another, kg a kg of liquid. */
export function steamForWarming(brix: number, fromC: number, toC: number): number {
  const middle = Math.min(120, Math.max(0, (fromC + toC) / 2));
  const heat = specificHeatKjPerKgK(Math.min(80, Math.max(0, brix)), middle) ?? 4.2;
  return (heat * Math.max(0, toC - fromC)) / (latentHeatKjPerKg(100) ?? 2257);
}
