// Quantities between SI and the units a person chose: signed numbers for the cards, and what was typed back into SI.
import {
  formatLength,
  formatMass,
  formatMassRange,
  formatNumber,
  formatPower,
  formatPressure,
  formatRise,
  formatRate,
  formatStrength,
  formatStrengthEnd,
  formatSyrup,
  formatSyrupRange,
  formatTemperature,
  formatVolume,
  formatVolumeRange,
  type Ranged,
  type RangeWords,
} from '../../core/quantities/format.ts';
import { brixFromStrength, strengthFromBrix } from '../../core/quantities/strength-scale.ts';
import {
  hpaFromFigure,
  hpaFromPressure,
  celsiusFromTemperature,
  differenceFromCelsius,
  lengthFromMm,
  litresFromVolume,
  mmFromLength,
  powerFromWatts,
  temperatureFromCelsius,
  volumeFromLitres,
  wattsFromPower,
} from '../../core/quantities/units.ts';
import type { Reading, Settings } from '../client/types.ts';
import { localAmount, localDigits } from '../language/numbers.ts';
import { say } from '../language/say.ts';

const METRES_PER_FOOT = 0.3048;
/** Burners are named in kilowatts where they are named in watts. */
const WATTS_PER_KILOWATT = 1000;

/** "66.9", with the decimal sign of the language. */
export const number = (value: number, digits: number): string => localDigits(formatNumber(value, digits));

/** "+0.4", "−0.4", "0.0", with the decimal sign of the language. */
export function signed(value: number, digits: number): string {
  const text = number(value, digits);
  return value > 0 && Number(value.toFixed(digits)) !== 0 ? `+${text}` : text;
}

/** "+3.9": a distance from the water point in the chosen degrees; whole degrees far off, where tenths say nothing. */
export function signedRise(riseC: number, settings: Settings): string {
  return signed(differenceFromCelsius(riseC, settings.temperature), Math.abs(riseC) >= 10 ? 0 : 1);
}

/** "3.9 °C": by how much two temperatures differ, in the chosen degrees. */
export const degreesApart = (celsius: number, settings: Settings): string =>
  `${number(differenceFromCelsius(celsius, settings.temperature), 1)} °${settings.temperature}`;

/** As it is shown, so that 0.0° is never under. */
export const isUnderWater = (riseC: number, settings: Settings): boolean =>
  Number(differenceFromCelsius(riseC, settings.temperature).toFixed(1)) < 0;

/** Nearer to a boil than this, °C, a pan shows its rise: where it begins to boil the two would else take turns (judgement). */
const CLOSE_TO_A_BOIL_C = 1;

/**
 * Whether a pan's large number is its rise: a pan that only warms up, or is off the fire, is as warm as it is, and a sign
 * before how far that is from a boil would be read as that of its temperature.
 */
export const showsRise = ({ rise_c: rise, stage }: Pick<Reading, 'rise_c' | 'stage'>): boolean =>
  rise !== null && stage !== 'off' && !((stage === 'warming' || stage === 'unknown') && rise < -CLOSE_TO_A_BOIL_C);

/** "+0.15 °C/min". */
export const signedRate = (celsiusPerMinute: number, settings: Settings): string =>
  localDigits(formatRate(celsiusPerMinute, settings.temperature));

/** "101.3 °C": a temperature to a tenth, from °C. */
export const temperature = (celsius: number, settings: Settings): string =>
  localAmount(formatTemperature(celsius, settings.temperature));
/** Whole degrees, for what is no reading. */
export const roundTemperature = (celsius: number, settings: Settings): string =>
  localAmount(formatTemperature(celsius, settings.temperature, 0));
/** A difference of temperatures, without a sign. */
export const degrees = (celsius: number, settings: Settings): string =>
  localAmount(formatRise(celsius, settings.temperature));
/** "56 °C under boiling water", of a rise below nought, °C. */
export const underWater = (riseC: number, settings: Settings): string =>
  say('explain.under_water', { rise: degrees(Math.abs(riseC), settings) });
/** With as many digits as the amount is known to, or with `digits`. */
export const volume = (litres: number, settings: Settings, digits?: number): string =>
  localAmount(formatVolume(litres, settings.volume, digits));
/** Syrup, with a second digit where it is little. */
export const syrupVolume = (litres: number, settings: Settings): string =>
  localAmount(formatSyrup(litres, settings.volume));
