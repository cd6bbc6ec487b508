// Puts quantities into words for a person, with no more digits than are known; null is "not known".
import type { StrengthScale } from '../physics/hydrometer.ts';
import { Z80 } from './spread.ts';
import { strengthFromBrix } from './strength-scale.ts';
import {
  differenceFromCelsius,
  lengthFromMm,
  massFromKg,
  powerFromWatts,
  pressureFromHpa,
  temperatureFromCelsius,
  volumeFromLitres,
  type LengthUnit,
  type MassUnit,
  type PowerUnit,
  type PressureUnit,
  type TemperatureUnit,
  type VolumeUnit,
} from './units.ts';

const notKnown = 'not known';

const minus = '\u2212';
const enDash = '\u2013';
/** Keeps a number and its unit on one line. */
const space = '\u00a0';

const volumeSymbols: Record<VolumeUnit, string> = {
  litre: 'L',
  'us-gallon': 'US gal',
  'imperial-gallon': 'imp gal',
};

type MaybeNumber = number | null;

const known = (value: MaybeNumber): value is number => value !== null && Number.isFinite(value);

/** A bare number with a true minus sign, never "−0.0", to tens where `digits` is -1; "not known" for null. */
export function formatNumber(value: MaybeNumber, digits: number): string {
  if (!known(value)) return notKnown;
  const size = Math.abs(value);
  const step = 10 ** -digits;
  const magnitude = digits < 0 ? String(Math.round(size / step) * step) : size.toFixed(digits);
  return value < 0 && Number(magnitude) !== 0 ? minus + magnitude : magnitude;
}

/**
 * A value that a person may have typed in another unit, for a sentence of which the amounts are told in that again: one
 * decimal more than `digits` where it has one.
 */
export const formatTyped = (value: number, digits: number): string =>
  value
    .toFixed(digits + 1)
    .replace(/0$/u, '')
    .replace(/\.$/u, '');

const withUnit = (value: MaybeNumber, digits: number, unit: string): string =>
  known(value) ? formatNumber(value, digits) + space + unit : notKnown;

/** "101.3 °C" or "214.3 °F". */
export function formatTemperature(celsius: MaybeNumber, unit: TemperatureUnit, digits = 1): string {
  return withUnit(celsius === null ? null : temperatureFromCelsius(celsius, unit), digits, `°${unit}`);
}

/** A difference of temperatures: a rise of 4 °C is "4.0 °C" or "7.2 °F". */
export function formatRise(riseC: MaybeNumber, unit: TemperatureUnit, digits = 1): string {
  return withUnit(riseC === null ? null : differenceFromCelsius(riseC, unit), digits, `°${unit}`);
}

/** "12.4 L", "140 L", "0.85 L": at most three figures, for nobody measures a pan better. */
export function formatVolume(litres: MaybeNumber, unit: VolumeUnit, digits?: number): string {
  const value = litres === null ? null : volumeFromLitres(litres, unit);
  return withUnit(value, digits ?? volumeDigits(value), volumeSymbols[unit]);
}

/** "1.25 L" or "12.4 L": syrup is measured in a jug or by jars, and is worth a second digit. */
export function formatSyrup(litres: MaybeNumber, unit: VolumeUnit): string {
  const value = litres === null ? null : volumeFromLitres(litres, unit);
  return withUnit(value, syrupDigits(value), volumeSymbols[unit]);
}

const syrupDigits = (value: MaybeNumber): number => (Math.abs(value ?? 10) < 9.995 ? 2 : 1);

function volumeDigits(value: MaybeNumber): number {
  const size = Math.abs(value ?? 0);
  if (size < 0.995) return 2;
  return size < 99.95 ? 1 : 0;
}

/** A value with its middle 80 %; both ends null where its range is not known. */
export interface Ranged {
  value: number;
  low: MaybeNumber;
  high: MaybeNumber;
}

/** A value and the ends of its range in words, all with the same digits; the ends are null where they are not known. */
export interface RangeWords {
  value: string;
  low: string | null;
  high: string | null;
}

/**
 * Decimals that a value's middle 80 % allows, all in the unit shown, and `most` at most: down to the place of the first
 * figure of its standard uncertainty, as formatMeasured has it. However wide the range is, whole numbers stay, of what is
 * over 100 two figures, and of what is under 1 one (judgement: nothing would be left). -1 is tens.
 */
