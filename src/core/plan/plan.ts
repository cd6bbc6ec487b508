// What a boil will give and take, worked out before the fire is lit: syrup, hours and fuel with their ranges, and what each pan asks.
import type { Finish, Mark, PanSetup, Sap, SugarShares } from '../boil/entries.ts';
import { leadTimes } from '../boil/lead-times.ts';
import { stationPressureOf } from '../boil/water.ts';
import { COLD_C } from '../pan/course-time.ts';
import { litresOf, waterPerSugar } from '../pan/filter/liquid.ts';
import { panDesign } from '../pan/setup.ts';
import type { PanDesign } from '../pan/setup.ts';
import { sapKindOf } from '../physics/sap-kinds.ts';
import { stationPressureFromAltitudeHpa } from '../physics/station-pressure.ts';
import { riseFromStrength, strengthFromRise } from '../physics/sugar-solution.ts';
import { saturationTemperatureCelsius } from '../physics/water-point.ts';
import { yieldOf } from '../physics/yield.ts';
import { jarsFor } from '../quantities/jar-sizes.ts';
import type { JarCount } from '../quantities/jar-sizes.ts';
import { Z80 } from '../quantities/spread.ts';
import { burnersOf } from './burners.ts';
import type { KnownHeat } from './burners.ts';
import { tooFull } from './fills.ts';
import type { TooFull } from './fills.ts';
import { fuelNeeded } from './fuel-needed.ts';
import type { FuelNeeded } from './fuel-needed.ts';
import { pansPlanned } from './pans-planned.ts';
import type { PanPlanned } from './pans-planned.ts';
import { endRoomLitres, planStages, smallestSyrup } from './stages.ts';
import type { DrawOff, EndUnused, Stage } from './stages.ts';
import { withinHours } from './within-hours.ts';
import type { WithinHours } from './within-hours.ts';

export interface PlanInput {
  site?: { altitude_m?: number | undefined } | undefined;
  /** Today's, as a pressure mark says it; the usual one of the altitude where it is left out. */
  pressure?: Omit<Mark & { kind: 'pressure' }, 'kind'> | undefined;
  sap?: Sap | undefined;
  /** Litres at 20 °C. */
  litres: number;
  brix?: number | undefined;
  celsius?: number | undefined;
  finish?: Finish | undefined;
  pans: readonly PanSetup[];
  /** How long somebody can stay, h; over 0. */
  stay_hours?: number | undefined;
  /** What earlier boils showed of these pans' fires. */
  known_heats?: readonly KnownHeat[] | undefined;
}

/** A stage with those of its pans that cannot take what is then poured into them. */
export type StagePlanned = Stage & { too_full: TooFull[] };

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
  /** How many full jars of each metric size all of the syrup fills. */
  jars: JarCount[];
  /** By how well the sap's litres and strength are known. */
  syrup_low_litres: number;
  syrup_high_litres: number;
  finish_brix: number;
  /** What a thermometer shows at the finish, °C, in today's air, or in that of the standard at this altitude. */
  finish_celsius: number;
  water_celsius: number;
  /** The height or the pressure was told; where it was not, all is worked out for the height of the sea. */
  place_known: boolean;
  sap_brix: number;
  /** Nobody said how strong the sap is: the usual strength of its kind stands. */
  sap_brix_usual: boolean;
  stages: StagePlanned[];
  fuel: FuelNeeded[];
  pans: PanPlanned[];
  /** null where nobody said how long they can stay. */
  stay: WithinHours | null;
  /** This batch ends under the least depth in the vessel that finishes. */
  ends_shallow: boolean;
  /** When it goes into a smaller pot for that; null where it need not, or the hours are not known. */
  draw_off: DrawOff | null;
  /** Pots for the end that stay cold; null where they are lit, or there are none. */
  end_unused: EndUnused | null;
}

/** A scale's line or a drop read, °Bx; a can's mark, as a share (common practice). */
const BRIX_SIGMA = 0.1;
const LITRES_SHARE = 0.03;
/** Where nobody measured: sap of 1 to 5 °Bx about 2, of 0.5 to 1.5 about 1 (extension services). */
const USUAL_SHARE = 0.32;

/**
 * Sap as it comes, boiled in these pans: all of it, or where somebody has to leave before that what is boiled until
 * then nine times in ten, so that nothing of the plan comes after the leaving. Range: more litres than 0, 0 < °Bx < finish ≤ 85; outside it null.
 * Litres of syrup are the exact balance: what burns on, foams over or stays in the filter is not counted off.
 */
export function planBoil(input: PlanInput): Plan | null {
  const whole = planAll(input);
  if (whole === null || whole.stay === null || whole.stay.keep_litres === 0) return whole;
  const until = planAll({ ...input, litres: whole.stay.boil_litres_low });
  return until === null ? null : { ...until, stay: whole.stay };
}