const localRange = ({ value, low, high }: RangeWords): RangeWords => ({
  value: localAmount(value),
  low: low === null ? null : localAmount(low),
  high: high === null ? null : localAmount(high),
});
/** Litres and their range, with the digits that the range allows. */
export const volumeRange = (litres: Ranged, settings: Settings): RangeWords =>
  localRange(formatVolumeRange(litres, settings.volume));
/** Litres of syrup and their range. */
export const syrupRange = (litres: Ranged, settings: Settings): RangeWords =>
  localRange(formatSyrupRange(litres, settings.volume));
/** Kilograms and their range. */
export const massRange = (kg: Ranged, settings: Settings): RangeWords => localRange(formatMassRange(kg, settings.mass));
/** A depth with its unit, from mm. */
export const depth = (mm: number, settings: Settings): string => localAmount(formatLength(mm, settings.length));
/** A pressure with its unit, from hPa. */
export const pressure = (hpa: number, settings: Settings): string =>
  localAmount(formatPressure(hpa, settings.pressure));
/** hPa of an air pressure as it was typed: by the figure itself, else in the unit shown. */
export const hpaOf = (shown: number, settings: Settings): number =>
  hpaFromFigure(shown) ?? hpaFromPressure(shown, settings.pressure);
/** What is wrong with a figure typed for the air's pressure, naming its field; null where it is one in any unit. */
export const problemInPressure = (field: string, typed: string, value: number): string | null =>
  hpaFromFigure(value) === null ? say('pressure.none', { field, typed }) : null;
/** A mass with its unit, from kg. */
export const mass = (kg: number, settings: Settings): string => localAmount(formatMass(kg, settings.mass));
/** A power with its unit, from W. */
export const power = (watts: number, settings: Settings): string => localAmount(formatPower(watts, settings.power));
/** A height over the sea with its unit, from m. */
export const height = (metres: number, settings: Settings): string =>
  `${number(metresShown(metres, settings), 0)}\u00a0${unitSymbols(settings).height}`;

/** A strength with the digits that its middle 80 % allows. */
export const strength = (brix: number, low: number | null, high: number | null, settings: Settings): string =>
  localAmount(formatStrength(brix, low, high, settings.strength));
/** Both ends of a strength's middle 80 %, without the unit, with as many digits as its width allows. */
export function strengthEnds(low: number, high: number, settings: Settings): [string, string] {
  const end = (brix: number): string => localDigits(formatStrengthEnd(brix, high - low, settings.strength));
  return [end(low), end(high)];
}
/** A strength that was chosen, and so is exact: "66.9 °Bx". */
export const exactStrength = (brix: number, settings: Settings): string => strength(brix, brix, brix, settings);

/** °C in the unit shown. */
export const celsiusShown = (celsius: number, settings: Settings): number =>
  temperatureFromCelsius(celsius, settings.temperature);
/** °C of a temperature in the unit shown. */
export const celsiusOf = (shown: number, settings: Settings): number =>
  celsiusFromTemperature(shown, settings.temperature);
/** Litres of a volume in the unit shown. */
export const litresOf = (shown: number, settings: Settings): number => litresFromVolume(shown, settings.volume);
/** Litres in the unit shown. */
export const litresShown = (litres: number, settings: Settings): number => volumeFromLitres(litres, settings.volume);
/** mm of a length in the unit shown. */
export const mmOf = (shown: number, settings: Settings): number => mmFromLength(shown, settings.length);
/** mm in the unit shown. */
export const mmShown = (mm: number, settings: Settings): number => lengthFromMm(mm, settings.length);
/** Up to 85 °Bx; 0 for what is no strength on the scale. */
export const brixOf = (shown: number, settings: Settings): number => brixFromStrength(shown, settings.strength) ?? 0;
/** °Bx on the scale shown; 0 for what is none. */
export const strengthShown = (brix: number, settings: Settings): number =>
  strengthFromBrix(brix, settings.strength) ?? 0;
/** W of a power as it is typed. */
export const wattsOf = (shown: number, settings: Settings): number =>
  settings.power === 'watt' ? shown * WATTS_PER_KILOWATT : wattsFromPower(shown, settings.power);
/** W as they are typed: in kW, or in Btu/h. */
export const powerShown = (watts: number, settings: Settings): number =>
  settings.power === 'watt' ? watts / WATTS_PER_KILOWATT : powerFromWatts(watts, settings.power);

/** Heights over the sea go by metres or feet, as depths go by mm or inches. */
export const metresOf = (shown: number, settings: Settings): number =>
  settings.length === 'mm' ? shown : shown * METRES_PER_FOOT;
/** Metres over the sea in the unit shown. */
export const metresShown = (metres: number, settings: Settings): number =>
  settings.length === 'mm' ? metres : metres / METRES_PER_FOOT;

