// What fuels hold, how much of it reaches the pan, and how much fuel a heat takes.
import type { Heat } from '../boil/entries.ts';

/** Lower heating value of propane (steam leaves with the smoke), MJ/kg: a dealer's data sheet. */
export const PROPANE_NET_MJ_PER_KG = 46.35;
/** Higher heating value, with the steam condensed, MJ/kg: the same sheet. No open burner gives it. */
export const PROPANE_GROSS_MJ_PER_KG = 50.43;
/** Liquid propane at 60 °F, kg/L: a table of commercial propane; 0.498 at 20 °C. */
export const PROPANE_KG_PER_LITRE = 0.504;

/** Oven-dry wood of any kind, MJ/kg: 8,050 Btu/lb; 8,600 with the steam of its own hydrogen condensed. */
const dryWoodNetMjPerKg = 18.72;
/** Heat that a kilogram of water in wood takes away with the smoke, MJ. */
const waterInWoodMjPerKg = 2.44;
/** Wetter than this no wood is: half as much water again as wood. */
const wettestShare = 0.6;

/** Moisture is water in the whole mass, 0 to 0.6; seasoned wood 0.2. */
export type Fuel = { kind: 'propane' } | { kind: 'wood'; moisture: number } | { kind: 'electric' };

/** Heat of a kilogram of wood, steam leaving with the smoke, MJ. Moisture 0 to 0.6 of the whole mass; outside it null. */
export function woodNetMjPerKg(moisture: number): number | null {
  if (!(moisture >= 0 && moisture <= wettestShare)) return null;
  return dryWoodNetMjPerKg * (1 - moisture) - waterInWoodMjPerKg * moisture;
}

/** A kilowatt-hour is 3.6 MJ. */
const mjPerKilowattHour = 3.6;

function netMj(fuel: Fuel): number | null {
  if (fuel.kind === 'propane') return PROPANE_NET_MJ_PER_KG;
  return fuel.kind === 'wood' ? woodNetMjPerKg(fuel.moisture) : mjPerKilowattHour;
}

/**
 * Fuel that gives a heat to the pan, kg (kWh of electricity).
 * Heat 0 or more MJ; efficiency is the share that reaches the pan, over 0 to 1; outside it null.
 */
export function fuelFor(heatMj: number, fuel: Fuel, efficiency: number): number | null {
  const each = netMj(fuel);
  if (each === null || !(heatMj >= 0 && efficiency > 0 && efficiency <= 1)) return null;
  return heatMj / (each * efficiency);
}

/**
 * Share of a burner's nominal power that ends as vapour. Bare propane ring under a pot 25–35 %, flat pans 51–72 %
 * (common practice and season ledgers of the trade); open wood rigs 40–60 % (Ohio State Extension), which are flat pans
 * over the whole fire: under a pot wood is taken for no better than a ring (judgement); electric by judgement.
 */
export function usualEfficiency(kind: Heat['kind'], flatPan: boolean): number {
  if (kind === 'electric') return 0.8;
  if (!flatPan) return 0.33;
  return kind === 'wood' ? 0.45 : 0.5;
}
