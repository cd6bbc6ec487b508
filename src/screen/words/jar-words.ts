// Jars as a person writes them: "12 × 250 mL, 3 × 0.5 L", and back into litres.
import type { Jars } from '../../protocol/season-messages.ts';
import type { Settings } from '../client/types.ts';
import { inField } from '../language/numbers.ts';
import { type MessageKey, say } from '../language/say.ts';
import { number, typedNumber, volume } from './amounts.ts';

/** Litres; a fluid ounce, a pint and a quart are a gallon's 128th, 8th and 4th in the USA, its 160th, 8th and 4th elsewhere. */
function unitLitres(settings: Settings): Record<'gallon' | 'ounce', number> {
  const [gallon, ounces] = settings.volume === 'imperial-gallon' ? [4.54609, 160] : [3.785411784, 128];
  return { gallon, ounce: gallon / ounces };
}

/** Jars that have a name of their own beside gallons, by their part of one. */
const NAMED: readonly (readonly [part: number, count: string, unit: MessageKey])[] = [
  [1, '1', 'unit.gallon'],
  [1 / 2, '1/2', 'unit.gallon'],
  [1 / 4, '1', 'unit.quart'],
  [1 / 8, '1', 'unit.pint'],
];

/** A jar is kept to a hundredth of a millilitre: what is nearer to a whole number was meant as one. */
const KEPT_L = 0.00001;
const isWhole = (litres: number, each: number): boolean =>
  Math.abs(litres - Math.round(litres / each) * each) <= KEPT_L;

/** "250 mL"; for who counts in gallons "1 pt" or "8 fl oz", though a jar of whole millilitres stays one. */
function sizeWords(litres: number, settings: Settings): string {
  const metric = `${inField(litres / 0.001, 1)} mL`;
  if (settings.volume === 'litre') return metric;
  const { gallon, ounce } = unitLitres(settings);
  const named = NAMED.find(([part]) => Math.abs(litres - part * gallon) <= KEPT_L);
  if (named !== undefined) return `${named[1]} ${say(named[2])}`;
  if (!isWhole(litres, ounce / 2) && isWhole(litres, 0.001)) return metric;
  return `${inField(litres / ounce, 1)} ${say('unit.fluid_ounce')}`;
}

/** "12 × 250 mL", or pints and fluid ounces for who counts in gallons. */
export const jarsWords = (jars: readonly Pick<Jars, 'litres' | 'count'>[], settings: Settings): string =>
  jars.map(({ litres, count }) => `${count} × ${sizeWords(litres, settings)}`).join(', ');

/** What fills no jar: "0.15 L", or "5 fl oz" for who counts in gallons. */
export function leftWords(litres: number, settings: Settings): string {
  if (settings.volume === 'litre') return volume(litres, settings, 2);
  return `${number(litres / unitLitres(settings).ounce, 0)}\u00a0${say('unit.fluid_ounce')}`;
}

/** How jars are written, in the units that were chosen. */
export const jarsExample = (settings: Settings): string =>
  say(settings.volume === 'litre' ? 'notebook.end.jars_example' : 'notebook.end.jars_example_gallons');

/** Less than this sticks to the vessel and the filter, litres (judgement). */
const LEAST_LEFT_L = 0.02;

/** What fills no jar of so much syrup, litres; null where it is nothing worth a word. */
export function leftOver(syrupLitres: number, jars: readonly Pick<Jars, 'litres' | 'count'>[]): number | null {
  const left = syrupLitres - jars.reduce((sum, { litres, count }) => sum + litres * count, 0);
  return left < LEAST_LEFT_L ? null : left;
}

/** Units as they may be typed, in either language, and what one holds, litres. */
const TYPED_UNITS: readonly (readonly [RegExp, (settings: Settings) => number])[] = [
  [/^ml$/i, () => 0.001],
  [/^cl$/i, () => 0.01],
  [/^(?:l|litres?|liters?)$/i, () => 1],
  [/^(?:fl\.? ?oz|oz(?: liq)?)\.?$/i, (settings) => unitLitres(settings).ounce],
  [/^(?:cups?|tasses?)$/i, (settings) => unitLitres(settings).gallon / 16],
  [/^(?:pt|pints?|chopines?)\.?$/i, (settings) => unitLitres(settings).gallon / 8],
  [/^(?:qt|quarts?|pintes?)\.?$/i, (settings) => unitLitres(settings).gallon / 4],
  [/^gal(?:lons?)?\.?$/i, (settings) => unitLitres(settings).gallon],
];

/** From this on a unit is a jar's own name, so that "8 pints" are eight jars; "8 oz" may be one jar of 8 oz. A cup is the least. */
const NAME_OF_A_JAR = (settings: Settings): number => unitLitres(settings).gallon / 16;

/** What syrup is filled into, in either language; each may be of any size, so the size is typed with it. */
const CONTAINERS =
  'jars?|bottles?|cans?|tins?|jugs?|tubs?|containers?|pots?|bocal|bocaux|bouteilles?|cannes?|bo[iî]tes?|conserves?|cruches?|contenants?|flacons?';
/** "12 × 250 mL", "12 jars of 250 mL". */
const COUNT_AND_SIZE = new RegExp(
  String.raw`^\s*(\d{1,5})\s*(?:x|×|\*|(?:${CONTAINERS})(?: of| de)?\s)\s*((?:\d+ )?\d\/\d+|[\d.,½¼¾]+)\s*(\p{L}[\p{L}. ]*?)\s*$`,
  'iu',
);
/** "8 pints", "8 × pint", "3 half-gallons". */
const COUNT_AND_NAME = /^\s*(\d{1,5})\s*(?:x|×|\*)?\s*((?:half|demi)[- ]|(?:1\/2|½)\s*)?(\p{L}[\p{L}.]*)\s*$/iu;

function jarTyped(part: string, settings: Settings): Jars | null {
  const litresOf = (name: string): number | undefined =>
    TYPED_UNITS.find(([pattern]) => pattern.test(name))?.[1](settings);
  const jars = (count: string, litres: number): Jars => ({ litres: Number(litres.toFixed(5)), count: Number(count) });
  const sized = COUNT_AND_SIZE.exec(part);
  if (sized !== null) {
    const [, count = '', typed = '', name = ''] = sized;
    const each = typedNumber(typed);
    const unit = litresOf(name);
    return each === null || each <= 0 || unit === undefined ? null : jars(count, each * unit);
  }
  const [, count = '', half, name = ''] = COUNT_AND_NAME.exec(part) ?? [];
  const unit = litresOf(name);
  if (unit === undefined || unit < NAME_OF_A_JAR(settings)) return null;
  return jars(count, half === undefined ? unit : unit / 2);
}

/** null where it cannot be read. Empty is no jars. */
export function jarsTyped(text: string, settings: Settings): Jars[] | null {
  const jars = text
    .split(/[,;+]\s+|[;+]|\s(?:and|et)\s/i)
    .filter((part) => part.trim() !== '')
    .map((part) => jarTyped(part, settings));
  return jars.includes(null) ? null : (jars as Jars[]);
}
