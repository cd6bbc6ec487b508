// One second of a pan on the fire: heat in, heat lost, water gone, and what happens when it burns.
import { latentHeatKjPerKg } from '../physics/heat.ts';
import { surfaceEvaporationKgPerM2S } from '../physics/open-surface.ts';
import { riseFromStrength } from '../physics/sugar-solution.ts';
import type { SugarShares } from '../boil/entries.ts';
import { depthMillimetres, massKg, specificHeatHere, strengthBrix, type Liquid } from './liquid.ts';
import type { Air } from './weather.ts';

/** The vessel and the heat of one pan; the masses are in its Liquid. */
export interface Hearth {
  areaM2: number;
  powerWatts: number;
  efficiency: number;
  lossWattsPerKelvin: number;
  shares: SugarShares;
}

export interface HeatedLiquid {
  liquid: Liquid;
  boiling: boolean;
  burned: boolean;
  /** In this second, or since the start in a pan's state. */
  evaporatedKg: number;
  rise: KnownRise | null;
}

/** A pan burns over live heat when the syrup is thicker or shallower than this (judgement; trade.md "Scorching"). */
const burnsAboveBrix = 78;
const burnsBelowMillimetres = 4;
/** Less heat than this keeps warm and burns nothing, W. */
const liveHeatWatts = 150;

/** Steel of the pot and its handles, kJ/K. */
const vesselKjPerKelvin = 1.5;
/** Wind takes so much of a flame per m/s. */
const windShare = 0.06;
const hottestCrustCelsius = 320;
/** The liquid lies below the rim, out of most of the wind. */
const rimShelter = 0.3;
/** Over any syrup's boil; only a poured-over crust is hotter. */
const hottestLiquidCelsius = 120;
/** A boil that is cooled by less than this goes on quietly, °C. */
const quietBoilCelsius = 0.3;

const certain = (value: number | null, what: string): number => {
  if (value === null) throw new RangeError(`No ${what} for this pan: check the scenario.`);
  return value;
};

/** A rise worked out lately; it is used again while strength and pressure have hardly moved, for it costs the most. */
export interface KnownRise {
  brix: number;
  pressureHpa: number;
  celsius: number;
}

/** Less than 0.004 °C for any syrup. */
const sameBrix = 0.01;
const samePressureHpa = 0.5;

function riseNow(known: KnownRise | null, brix: number, shares: SugarShares, pressureHpa: number): KnownRise {
  if (
    known !== null &&
    Math.abs(known.brix - brix) < sameBrix &&
    Math.abs(known.pressureHpa - pressureHpa) < samePressureHpa
  ) {
    return known;
  }
  const celsius = riseFromStrength(Math.min(80, brix), shares, pressureHpa);
  return { brix, pressureHpa, celsius: certain(celsius, 'rise') };
}

/** Watts into the liquid from the burner, before losses. */
export function burnerWatts(hearth: Hearth, level: number, fireStrength: number, air: Air): number {
  const shelter = Math.max(0.5, 1 - windShare * air.windMetresPerSecond);
  return hearth.powerWatts * hearth.efficiency * level * fireStrength * shelter;
}

/** Water that leaves a still, hot surface, kg/s. */
function surfaceKgPerSecond(liquid: Liquid, riseCelsius: number, areaM2: number, air: Air): number {
  const overSurface = { ...air, windMetresPerSecond: rimShelter * air.windMetresPerSecond };
  const celsius = Math.min(hottestLiquidCelsius, liquid.celsius);
  return areaM2 * certain(surfaceEvaporationKgPerM2S(celsius, riseCelsius, overSurface), 'evaporation');
}

/**
 * One second of a pan that holds something.
 * Heat warms liquid and vessel; what would carry it over its boiling point turns to steam instead; below that,
 * water leaves only from the surface. Burned syrup gives no more steam, so all heat goes into the crust.
 */
export function heatForOneSecond(before: HeatedLiquid, hearth: Hearth, watts: number, air: Air): HeatedLiquid {
  const { liquid } = before;
  const kilojoule = (watts - hearth.lossWattsPerKelvin * (liquid.celsius - air.celsius)) / 1000;
  const brix = strengthBrix(liquid);
  const heatKjPerKelvin = vesselKjPerKelvin + massKg(liquid) * specificHeatHere(brix, liquid.celsius);
  if (before.burned || burnsNow(liquid, hearth, watts)) {
    const celsius = Math.min(hottestCrustCelsius, liquid.celsius + kilojoule / heatKjPerKelvin);
    return { liquid: { ...liquid, celsius }, boiling: false, burned: true, rise: before.rise, evaporatedKg: 0 };
  }
  const rise = riseNow(before.rise, brix, hearth.shares, air.pressureHpa);
  const boilsAt = air.waterCelsius + rise.celsius;
  const latent = certain(latentHeatKjPerKg(Math.max(40, Math.min(120, boilsAt))), 'latent heat');
  const offSurface = surfaceKgPerSecond(liquid, rise.celsius, hearth.areaM2, air);
  const warmed = liquid.celsius + (kilojoule - offSurface * latent) / heatKjPerKelvin;
  const boiledOff = Math.max(0, ((warmed - boilsAt) * heatKjPerKelvin) / latent);
  const evaporatedKg = Math.min(liquid.waterKg, offSurface + boiledOff);
  return {
    liquid: { sugarKg: liquid.sugarKg, waterKg: liquid.waterKg - evaporatedKg, celsius: Math.min(warmed, boilsAt) },
    boiling: warmed >= boilsAt - (before.boiling ? quietBoilCelsius : 0),
    burned: false,
    rise,
    evaporatedKg,
  };
}

function burnsNow(liquid: Liquid, hearth: Hearth, watts: number): boolean {
  if (watts < liveHeatWatts) return false;
  return strengthBrix(liquid) > burnsAboveBrix || depthMillimetres(liquid, hearth.areaM2) < burnsBelowMillimetres;
}
