// The three whole sets of units, and which of them, which clock and which order of a date is usual where the page is read.
import type { Settings } from './types.ts';

/** The strength is not among them: each of its scales is read everywhere. */
export type Units = Pick<Settings, 'temperature' | 'volume' | 'length' | 'pressure' | 'mass' | 'power'>;

export const METRIC: Units = {
  temperature: 'C',
  volume: 'litre',
  length: 'mm',
  pressure: 'hpa',
  mass: 'kg',
  power: 'watt',
};

export const US: Units = {
  temperature: 'F',
  volume: 'us-gallon',
  length: 'inch',
  pressure: 'inhg',
  mass: 'pound',
  power: 'btu-per-hour',
};

/** As weather is told in Canada: metric, its pressure in kilopascals. */
const CANADA: Units = { ...METRIC, pressure: 'kpa' };

export const IMPERIAL: Units = { ...US, volume: 'imperial-gallon' };

/** The region that a BCP 47 tag names itself: "US" of "en-US"; undefined for "en" and for what is no tag. */
function regionOf(tag: string): string | undefined {
  try {
    return new Intl.Locale(tag).region;
  } catch {
    return undefined;
  }
}

/** Of the languages that a browser prefers, in order, the first that names a region says where it is. */
const regionOfAll = (preferred: readonly string[]): string | undefined =>
  preferred.map(regionOf).find((each) => each !== undefined);

/** The units that are usual where the browser is, by the languages that it prefers. */
export const usualUnits = (preferred: readonly string[]): Units =>
  regionOfAll(preferred) === 'US' ? US : usualMetric(preferred);

/** The clock that is usual where the browser is: of the first language that names a region, as the language's own data has it. */
export function usualClock(preferred: readonly string[]): Settings['clock'] {
  const tag = preferred.find((each) => regionOf(each) !== undefined);
  return new Intl.DateTimeFormat(tag ?? 'en-GB', { hour: 'numeric' }).resolvedOptions().hour12 === true ? '12' : '24';
}

/** Whether a day is usually written after its month where the browser is, in the language that is spoken (BCP 47); not where it names no region. */
export function usualMonthFirst(language: string, preferred: readonly string[]): boolean {
  const region = regionOfAll(preferred);
  if (region === undefined) return false;
  const { language: root } = new Intl.Locale(language);
  const parts = new Intl.DateTimeFormat(`${root}-${region}`, { day: 'numeric', month: 'short' }).formatToParts(0);
  const placeOf = (wanted: string): number => parts.findIndex(({ type }) => type === wanted);
  return placeOf('month') < placeOf('day');
}

/** What metric means where the browser is. */
export const usualMetric = (preferred: readonly string[]): Units => (regionOfAll(preferred) === 'CA' ? CANADA : METRIC);
