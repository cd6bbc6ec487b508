// What a plan says, in whole sentences with their ranges.
import type { PlanView } from '../../protocol/plan-schema.ts';
import { formatNumber, formatVolume } from '../../core/quantities/format.ts';
import type { Settings } from '../client/types.ts';
import { exactStrength, mass, roundTemperature, strength, temperature } from './amounts.ts';
import { hoursAndMinutes, lengthOfTime } from './clock.ts';
import { jarsWords } from './jar-words.ts';

export type Plan = PlanView['plan'];

const SECONDS_PER_HOUR = 3600;
const HOUR_MS = 3_600_000;

/** "3 h 05 min", to five minutes: a plan knows no more. */
const planHours = (hours: number): string =>
  lengthOfTime(hours * SECONDS_PER_HOUR < 600 ? hours * SECONDS_PER_HOUR : Math.round(hours * 12) * 300);

/** A local moment as the form has it, so many hours later: "17:35", or "Mon 02:10" on another day. */
export function clockAfter(start: string, hours: number): string {
  const from = Date.parse(`${start}Z`);
  const then = new Date(Math.round((from + hours * HOUR_MS) / 300_000) * 300_000);
  const days = Math.floor(then.getTime() / (24 * HOUR_MS)) - Math.floor(from / (24 * HOUR_MS));
  const text = hoursAndMinutes(then.getTime());
  if (days === 0) return text;
  return days === 1 ? `${text} the next day` : `${text}, ${days} days later`;
}

/** Syrup is worth a second digit. */
const fine = (litres: number, settings: Settings): string => formatVolume(litres, settings.volume, litres < 10 ? 2 : 1);

/** A plan knows no tenths of what is many. */
const rough = (litres: number, settings: Settings): string =>
  formatVolume(litres, settings.volume, litres < 10 ? 1 : 0);

export const syrupWords = (plan: Plan, settings: Settings): string =>
  `${fine(plan.syrup_litres, settings)} of syrup, ${mass(plan.syrup_kg, settings)}`;

export const syrupRangeWords = (plan: Plan, settings: Settings): string =>
  `likely ${fine(plan.syrup_low_litres, settings)} to ${fine(plan.syrup_high_litres, settings)}${plan.sap_brix_usual ? `, for nobody has measured the sap: the usual ${exactStrength(plan.sap_brix, settings)} is taken` : ''}`;

/** null where the fires are not known. */
export function hoursWords(plan: Plan, start: string): { main: string; range: string } | null {
  const { hours, hours_low: low, hours_high: high } = plan;
  if (hours === null || low === null || high === null) return null;
  const span = `${planHours(low)} to ${planHours(high)}`;
  if (start === '') return { main: `About ${planHours(hours)}`, range: `likely ${span}` };
  return {
    main: `Done about ${clockAfter(start, hours)}`,
    range: `${planHours(hours)} on the fire, likely ${span}: ${clockAfter(start, low)} to ${clockAfter(start, high)}`,
  };
}

export function fuelWords(plan: Plan, settings: Settings): { main: string; range: string }[] {
  return plan.fuel.map(({ kind, unit, amount, low, high }) => {
    const say = (value: number): string => (unit === 'kg' ? mass(value, settings) : `${formatNumber(value, 0)} kWh`);
    const name = kind === 'electric' ? 'electricity' : kind === 'wood' ? 'seasoned wood' : kind;
    return { main: `${say(amount)} of ${name}`, range: `likely ${say(low)} to ${say(high)}` };
  });
}

/** On the dial of today, in both degrees, for dials have either. */
export function finishWords(plan: Plan, settings: Settings): { main: string; range: string } {
  const fahrenheit = { ...settings, temperature: settings.temperature === 'C' ? ('F' as const) : ('C' as const) };
  const both = (celsius: number): string => `${temperature(celsius, settings)} (${temperature(celsius, fahrenheit)})`;
  return {
    main: `${both(plan.finish_celsius)} on the thermometer`,
    range: `for ${exactStrength(plan.finish_brix, settings)}; plain water boils at ${both(plan.water_celsius)} here then. Check the thermometer in boiling water first.`,
  };
}

