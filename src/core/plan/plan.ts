// What a boil will give and take, worked out before the fire is lit: syrup, hours and fuel with their ranges, and the smallest batch.
import type { Finish, PanSetup, Sap } from '../boil/entries.ts';
import { litresOf, waterPerSugar } from '../pan/filter/liquid.ts';
import { panDesign } from '../pan/setup.ts';
import type { PanDesign } from '../pan/setup.ts';
import { sapKindOf } from '../physics/sap-kinds.ts';
import { stationPressureFromAltitudeHpa } from '../physics/station-pressure.ts';
import { riseFromStrength, strengthFromRise } from '../physics/sugar-solution.ts';
import { saturationTemperatureCelsius } from '../physics/water-point.ts';
import { yieldOf } from '../physics/yield.ts';
import { Z80 } from '../quantities/spread.ts';
import { fuelNeeded } from './fuel-needed.ts';
import type { FuelNeeded } from './fuel-needed.ts';
import { burnersOf } from './burners.ts';
import { jarsFor } from './jars.ts';
import type { JarCount } from './jars.ts';
import { planStages, smallestSyrup } from './stages.ts';
import type { Stage } from './stages.ts';

export interface PlanInput {
  site?: { altitude_m?: number | undefined } | undefined;
  sap?: Sap | undefined;
  /** Litres at 20 °C. */
  litres: number;
  brix?: number | undefined;
  celsius?: number | undefined;
  finish?: Finish | undefined;
  pans: readonly PanSetup[];
}

/** null is not known; ranges hold the middle 80 %. */
export interface Plan {
  syrup_litres: number;
  syrup_kg: number;
  evaporate_litres: number;
  hours: number | null;
  hours_low: number | null;
  hours_high: number | null;
  /** Propane and wood; null where electricity heats, or where both burn: then `fuel` tells them apart. */
  fuel_kg: number | null;
  fuel_low_kg: number | null;
  fuel_high_kg: number | null;
  finish_rise_c: number;
  /** Sap that makes just enough syrup for the vessel that finishes. */
  smallest_batch_litres: number | null;
  /** How many full jars of each size all of the syrup fills. */
  jars: JarCount[];
  finish_brix: number;
  /** What a thermometer shows at the finish, °C, in air of the standard at this altitude. */
  finish_celsius: number;
  sap_brix: number;
  /** Nobody said how strong the sap is: the usual strength of its kind stands. */
  sap_brix_usual: boolean;
  stages: Stage[];
  fuel: FuelNeeded[];
  /** This batch ends under the least depth in the vessel that finishes. */
  ends_shallow: boolean;
}

/** Sap as it comes from the trees in spring, °C (common practice). */
const COLD_C = 5;

/**
 * Sap as it comes, all of it boiled in these pans. Range: more litres than 0, 0 < °Bx < finish ≤ 85; outside it null.
 * Litres of syrup are the exact balance: what burns on, foams over or stays in the filter is not counted off.
 */
export function planBoil(input: PlanInput): Plan | null {
  const pressureHpa = stationPressureFromAltitudeHpa(input.site?.altitude_m ?? 0) ?? 1013.25;
  const designs = input.pans.filter((pan) => pan.role !== 'reference').map((pan) => designOf(pan, input));
  const { shares, finishBrix, finishRiseC } = designs[0] ?? designOf({ id: 'p1' }, input);
  const finish = finishRiseC === null ? finishBrix : (strengthFromRise(finishRiseC, shares, pressureHpa) ?? finishBrix);
  const riseC = riseFromStrength(finish, shares, pressureHpa);
  const waterC = saturationTemperatureCelsius(pressureHpa);
  const usual = sapKindOf(shares.sucrose < 0.5 ? 'birch' : 'maple').typicalBrix!;
  const sapBrix = input.brix ?? usual;
  const syrup = yieldOf(input.litres, sapBrix, finish);
  if (riseC === null || waterC === null || syrup === null) return null;
  const burners = burnersOf(designs);
  const sugarKg = (syrup.kg * finish) / 100;
  const sap = { sugarKg, brix: sapBrix, celsius: input.celsius ?? COLD_C };
  const stages = planStages(sap, finish, burners, waterC);
  const least = smallestSyrup(burners);
  const { hours, spread } = stages;
  const fuel = fuelNeeded(stages.stages, burners, spread);
  return {
    syrup_litres: syrup.litres,
    syrup_kg: syrup.kg,
    evaporate_litres: syrup.evaporatedLitres,
    hours,
    hours_low: hours === null ? null : hours * Math.exp(-Z80 * spread),
    hours_high: hours === null ? null : hours * Math.exp(Z80 * spread),
    ...fuelTotal(fuel),
    finish_rise_c: riseC,
    smallest_batch_litres: least === null ? null : (input.litres * least) / syrup.litres,
    jars: jarsFor(syrup.litres),
    finish_brix: finish,
    finish_celsius: waterC + riseC,
    sap_brix: sapBrix,
    sap_brix_usual: input.brix === undefined,
    stages: stages.stages,
    fuel,
    ends_shallow: least !== null && litresOf(sugarKg, waterPerSugar(finish)) < least,
  };
}

/** The sap and the finish of the whole plan hold for each of its pans. */
function designOf(pan: PanSetup, { sap, finish }: PlanInput): PanDesign {
  return panDesign({ ...pan, sap: sap ?? pan.sap, finish: finish ?? pan.finish });
}

type FuelTotal = Pick<Plan, 'fuel_kg' | 'fuel_low_kg' | 'fuel_high_kg'>;

function fuelTotal(fuel: readonly FuelNeeded[]): FuelTotal {
  const [only] = fuel;
  if (fuel.length !== 1 || only === undefined || only.unit !== 'kg')
    return { fuel_kg: null, fuel_low_kg: null, fuel_high_kg: null };
  return { fuel_kg: only.amount, fuel_low_kg: only.low, fuel_high_kg: only.high };
}
