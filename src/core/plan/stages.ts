// Who boils when: all pans while there is liquid enough for them, then fewer, and at the end one alone: the pot that stands by for that, else the smallest, where that costs no time.
import { litresOf, waterPerSugar, brixOfWaterPerSugar } from '../pan/filter/liquid.ts';
import { latentHeatKjPerKg, warmingHeatKj } from '../physics/heat.ts';
import type { Burner } from './burners.ts';

/** A stretch of the boil with the same pans on the fire. */
export interface Stage {
  /** Hours from the lighting of the fire. */
  from_hours: number;
  hours: number;
  pans: string[];
  /** All the liquid when it begins: litres at 20 °C, °Bx. */
  litres: number;
  brix: number;
  /** It begins because what is left fits into the pots for the end, not because the others would stand too shallow. */
  fits?: boolean;
}

/** Pots for the end in which this batch cannot end: its syrup leaves foam no room there, or stands too shallow while another pan could finish it. */
export interface EndUnused {
  pans: string[];
  why: 'small' | 'wide';
}

/** When what is left has to leave the vessel that is too wide to finish it; as a stage begins. */
export type DrawOff = Pick<Stage, 'from_hours' | 'litres' | 'brix'>;

export interface StagePlan {
  stages: Stage[];
  /** null where the syrup stands deep enough in the last vessel, or its size is not known. */
  drawOff: DrawOff | null;
  /** null where the pots for the end are lit, or there are none. */
  endUnused: EndUnused | null;
  hours: number | null;
  /** Standard deviation of the logarithm of the hours. */
  spread: number;
}

/** Pans are poured together before they stand at their least depth: by half as much again (practice). */
const SPARE = 1.5;

interface SapToBoil {
  sugarKg: number;
  brix: number;
  celsius: number;
}

/** How much sap there is and how strong, and how well it is kept at the boil (practice). */
const SAP_SHARE = 0.05;

/** Litres of syrup at 20 °C that the vessel that finishes needs; null where no vessel's size is known. */
export function smallestSyrup(burners: readonly Burner[]): number | null {
  return finisher(burners)?.leastLitres ?? null;
}

/** Pots that stand by for the end, else all. */
function endPots(burners: readonly Burner[]): readonly Burner[] {
  const own = burners.filter(({ forEnd }) => forEnd);
  return own.length === 0 ? burners : own;
}

/** The smallest sized vessel over a fire finishes, of those that stand by for it where any does; the later one of two alike. */
function finisher(burners: readonly Burner[]): Burner | null {
  return endPots(burners)
    .filter(({ sized, usefulW }) => sized && usefulW !== null)
    .reduce<Burner | null>(
      (least, one) => (least === null || one.leastLitres <= least.leastLitres ? one : least),
      null,
    );
}

/**
 * `waterC` is what water boils at there; all the sap is warmed to it by the pans of the first stage. The smallest vessel
 * finishes, unless the others would be done sooner without it and end deep enough: then it helps them, or stays cold.
 * So one vessel more never takes longer where all could be finished without it. A pot that stands by for the end
 * finishes what fits into it and stands deep enough there; where nothing tells how fast it boils, nothing tells the hours.
 */
export function planStages(sap: SapToBoil, finishBrix: number, burners: readonly Burner[], waterC: number): StagePlan {
  const heated = burners.filter(({ usefulW }) => usefulW !== null && usefulW > 0);
  const isEndKnown = burners.every((one) => !one.forEnd || heated.includes(one));
  if (!heated.some(({ forEnd }) => !forEnd) || !isEndKnown)
    return { stages: [], drawOff: null, endUnused: null, hours: null, spread: 0 };
  const last = finisher(heated) ?? endPots(heated).at(-1)!;
  const inTurn = (last: Burner): StagePlan => stagesEndingIn(last, sap, finishBrix, heated, waterC);
  const usual = inTurn(last);
  if (last.forEnd) {
    const why = whyUnused(last, heated, litresOf(sap.sugarKg, waterPerSugar(finishBrix)));
    if (why === null) return usual;
    const pans = heated.filter(({ forEnd }) => forEnd).map(({ pan }) => pan);
    const first = heated.filter(({ forEnd }) => !forEnd);
    return { ...planStages(sap, finishBrix, first, waterC), endUnused: { pans, why } };
  }
  const others = heated.filter((one) => one !== last);
  const next = finisher(others);
  if (next === null || litresOf(sap.sugarKg, waterPerSugar(finishBrix)) < next.leastLitres) return usual;
  const without = planStages(sap, finishBrix, others, waterC);
  if (without.hours! >= usual.hours!) return usual;
  const helped = inTurn(others.find(({ pan }) => pan === without.stages.at(-1)?.pans[0]) ?? next);
  return helped.hours! <= without.hours! ? helped : without;
}

/** Room for foam in all the pots for the end, litres at 20 °C; Infinity where a size is not known. */
export const endRoomLitres = (burners: readonly Burner[]): number =>
  burners.filter(({ forEnd }) => forEnd).reduce((sum, { roomLitres }) => sum + roomLitres, 0);