export function stayWords({ stay }: Plan, settings: Settings): { main: string; range: string } | null {
  if (stay === null) return null;
  const range = `likely ${rough(stay.boil_litres_low, settings)} to ${rough(stay.boil_litres_high, settings)} in ${planHours(stay.hours)}`;
  if (stay.keep_litres === 0) return { main: 'All of the sap can be boiled before you leave', range };
  return {
    main: `Boil ${rough(stay.boil_litres, settings)}, keep ${rough(stay.keep_litres, settings)} for another day`,
    range: `${range}. Keep the rest below ${roundTemperature(4, settings)} and boil it within days; put the fires out before you leave.`,
  };
}

export const jarsSentence = ({ jars }: Plan, settings: Settings): string =>
  jars.length === 0 ? 'Less than one small jar' : jarsWords(jars, settings).split(', ').join(' or ');

/** What one pan asks for, in a sentence. */
export function panSentences(pan: Plan['pans'][number], settings: Settings): string[] {
  const { litres_per_hour: rate, litres_per_hour_low: low, litres_per_hour_high: high } = pan;
  const sentences: string[] = [];
  if (rate !== null && low !== null && high !== null)
    sentences.push(
      `Boils off about ${rough(rate, settings)} an hour (${rough(low, settings)} to ${rough(high, settings)})${pan.seen_before ? ', as earlier boils of it showed' : ''}.`,
    );
  else sentences.push('How fast it boils is not known: give it a burner’s power or a size.');
  if (pan.hand_every_hours !== null)
    sentences.push(`Full, it wants cold sap again after about ${planHours(pan.hand_every_hours)}.`);
  if (pan.smallest_batch_litres !== null)
    sentences.push(
      pan.can_finish === true
        ? `It can finish this batch; the smallest it could is ${rough(pan.smallest_batch_litres, settings)} of this sap.`
        : `Too wide to finish this batch: that takes ${rough(pan.smallest_batch_litres, settings)} of this sap.`,
    );
  return sentences;
}

/** When the liquid is poured together, in order; the first stage is the lighting of the fire. */
export function stageSentences(
  plan: Plan,
  start: string,
  nameOf: (pan: string) => string,
  settings: Settings,
): string[] {
  return plan.stages.map((stage, index) => {
    const when =
      start === '' ? `${planHours(stage.from_hours)} after the fire is lit` : clockAfter(start, stage.from_hours);
    const names = stage.pans.map(nameOf).join(' and ');
    if (index === 0) return `${start === '' ? 'At first' : when}: light the fire under ${names}.`;
    const what = `${rough(stage.litres, settings)} of ${strength(stage.brix, stage.brix * 0.9, stage.brix * 1.1, settings)}`;
    return `About ${when}: pour together into ${names}, about ${what} in all.`;
  });
}

/** What changed against a plan that was put beside, in words; empty where nothing did. */
export function differenceWords(plan: Plan, beside: Plan, settings: Settings): string[] {
  const said: string[] = [];
  if (plan.hours !== null && beside.hours !== null) {
    const hours = plan.hours - beside.hours;
    if (Math.abs(hours) >= 1 / 12) said.push(`${planHours(Math.abs(hours))} ${hours < 0 ? 'sooner' : 'longer'}`);
  }
  const syrup = plan.syrup_litres - beside.syrup_litres;
  if (Math.abs(syrup) >= 0.01) said.push(`${fine(Math.abs(syrup), settings)} ${syrup < 0 ? 'less' : 'more'} syrup`);
  const [fuel, other] = [plan.fuel_kg, beside.fuel_kg];
  if (fuel !== null && other !== null && Math.abs(fuel - other) >= 0.1)
    said.push(`${mass(Math.abs(fuel - other), settings)} ${fuel < other ? 'less' : 'more'} fuel`);
  return said;
}

/** What is left of a boil that runs; null hours are not known. */
export function underWayWords(
  under: NonNullable<PlanView['under_way']>,
  settings: Settings,
): { main: string; range: string } {
  const poured = `${rough(under.poured_litres, settings)} of sap are noted as poured in, ${rough(under.left_litres, settings)} of the plan are still to come.`;
  const { hours, hours_low: low, hours_high: high } = under;
  if (hours === null || low === null || high === null)
    return {
      main: 'How long it still takes is not known',
      range: `${poured} Every pan has to have a strength and litres for that.`,
    };
  return {
    main: `About ${planHours(hours)} to go`,
    range: `likely ${planHours(low)} to ${planHours(high)}, with the fires as they are. ${poured}`,
  };
}