function rangeDigits({ value, low, high }: Ranged, most: number): number {
  if (!known(low) || !known(high) || low === high) return most;
  const sigma = Number((Math.abs(high - low) / (2 * Z80)).toPrecision(1));
  const size = Math.abs(low < 0 ? Math.max(-low, high) : value);
  const first = Math.floor(Math.log10(size));
  const coarsest = size < 1 ? first : Math.max(0, first - 1);
  return Math.min(most, -Math.min(Math.floor(Math.log10(sigma)), coarsest));
}

/** Writes a value and its range with the digits that the range allows, by how one number is written. */
export function formatRanged(
  ranged: Ranged,
  most: number,
  write: (value: number, digits: number) => string,
): RangeWords {
  const digits = rangeDigits(ranged, most);
  const end = (value: MaybeNumber): string | null => (known(value) ? write(value, digits) : null);
  return { value: write(ranged.value, digits), low: end(ranged.low), high: end(ranged.high) };
}

const inUnit = ({ value, low, high }: Ranged, shown: (value: number) => number): Ranged => ({
  value: shown(value),
  low: known(low) ? shown(low) : null,
  high: known(high) ? shown(high) : null,
});

/** "140 L" with "130 L" and "150 L": litres with the digits that their range allows, and no more than formatVolume's. */
export function formatVolumeRange(litres: Ranged, unit: VolumeUnit): RangeWords {
  const shown = inUnit(litres, (one) => volumeFromLitres(one, unit));
  return formatRanged(shown, volumeDigits(shown.value), (one, digits) => withUnit(one, digits, volumeSymbols[unit]));
}

/** The same for syrup, which has a second digit where its range allows one. */
export function formatSyrupRange(litres: Ranged, unit: VolumeUnit): RangeWords {
  const shown = inUnit(litres, (one) => volumeFromLitres(one, unit));
  return formatRanged(shown, syrupDigits(shown.value), (one, digits) => withUnit(one, digits, volumeSymbols[unit]));
}

/** "56 kg" with "41 kg" and "78 kg": kilograms with the digits that their range allows. */
export function formatMassRange(kg: Ranged, unit: MassUnit): RangeWords {
  const shown = inUnit(kg, (one) => massFromKg(one, unit));
  const symbol = unit === 'pound' ? 'lb' : 'kg';
  return formatRanged(shown, volumeDigits(shown.value), (one, digits) => withUnit(one, digits, symbol));
}

/** "+0.15 °C/min": how fast a temperature changes, to a hundredth where that is under one. */
export function formatRate(celsiusPerMinute: number, unit: TemperatureUnit): string {
  const value = differenceFromCelsius(celsiusPerMinute, unit);
  const digits = Math.abs(value) < 1 ? 2 : 1;
  const sign = value > 0 && Number(value.toFixed(digits)) !== 0 ? '+' : '';
  return `${sign}${formatNumber(value, digits)} °${unit}/min`;
}

/** One end of a strength's middle 80 %, without the unit, with as many digits as its `width` (°Bx) allows. */
export function formatStrengthEnd(brix: number, width: number, scale: StrengthScale): string {
  const isFine = width <= 2;
  const digits = scale === 'sg' ? (isFine ? 3 : 2) : isFine ? 1 : 0;
  return formatNumber(strengthFromBrix(brix, scale) ?? 0, digits);
}

/** "62 mm" or "2.4 in". */
export function formatLength(mm: MaybeNumber, unit: LengthUnit, digits?: number): string {
  const value = mm === null ? null : lengthFromMm(mm, unit);
  return withUnit(value, digits ?? (unit === 'inch' ? 1 : 0), unit === 'inch' ? 'in' : 'mm');
}

const PRESSURE_WRITTEN: Record<PressureUnit, { symbol: string; digits: number }> = {
  hpa: { symbol: 'hPa', digits: 0 },
  kpa: { symbol: 'kPa', digits: 1 },
  inhg: { symbol: 'inHg', digits: 2 },
};

/** "998 hPa", "99.8 kPa" or "29.47 inHg": a hundredth of an inch is a third of a hPa. */
export function formatPressure(hpa: MaybeNumber, unit: PressureUnit, digits?: number): string {
  const value = hpa === null ? null : pressureFromHpa(hpa, unit);
  const written = PRESSURE_WRITTEN[unit];
  return withUnit(value, digits ?? written.digits, written.symbol);
}