/** Why so much syrup cannot end in the pots for the end, of which `last` finishes; null where it can, or where no other pan ends it better. */
function whyUnused(last: Burner, heated: readonly Burner[], syrupLitres: number): EndUnused['why'] | null {
  if (syrupLitres > endRoomLitres(heated)) return 'small';
  const first = finisher(heated.filter(({ forEnd }) => !forEnd));
  return last.leastLitres > syrupLitres && first !== null && first.leastLitres <= syrupLitres ? 'wide' : null;
}

function stagesEndingIn(
  last: Burner,
  sap: SapToBoil,
  finishBrix: number,
  heated: readonly Burner[],
  waterC: number,
): StagePlan {
  const uEnd = waterPerSugar(finishBrix);
  const kilograms = sap.sugarKg / (sap.brix / 100);
  const warming = { kg: kilograms, brix: sap.brix, fromCelsius: sap.celsius, toCelsius: waterC };
  let owedKj = warmingHeatKj(warming) ?? 0;
  let u = waterPerSugar(sap.brix);
  let hours = 0;
  const stages: Stage[] = [];
  // Who keeps a pot for the end means that the end is boiled there, also where the others stand deep enough for it.
  const toEnd = last.forEnd ? Math.min(endRoomLitres(heated), SPARE * litresOf(sap.sugarKg, uEnd)) : 0;
  let isFitting = false;
  let drawOff: DrawOff | null = null;
  for (const active of crews(heated, last)) {
    const isLast = active.length === 1 && active[0] === last;
    const shallow = SPARE * active.reduce((sum, { leastLitres }) => sum + leastLitres, 0);
    const isBeforeEnd = !active.some(({ forEnd }) => forEnd);
    const least = isLast ? 0 : isBeforeEnd ? Math.max(shallow, toEnd) : shallow;
    const until = Math.max(uEnd, waterAtLitres(sap.sugarKg, least));
    if (until >= u && owedKj === 0) continue;
    const kilowatts = active.reduce((sum, { usefulW }) => sum + usefulW!, 0) / 1000;
    const hoursTo = (target: number): number =>
      (owedKj + sap.sugarKg * Math.max(0, u - target) * (latentHeatKjPerKg(waterC) ?? 2257)) / kilowatts / 3600;
    const stageHours = hoursTo(until);
    if (isLast && litresOf(sap.sugarKg, until) < last.leastLitres) {
      const out = Math.min(u, waterAtLitres(sap.sugarKg, SPARE * last.leastLitres));
      const from_hours = hours + (out === u ? 0 : hoursTo(out));
      drawOff = { from_hours, litres: litresOf(sap.sugarKg, out), brix: brixOfWaterPerSugar(out) };
    }
    stages.push({
      from_hours: hours,
      hours: stageHours,
      pans: heated.filter((one) => active.includes(one)).map(({ pan }) => pan),
      litres: litresOf(sap.sugarKg, u),
      brix: brixOfWaterPerSugar(u),
      ...(isFitting ? { fits: true } : {}),
    });
    isFitting = isBeforeEnd && toEnd > shallow;
    owedKj = 0;
    hours += stageHours;
    u = Math.min(u, until);
  }
  return { stages, drawOff, endUnused: null, hours, spread: spreadOf(stages, heated, hours) };
}

/** All of them, then without the one that needs most liquid, and so on to the one that finishes; pots for the end come after all others. */
function crews(heated: readonly Burner[], last: Burner): Burner[][] {
  const fewer = (ordered: readonly Burner[]): Burner[][] =>
    ordered.map((_, index) => ordered.slice(0, ordered.length - index));
  const byNeed = (forEnd: boolean): Burner[] =>
    heated.filter((one) => one !== last && one.forEnd === forEnd).sort((a, b) => a.leastLitres - b.leastLitres);
  return last.forEnd ? [...fewer(byNeed(false)), ...fewer([last, ...byNeed(true)])] : fewer([last, ...byNeed(false)]);
}

/** Water per sugar at which all the liquid is so many litres (20 °C); 0 where even the sugar alone is more. */
function waterAtLitres(sugarKg: number, litres: number): number {
  let [low, high] = [0, 1000];
  if (litresOf(sugarKg, low) >= litres) return 0;
  for (let round = 0; round < 60; round += 1) {
    const middle = (low + high) / 2;
    if (litresOf(sugarKg, middle) < litres) low = middle;
    else high = middle;
  }
  return high;
}

/** First order: each burner's own error weighs with its share of the hours and is independent; the day's weather is one for all. */
function spreadOf(stages: readonly Stage[], burners: readonly Burner[], hours: number): number {
  const weighed = burners.map((burner) => ({
    ...burner,
    weight: stages.reduce((sum, stage) => sum + stage.hours * shareIn(stage, burner, burners), 0) / hours,
  }));
  const own = Math.hypot(...weighed.map(({ weight, share }) => weight * share));
  const day = weighed.reduce((sum, { weight, dayShare }) => sum + weight * dayShare, 0);
  return Math.hypot(own, day, SAP_SHARE);
}

function shareIn(stage: Stage, burner: Burner, burners: readonly Burner[]): number {
  if (!stage.pans.includes(burner.pan)) return 0;
  const all = burners.filter(({ pan }) => stage.pans.includes(pan)).reduce((sum, { usefulW }) => sum + usefulW!, 0);
  return burner.usefulW! / all;
}
