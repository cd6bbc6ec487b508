// What is left of a planned boil while it runs: from what the pans hold and boil away now, and the sap that is not poured in yet.
import { brixOfWaterPerSugar, massOfLitres } from '../pan/filter/liquid.ts';
import { COLD_C } from '../pan/course-time.ts';
import type { PanReading } from '../pan/reading.ts';
import { panDesign } from '../pan/setup.ts';
import { latentHeatKjPerKg } from '../physics/heat.ts';
import { Z80 } from '../quantities/spread.ts';
import { burnersOf } from './burners.ts';
import type { PlanInput } from './plan.ts';
import { planStages } from './stages.ts';

/** null is not known; ranges hold the middle 80 %. */
export interface UnderWay {
  /** Sap that was poured in so far, and that is still to be poured in, litres at 20 °C. */
  poured_litres: number;
  left_litres: number;
  /** Until all of it is syrup, with the fires as they are. */
  hours: number | null;
  hours_low: number | null;
  hours_high: number | null;
  /** Pans of which an amount or a strength must be known first, with what each lacks; empty hours without any lack a fire. */
  lacking: { pan: string; litres: boolean; brix: boolean }[];
}

/** A fire that is watched is known to about this share; it will burn on as it does (practice). */
const SEEN_SHARE = 0.1;
/** Liquid in a pan that boils or soon will, °C; a little off hardly matters beside its steam. */
const HOT_C = 95;

/** What a pan holds and boils away now. */
export type Held = Pick<PanReading, 'pan' | 'stage' | 'litres' | 'brix' | 'evaporation_l_per_h'>;

/** Range as in planBoil; a pan that holds something nobody knows makes the hours not known. */
export function planUnderWay(
  input: PlanInput,
  pouredLitres: number,
  readings: readonly Held[],
  { waterC, finishBrix, sapBrix }: { waterC: number; finishBrix: number; sapBrix: number },
): UnderWay {
  const leftLitres = Math.max(0, input.litres - pouredLitres);
  const isForEnd = (pan: string): boolean => input.pans.some((one) => one.id === pan && one.for_end === true);
  // Of a pot that stands by for the end nobody has to say that it is still empty.
  const on = readings.filter(
    ({ pan, stage, litres }) => stage !== 'off' && !(stage === 'unknown' && litres === null && isForEnd(pan)),
  );
  const isOn = ({ id }: { id: string }): boolean => on.some(({ pan }) => pan === id);
  const lacking = on
    .filter(({ litres, brix }) => litres === null || brix === null)
    .map(({ pan, litres, brix }) => ({ pan, litres: litres === null, brix: brix === null }));
  const base = { poured_litres: pouredLitres, left_litres: leftLitres, lacking };
  const known = on.flatMap(({ litres, brix }) => (litres === null || brix === null ? [] : [{ litres, brix }]));
  // A pot for the end that is on is no more for later.
  const burning = input.pans
    .filter((pan) => isOn(pan) || isForEnd(pan.id))
    .map((pan) => ({ ...pan, for_end: !isOn(pan) }));
  if (lacking.length > 0 || !input.pans.some(isOn)) return { ...base, ...NOT_KNOWN };
  const heats = on.flatMap(({ pan, evaporation_l_per_h: perHour }) => {
    const latent = latentHeatKjPerKg(waterC);
    return perHour === null || perHour <= 0 || latent === null
      ? []
      : [{ pan, useful_w: (perHour / 3600) * latent * 1000, spread: SEEN_SHARE }];
  });
  const burners = burnersOf(
    burning.map((pan) => panDesign(pan)),
    heats,
  );
  const mix = mixOf([
    ...known.map((one) => ({ ...one, celsius: HOT_C })),
    { litres: leftLitres, brix: sapBrix, celsius: input.celsius ?? COLD_C },
  ]);
  const { hours, spread } = planStages(mix, finishBrix, burners, waterC);
  if (hours === null) return { ...base, ...NOT_KNOWN };
  return { ...base, hours, hours_low: hours * Math.exp(-Z80 * spread), hours_high: hours * Math.exp(Z80 * spread) };
}

const NOT_KNOWN = { hours: null, hours_low: null, hours_high: null };

/** All of it as one liquid: kilograms of sugar, °Bx and °C. */
function mixOf(parts: readonly { litres: number; brix: number; celsius: number }[]): {
  sugarKg: number;
  brix: number;
  celsius: number;
} {
  const kilograms = parts.map(({ litres, brix }) => (litres === 0 ? 0 : massOfLitres(litres, brix)));
  const sum = (of: (index: number) => number): number => parts.reduce((all, _, index) => all + of(index), 0);
  const kg = sum((index) => kilograms[index]!);
  const sugarKg = sum((index) => (kilograms[index]! * parts[index]!.brix) / 100);
  const celsius = sum((index) => kilograms[index]! * parts[index]!.celsius) / kg;
  return { sugarKg, brix: brixOfWaterPerSugar((kg - sugarKg) / sugarKg), celsius };
}
