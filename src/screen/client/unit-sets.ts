// The three whole sets of units, and which of them is usual where the page is read.
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

/** Of the languages that the browser prefers, in order, the first that names a region says which units are usual. */
export function usualUnits(preferred: readonly string[]): Units {
  const region = preferred.map(regionOf).find((each) => each !== undefined);
  return region === 'US' ? US : region === 'CA' ? CANADA : METRIC;
}