const PRESSURE_SYMBOLS = { hpa: 'hPa', kpa: 'kPa', inhg: 'inHg' } as const;

/** The symbols that stand behind number fields. */
export function unitSymbols(settings: Settings): {
  temperature: string;
  volume: string;
  length: string;
  height: string;
  pressure: string;
  strength: string;
  power: string;
} {
  const volumes = {
    litre: 'unit.litres',
    'us-gallon': 'unit.us_gallons',
    'imperial-gallon': 'unit.imperial_gallons',
  } as const;
  const strengths = { brix: '°Bx', baume: '°Bé', sg: say('unit.specific_gravity') } as const;
  return {
    temperature: `°${settings.temperature}`,
    volume: say(volumes[settings.volume]),
    length: settings.length === 'mm' ? 'mm' : say('unit.inch'),
    height: settings.length === 'mm' ? 'm' : say('unit.foot'),
    pressure: PRESSURE_SYMBOLS[settings.pressure],
    strength: strengths[settings.strength],
    power: settings.power === 'watt' ? 'kW' : 'Btu/h',
  };
}

const FRACTIONS: Readonly<Record<string, string>> = { '½': '1/2', '¼': '1/4', '¾': '3/4' };

/** "60,000" and "1,250.5"; a group that begins with 0 is none: "0,900" may be meant for either. */
const BY_COMMAS = /^-?[1-9]\d{0,2}(?:,\d{3})+(?:\.\d{1,6})?$/u;

const tidied = (text: string): string =>
  text
    .trim()
    .replaceAll(/[\u00a0\u2009\u202f]/gu, ' ')
    .replaceAll(/\s*([½¼¾])/gu, (_, sign: string) => ` ${FRACTIONS[sign]}`)
    .trim()
    .replace('−', '-');

const hasPoint = (): boolean => localDigits('1.5') === '1.5';

/** Whether it could be either of two numbers: "0,900" where thousands are marked by a comma, which begin with no 0. */
export const isEitherNumber = (text: string): boolean => hasPoint() && /^-?0+,\d{3}$/u.test(tidied(text));

/** "1/2", "14 1/2" and "14-1/2", as a ruler is read; null for anything else. */
function fractionTyped(tidy: string): number | null {
  const [, whole = '0', above = '', below = ''] = /^(?:(\d{1,4})[ -])?(\d{1,2})\/(2|3|4|8|16|32)$/u.exec(tidy) ?? [];
  if (below === '' || Number(above) >= Number(below)) return null;
  return Number(whole) + Number(above) / Number(below);
}

/**
 * What a person typed as a number, by the language of the screen: a comma is taken for a point, but where the language marks
 * its decimals with a point, "60,000" is sixty thousand. Thousands may stand apart, and a fraction behind a whole number. Null
 * when it is empty, no plain number, or could be either of two, because a slip of the finger must not become a reading.
 */
export function typedNumber(text: string): number | null {
  const tidy = tidied(text);
  if (isEitherNumber(tidy)) return null;
  const byCommas = hasPoint() && BY_COMMAS.test(tidy);
  const joined = byCommas
    ? tidy.replaceAll(',', '')
    : tidy.replaceAll(/(?<=^-?\d{1,3}(?: \d{3})*) (?=\d{3}(?!\d))/gu, '');
  const plain = joined.replace(',', '.');
  return /^-?\d{1,7}(\.\d{1,6})?$/.test(plain) ? Number(plain) : fractionTyped(tidy);
}

/** Why `typedNumber` made nothing of what stands in a field. */
export function noNumber(field: string, typed: string): string {
  if (!isEitherNumber(typed)) return say('boil.problem.number', { field, typed });
  const tidy = tidied(typed);
  const [less, more] = [Number(tidy.replace(',', '.')), Number(tidy.replace(',', ''))];
  return say('boil.problem.either', { field, typed: typed.trim(), less: String(less), more: String(more) });
}

interface Outside {
  field: string;
  typed: string;
  least: number;
  greatest: number;
  /** A symbol, '' for a bare number. */
  unit: string;
}

/** "Back pot, finish: 90 is outside of 10 to 80 °Bx." */
export function outside({ field, typed, least, greatest, unit }: Outside): string {
  const end = (value: number): string => localDigits(String(value)).replace('-', '\u2212');
  const ends = { least: end(least), greatest: `${end(greatest)}${unit && `\u00a0${unit}`}` };
  return say('boil.problem.range', { field, typed, ...ends });
}
