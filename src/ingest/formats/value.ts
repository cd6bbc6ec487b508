// Reads one value of a line: a strictly written number with an optional unit, or the word of a broken probe.
import { celsiusFromFahrenheit } from '../../core/quantities/units.ts';

/** Why a value is not used; the same few words always, so that they can be counted. */
export type Refusal = 'no value' | 'not a number' | 'out of range' | 'unreadable bytes';

/** What a probe over a fire can meet, °C; beyond it the number is a fault of the wire, not a temperature. */
export const plausibleCelsius = { lowest: -60, highest: 450 };

const zero = 0x30;
const plus = 0x2b;
const minus = 0x2d;
const point = 0x2e;
const powersOfTen = Array.from({ length: 16 }, (_, power) => 10 ** power);
const brokenProbe = /^(?:nan|open|fault)[cfk]?$/i;
const unreadable = /[^ -~]/;

/** Printable ASCII: what a broken UTF-8 byte or a wrong baud rate leaves is never part of a name or a value. */
export const isPrintable = (code: number): boolean => code >= 0x20 && code <= 0x7e;
export const hasUnreadableBytes = (text: string): boolean => unreadable.test(text);

/**
 * °C of the value that stands in text between two places; null when the device says that its probe is broken.
 * A number is an optional sign, digits, and at most one decimal mark with digits after it: no exponent, no hex.
 * Then may follow C, F or K. Minus zero is refused: a device prints it for a sum that went wrong.
 * @param decimal character code of the decimal mark
 */
export function readValue(text: string, from: number, to: number, decimal = point): number | null | Refusal {
  if (from === to) return 'no value';
  const sign = text.charCodeAt(from);
  const start = sign === minus || sign === plus ? from + 1 : from;
  // Digits are added up by hand: a reading is a few of them, and this is read millions of times in a long replay.
  let at = start;
  let digits = 0;
  let sum = 0;
  for (; at < to; at++, digits++) {
    const digit = text.charCodeAt(at) - zero;
    if (digit < 0 || digit > 9) break;
    sum = sum * 10 + digit;
  }
  if (digits === 0) return brokenOrRefused(text.slice(from, to));
  let places = 0;
  if (at < to && text.charCodeAt(at) === decimal) {
    for (at++; at < to; at++, places++) {
      const digit = text.charCodeAt(at) - zero;
      if (digit < 0 || digit > 9) break;
      sum = sum * 10 + digit;
    }
    if (places === 0) return notANumber(text.slice(from, to));
  }
  // Up to 15 digits the sum and the power of ten are exact, so the quotient is the nearest number there is.
  const size =
    digits + places <= 15
      ? sum / powersOfTen[places]!
      : Number(`${text.slice(start, start + digits)}.${text.slice(at - places, at)}0`);
  if (sign === minus && size === 0) return 'not a number';
  return withUnit(sign === minus ? -size : size, text, at, to);
}

/** °C, or why a number that came as a number (JSON) is not used. */
export function plausible(celsius: number): number | Refusal {
  return celsius >= plausibleCelsius.lowest && celsius <= plausibleCelsius.highest ? celsius : 'out of range';
}

function withUnit(number: number, text: string, at: number, to: number): number | Refusal {
  if (at === to) return plausible(number);
  if (at + 1 !== to) return notANumber(text.slice(at, to));
  switch (text.charCodeAt(at) | 0x20) {
    case 0x63:
      return plausible(number);
    case 0x66:
      return plausible(celsiusFromFahrenheit(number));
    case 0x6b:
      return plausible(number - 273.15);
    default:
      return notANumber(text.slice(at, to));
  }
}

const brokenOrRefused = (text: string): null | Refusal => (brokenProbe.test(text) ? null : notANumber(text));

const notANumber = (text: string): Refusal => (hasUnreadableBytes(text) ? 'unreadable bytes' : 'not a number');
