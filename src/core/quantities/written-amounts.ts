// Turns the amounts in a sentence that the host wrote down, in SI, into the units that a person chose.
import type { StrengthScale } from '../physics/hydrometer.ts';
import {
  formatLength,
  formatMass,
  formatNumber,
  formatPressure,
  formatRate,
  formatRise,
  formatStrength,
  formatStrengthEnd,
  formatTemperature,
  formatVolume,
} from './format.ts';
import {
  type LengthUnit,
  lengthFromMm,
  type MassUnit,
  type PressureUnit,
  type TemperatureUnit,
  type VolumeUnit,
} from './units.ts';

/** The units in which a person thinks. */
export interface ChosenUnits {
  temperature: TemperatureUnit;
  volume: VolumeUnit;
  length: LengthUnit;
  pressure: PressureUnit;
  mass: MassUnit;
  strength: StrengthScale;
}

/** Writes an amount as the language has it: 1,2 of 1.2. */
type Local = (amount: string) => string;
type Rule = readonly [RegExp, (units: ChosenUnits, numbers: number[], local: Local) => string];

const NUMBER = '([-−]?\\d+(?:\\.\\d+)?)';
const pattern = (text: string): RegExp => new RegExp(text.replaceAll('#', NUMBER), 'gu');

const MM_PER_M = 1000;

const exact = (brix: number, { strength }: ChosenUnits): string => formatStrength(brix, brix, brix, strength);

const rough = (brix: number, { strength }: ChosenUnits): string =>
  formatStrength(brix, brix - ROUGH_BRIX, brix + ROUGH_BRIX, strength);
/** Half the width of a range of which no tenths are printed, °Bx. */
const ROUGH_BRIX = 2;

/** A height over the sea goes by feet where depths go by inches: "2100 ft". */
function height(metres: number, { length }: ChosenUnits): string {
  if (length === 'mm') return `${formatNumber(metres, 0)}\u00a0m`;
  return `${formatNumber(lengthFromMm(metres * MM_PER_M, length) / 12, 0)}\u00a0ft`;
}

/** The longer form of each before the shorter; what none of them fits stays as it was written. */
const RULES: readonly Rule[] = [
  // The times' range stands behind the strength there, and could be read as the strength's.
  [
    /about (\d+) min to (\d+(?:\.\d+)?) °Bx \((\d+)–(\d+)\)/gu,
    (units, [middle = 0, brix = 0, low = 0, high = 0], local) =>
      `about ${middle} min${low === high ? '' : ` (${low}–${high})`} to ${local(exact(brix, units))}`,
  ],
  [
    pattern('# °Bx \\(#–#\\)'),
    (units, [brix = 0, low = 0, high = 0], local) => {
      const [least, most] = [low, high].map((end) => local(formatStrengthEnd(end, high - low, units.strength)));
      return `${local(exact(brix, units))} (${least}–${most})`;
    },
  ],
  // A whole number was meant roughly: tenths of it would claim to be read.
  [/(\d+) °Bx/gu, (units, [brix = 0], local) => local(rough(brix, units))],
  [pattern('# °Bx'), (units, [brix = 0], local) => local(exact(brix, units))],
  [pattern('# °C/min'), (units, [rate = 0], local) => local(formatRate(rate, units.temperature))],
  [pattern('rise # °C'), (units, [rise = 0], local) => `rise ${local(formatRise(rise, units.temperature))}`],
  [pattern('rise of # °C'), (units, [rise = 0], local) => `rise of ${local(formatRise(rise, units.temperature))}`],
  // One unit stands for both numbers, or for none where the tip is in steam.
  [
    pattern('fell from # to # °C'),
    ({ temperature }, [from = 0, to = 0], local) =>
      `fell from ${local(formatTemperature(from, temperature))} to ${local(formatTemperature(to, temperature))}`,
  ],
  [
    pattern('fell from # to the steam'),
    ({ temperature }, [from = 0], local) => `fell from ${local(formatTemperature(from, temperature))} to the steam`,
  ],
  [pattern('shows # °C'), (units, [by = 0], local) => `shows ${local(formatRise(by, units.temperature))}`],
  [pattern('lie # °C apart'), (units, [by = 0], local) => `lie ${local(formatRise(by, units.temperature))} apart`],
  ...['higher', 'lower'].map((than): Rule => [
    pattern(`# °C ${than}`),
    (units, [by = 0], local) => `${local(formatRise(by, units.temperature))} ${than}`,
  ]),
  [pattern('±# °C'), (units, [by = 0], local) => `±${local(formatRise(by, units.temperature))}`],
  [pattern('# °C'), (units, [celsius = 0], local) => local(formatTemperature(celsius, units.temperature))],
  [pattern('# mm'), (units, [mm = 0], local) => local(formatLength(mm, units.length))],
  [pattern('# m'), (units, [metres = 0], local) => local(height(metres, units))],
  [pattern('# kg'), (units, [kg = 0], local) => local(formatMass(kg, units.mass))],
  [pattern('# L'), (units, [litres = 0], local) => local(formatVolume(litres, units.volume))],
  [pattern('# hPa'), (units, [hpa = 0], local) => local(formatPressure(hpa, units.pressure))],
];

const WHOLE: readonly (readonly [RegExp, Rule[1]])[] = RULES.map(([{ source }, say]) => [
  new RegExp(`^${source}$`, 'u'),
  say,
]);
// No letter behind it: "3 minutes" are no metres.
const WITHIN = new RegExp(String.raw`(?:${RULES.map(([{ source }]) => source).join('|')})(?!\p{L})`, 'gu');

/** An amount that is the whole text, in the units chosen: "2.4 in" of "62 mm"; any other text as it is. */
export function amountInUnits(text: string, units: ChosenUnits, local: Local = (amount) => amount): string {
  for (const [whole, say] of WHOLE) {
    const match = whole.exec(text);
    if (match !== null) return say(units, match.slice(1).map(toNumber), local);
  }
  return text;
}

/**
 * A sentence without names with every amount in it in the units chosen: "about 9 min (7–12) to 66.9 °Bx", of a boil's own
 * "about 9 min to 66.9 °Bx (7–12)".
 */
export const amountsInUnits = (sentence: string, units: ChosenUnits, local?: Local): string =>
  sentence.replace(WITHIN, (found) => amountInUnits(found, units, local));

const toNumber = (text: string): number => Number(text.replace('−', '-'));

const BOTH_DEGREES = /\d[\d.,]*(?:\s(?:to|à)\s\d[\d.,]*)?\s°C\s\(([^()]*\s°F)\)/gu;
const BOTH_LENGTHS = /\d[\d.,]*\sm{1,2}\s\(([^()]*\s(?:in|po|ft|pi))\)/gu;

/** A text that says its amounts in both, as "82 to 88 °C (180 to 190 °F)", "6 mm (¼ in)" or "300 m (1000 ft)", with the chosen one alone. */
export function chosenOfBoth(
  text: string,
  { temperature, length }: Pick<ChosenUnits, 'temperature' | 'length'>,
): string {
  const only = (isSecond: boolean) => (both: string, second: string) =>
    isSecond ? second : both.slice(0, both.search(/\s\(/u));
  return text.replaceAll(BOTH_DEGREES, only(temperature === 'F')).replaceAll(BOTH_LENGTHS, only(length === 'inch'));
}
