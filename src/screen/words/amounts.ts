// Quantities between SI and the units a person chose: signed numbers for the cards, and what was typed back into SI.
import { formatLength, formatNumber, formatTemperature, formatVolume } from '../../core/quantities/format.ts';
import {
  celsiusFromTemperature,
  differenceFromCelsius,
  lengthFromMm,
  litresFromVolume,
  mmFromLength,
  temperatureFromCelsius,
} from '../../core/quantities/units.ts';
import type { Settings } from '../client/types.ts';

const METRES_PER_FOOT = 0.3048;

function signed(value: number, digits: number): string {
  const text = formatNumber(value, digits);
  return value > 0 && Number(value.toFixed(digits)) !== 0 ? `+${text}` : text;
}

/** "+3.9": a distance from the water point in the chosen degrees; whole degrees far off, where tenths say nothing. */
export function signedRise(riseC: number, settings: Settings): string {
  return signed(differenceFromCelsius(riseC, settings.temperature), Math.abs(riseC) >= 10 ? 0 : 1);
}

/** "+0.15 °C/min". */
export function signedRate(celsiusPerMinute: number, settings: Settings): string {
  const value = differenceFromCelsius(celsiusPerMinute, settings.temperature);
  return `${signed(value, Math.abs(value) < 1 ? 2 : 1)} °${settings.temperature}/min`;
}

export const temperature = (celsius: number, settings: Settings): string =>
  formatTemperature(celsius, settings.temperature);
export const volume = (litres: number, settings: Settings): string => formatVolume(litres, settings.volume);
export const depth = (mm: number, settings: Settings): string => formatLength(mm, settings.length);

export const celsiusShown = (celsius: number, settings: Settings): number =>
  temperatureFromCelsius(celsius, settings.temperature);
export const celsiusOf = (shown: number, settings: Settings): number =>
  celsiusFromTemperature(shown, settings.temperature);
export const litresOf = (shown: number, settings: Settings): number => litresFromVolume(shown, settings.volume);
export const mmOf = (shown: number, settings: Settings): number => mmFromLength(shown, settings.length);
export const mmShown = (mm: number, settings: Settings): number => lengthFromMm(mm, settings.length);

/** Heights over the sea go by metres or feet, as depths go by mm or inches. */
export const metresOf = (shown: number, settings: Settings): number =>
  settings.length === 'mm' ? shown : shown * METRES_PER_FOOT;
export const metresShown = (metres: number, settings: Settings): number =>
  settings.length === 'mm' ? metres : metres / METRES_PER_FOOT;

/** The symbols that stand behind number fields. */
export function unitSymbols(settings: Settings): {
  temperature: string;
  volume: string;
  length: string;
  height: string;
} {
  const volumes = { litre: 'litres', 'us-gallon': 'US gallons', 'imperial-gallon': 'imperial gallons' } as const;
  return {
    temperature: `°${settings.temperature}`,
    volume: volumes[settings.volume],
    length: settings.length === 'mm' ? 'mm' : 'in',
    height: settings.length === 'mm' ? 'm' : 'ft',
  };
}

/**
 * What a person typed as a number; a comma is taken for a point. Null when it is empty or no plain number,
 * because a slip of the finger must not become a reading.
 */
export function typedNumber(text: string): number | null {
  const plain = text.trim().replace(',', '.').replace('−', '-');
  return /^-?\d{1,7}(\.\d{1,6})?$/.test(plain) ? Number(plain) : null;
}
