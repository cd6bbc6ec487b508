// The liquid in a simulated pan: sugar, water and heat, and what pouring and taking do to them.
import { densityKgPerM3 } from '../physics/density.ts';
import { specificHeatKjPerKgK } from '../physics/heat.ts';

/** Masses in kg; nothing else is dissolved. */
export interface Liquid {
  sugarKg: number;
  waterKg: number;
  celsius: number;
}

/** What the density equation covers; a boiling pan is only a few degrees outside, where density hardly moves. */
const greatestDensityCelsius = 100;
const greatestDensityBrix = 85;
const greatestHeatBrix = 80;
const greatestHeatCelsius = 120;

/** Sugar and water together, kg. */
export const massKg = (liquid: Liquid): number => liquid.sugarKg + liquid.waterKg;

/** Dissolved sugar in % of the mass, °Bx; 0 for an empty pan. */
export function strengthBrix(liquid: Liquid): number {
  return massKg(liquid) > 0 ? (100 * liquid.sugarKg) / massKg(liquid) : 0;
}

function densityHere(brix: number, celsius: number): number {
  const density = densityKgPerM3(
    Math.min(brix, greatestDensityBrix),
    Math.min(Math.max(celsius, 0), greatestDensityCelsius),
  );
  if (density === null) throw new RangeError(`No density for ${brix} °Bx at ${celsius} °C: check the scenario.`);
  return density;
}

/** kJ/(kg K), held at the ends of the equation's range. */
export function specificHeatHere(brix: number, celsius: number): number {
  const heat = specificHeatKjPerKgK(
    Math.min(brix, greatestHeatBrix),
    Math.min(Math.max(celsius, 0), greatestHeatCelsius),
  );
  if (heat === null) throw new RangeError(`No specific heat for ${brix} °Bx at ${celsius} °C: check the scenario.`);
  return heat;
}

/** Litres counted at 20 °C. */
export function litresAtTwenty(liquid: Liquid): number {
  return (1000 * massKg(liquid)) / densityHere(strengthBrix(liquid), 20);
}

/** Depth as it stands in a vessel with upright walls, mm; foam is left out. */
export function depthMillimetres(liquid: Liquid, areaM2: number): number {
  return (1000 * massKg(liquid)) / (densityHere(strengthBrix(liquid), liquid.celsius) * areaM2);
}

/** So many litres (counted at 20 °C) of a strength and temperature. */
export function liquidOf(litres: number, brix: number, celsius: number): Liquid {
  const mass = (litres * densityHere(brix, 20)) / 1000;
  return { sugarKg: (mass * brix) / 100, waterKg: mass * (1 - brix / 100), celsius };
}

/** Both stirred together; the temperature is that of equal heat content, and no heat is lost to the vessel. */
export function stirTogether(one: Liquid, other: Liquid): Liquid {
  const oneHeat = massKg(one) * specificHeatHere(strengthBrix(one), one.celsius);
  const otherHeat = massKg(other) * specificHeatHere(strengthBrix(other), other.celsius);
  const heat = oneHeat + otherHeat;
  return {
    sugarKg: one.sugarKg + other.sugarKg,
    waterKg: one.waterKg + other.waterKg,
    celsius: heat > 0 ? (one.celsius * oneHeat + other.celsius * otherHeat) / heat : one.celsius,
  };
}

/** The liquid parted in two: what stays and the litres (at 20 °C) that are taken, never more than there is. */
export function partOff(liquid: Liquid, litres: number): { stays: Liquid; taken: Liquid } {
  const held = litresAtTwenty(liquid);
  const share = held > 0 ? Math.min(1, Math.max(0, litres / held)) : 0;
  const portion = (part: number): Liquid => ({
    sugarKg: liquid.sugarKg * part,
    waterKg: liquid.waterKg * part,
    celsius: liquid.celsius,
  });
  return { stays: portion(1 - share), taken: portion(share) };
}