/** "12.4 kg" or "27.3 lb", digits as formatVolume. */
export function formatMass(kg: MaybeNumber, unit: MassUnit, digits?: number): string {
  const value = kg === null ? null : massFromKg(kg, unit);
  return withUnit(value, digits ?? volumeDigits(value), unit === 'pound' ? 'lb' : 'kg');
}

/** "8.01 kW" or "27300 Btu/h": three figures, for no maker states a burner better. */
export function formatPower(watts: MaybeNumber, unit: PowerUnit): string {
  const value = watts === null ? null : powerFromWatts(watts, unit);
  const shown = known(value) ? Number(value.toPrecision(3)) : value;
  if (unit === 'btu-per-hour' || !known(shown)) return withUnit(shown, 0, 'Btu/h');
  // In the unit in which it is typed, without decimals that say nothing.
  const kilowatts = shown / 1000;
  return withUnit(kilowatts, String(kilowatts).split('.')[1]?.length ?? 0, 'kW');
}

const strengthSymbols: Record<StrengthScale, string> = { brix: '°Bx', baume: '°Bé', sg: 'SG' };

/** Digits for a range of 2 and of 10 °Bx at most: a tenth of a °Bx is about a twentieth of a °Bé or 0.0006 of SG. */
const strengthDigits: Record<StrengthScale, { fine: number; coarse: number }> = {
  brix: { fine: 1, coarse: 0 },
  baume: { fine: 1, coarse: 0 },
  sg: { fine: 3, coarse: 2 },
};

/**
 * Strength with the digits that its middle 80 % (low to high, °Bx) allows: "66.3 °Bx", "35.8 °Bé" or "1.328 SG" where
 * that is at most 2 °Bx wide, "63 °Bx" up to 10 or where the range is not known, and beyond only the range itself:
 * "4–15 °Bx", "below 12 °Bx".
 */
export function formatStrength(
  brix: MaybeNumber,
  low: MaybeNumber,
  high: MaybeNumber,
  scale: StrengthScale = 'brix',
): string {
  if (!known(brix)) return notKnown;
  const { fine, coarse } = strengthDigits[scale];
  const symbol = strengthSymbols[scale];
  const value = strengthFromBrix(brix, scale);
  if (!known(low) || !known(high)) return withUnit(value, coarse, symbol);
  const width = high - low;
  if (width <= 2) return withUnit(value, fine, symbol);
  if (width <= 10) return withUnit(value, coarse, symbol);
  const most = strengthFromBrix(high, scale);
  return low < 0.5
    ? `below ${withUnit(most, coarse, symbol)}`
    : formatRange(strengthFromBrix(low, scale), most, coarse, symbol);
}

/** Of what is exact as many digits as these are printed. */
const mostDigits = 6;

/**
 * "98.7 °C ±0.1": a value with its standard uncertainty, both in `unit`. The uncertainty is rounded to its first figure
 * and the value to the same place, so that no digit is printed that it does not know: ±30 gives "1240 L ±30".
 */
export function formatMeasured(measured: { value: number; sigma: number } | null, unit: string): string {
  if (measured === null || !known(measured.value) || !known(measured.sigma)) return notKnown;
  const { value, sigma } = measured;
  if (sigma === 0) return formatNumber(Number(value.toPrecision(mostDigits)), digitsOf(value)) + space + unit;
  const rounded = Number(sigma.toPrecision(1));
  const place = Math.floor(Math.log10(rounded) + 1e-9);
  const step = 10 ** Math.max(0, place);
  const digits = Math.min(9, Math.max(0, -place));
  const whole = Math.round(value / step) * step;
  return `${withUnit(place > 0 ? whole : value, digits, unit)} ±${formatNumber(rounded, digits)}`;
}

/** Decimals that a number has of itself, up to the most that are printed. */
const digitsOf = (value: number): number => (String(Number(value.toPrecision(mostDigits))).split('.')[1] ?? '').length;

/** "65.0–66.5 °Bx"; one number where both ends print alike; "to" instead of the dash beside a minus sign. */
export function formatRange(low: MaybeNumber, high: MaybeNumber, digits: number, unit: string): string {
  if (!known(low) || !known(high)) return notKnown;
  const least = formatNumber(low, digits);
  const greatest = formatNumber(high, digits);
  if (least === greatest) return greatest + space + unit;
  const between = least.startsWith(minus) || greatest.startsWith(minus) ? ' to ' : enDash;
  return least + between + greatest + space + unit;
}