function planAll(input: PlanInput): Plan | null {
  const pressureHpa = pressureTold(input) ?? 1013.25;
  const designs = input.pans.filter((pan) => pan.role !== 'reference').map((pan) => designOf(pan, input));
  const { shares, finish } = finishOf(designs[0] ?? designOf({ id: 'p1' }, input), pressureHpa);
  const riseC = riseFromStrength(finish, shares, pressureHpa);
  const waterC = saturationTemperatureCelsius(pressureHpa);
  const sapBrix = input.brix ?? sapKindOf(shares.sucrose < 0.5 ? 'birch' : 'maple').typicalBrix!;
  const syrup = yieldOf(input.litres, sapBrix, finish);
  if (riseC === null || waterC === null || syrup === null) return null;
  const burners = burnersOf(designs, input.known_heats ?? []);
  const sugarKg = (syrup.kg * finish) / 100;
  const boiledDown = (share: number) =>
    planStages({ sugarKg: sugarKg * share, brix: sapBrix, celsius: input.celsius ?? COLD_C }, finish, burners, waterC);
  const { stages, drawOff, endUnused, hours, spread } = boiledDown(1);
  const least = smallestSyrup(burners.filter(({ pan }) => endUnused?.pans.includes(pan) !== true));
  const fuel = fuelNeeded(stages, burners, spread);
  // A hair more than makes just enough syrup for each vessel, or too much for the pots for the end.
  const turns = [...burners.filter(({ sized }) => sized).map((one) => one.leastLitres), endRoomLitres(burners)]
    .filter((litres) => litres > 0)
    .map((litres) => (1.001 * input.litres * litres) / syrup.litres);
  const hoursFor = (litres: number) => boiledDown(litres / input.litres);
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
    jars: jarsFor(syrup.litres, 'litre'),
    ...syrupRange(syrup.litres, input.brix),
    finish_brix: finish,
    finish_celsius: waterC + riseC,
    water_celsius: waterC,
    place_known: pressureTold(input) !== null,
    sap_brix: sapBrix,
    sap_brix_usual: input.brix === undefined,
    stages: stages.map((stage, index) => ({ ...stage, too_full: index === 0 ? [] : tooFullThen(designs, stage) })),
    fuel,
    pans: pansPlanned(designs, burners, {
      sapLitres: input.litres,
      syrupLitres: syrup.litres,
      waterC,
      first: stages[0]?.pans ?? [],
      callLeadS: (pan) => leadTimes(input, pan).lowLevelLeadS,
    }),
    stay: input.stay_hours === undefined ? null : withinHours(input.stay_hours, input.litres, turns, hoursFor, Z80),
    ends_shallow: least !== null && litresOf(sugarKg, waterPerSugar(finish)) < least,
    draw_off: drawOff,
    end_unused: endUnused,
  };
}

/** By what was told of the place or of today's air, hPa; null where neither was: a sea-level figure without the altitude tells nothing. */
function pressureTold({ site, pressure }: PlanInput): number | null {
  const altitudeM = site?.altitude_m ?? null;
  const told = pressure === undefined ? null : stationPressureOf({ kind: 'pressure', ...pressure }, altitudeM);
  return told ?? (altitudeM === null ? null : stationPressureFromAltitudeHpa(altitudeM));
}

const tooFullThen = (designs: readonly PanDesign[], { pans, litres }: Stage): TooFull[] =>
  tooFull(
    designs.filter(({ id }) => pans.includes(id)),
    litres,
  );

/** The sap and the finish of the whole plan hold for each of its pans. */
function designOf(pan: PanSetup, { sap, finish }: PlanInput): PanDesign {
  return panDesign({ ...pan, sap: sap ?? pan.sap, finish: finish ?? pan.finish });
}

function finishOf(
  { shares, finishBrix, finishRiseC }: PanDesign,
  pressureHpa: number,
): { shares: SugarShares; finish: number } {
  const asRise = finishRiseC === null ? null : strengthFromRise(finishRiseC, shares, pressureHpa);
  return { shares, finish: asRise ?? finishBrix };
}

function syrupRange(litres: number, brix: number | undefined): Pick<Plan, 'syrup_low_litres' | 'syrup_high_litres'> {
  const strengthShare = brix === undefined ? USUAL_SHARE : BRIX_SIGMA / brix;
  const factor = Math.exp(Z80 * Math.hypot(LITRES_SHARE, strengthShare));
  return { syrup_low_litres: litres / factor, syrup_high_litres: litres * factor };
}

type FuelTotal = Pick<Plan, 'fuel_kg' | 'fuel_low_kg' | 'fuel_high_kg'>;

function fuelTotal(fuel: readonly FuelNeeded[]): FuelTotal {
  const [only] = fuel;
  if (fuel.length !== 1 || only === undefined || only.unit !== 'kg')
    return { fuel_kg: null, fuel_low_kg: null, fuel_high_kg: null };
  return { fuel_kg: only.amount, fuel_low_kg: only.low, fuel_high_kg: only.high };
}
