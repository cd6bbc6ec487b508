// Reads one value of a line: a strictly written number with an optional unit, or the word of a broken probe.
import type { LineReading, LineUnit } from '../../core/boil/line-reading.ts';

/** What stands behind a channel's name. Whether the number can be meant is not judged here: it may be ohms. */
export type Value = Pick<LineReading, 'value' | 'unit'>;

/** Why a value is not used; the same few words always, so that they can be counted. */
export type Refusal = 'no value' | 'not a number' | 'out of range' | 'unreadable bytes';

const zero = 0x30;
const plus = 0x2b;
const minus = 0x2d;
const point = 0x2e;
const powersOfTen = Array.from({ length: 16 }, (_, power) => 10 ** power);
const brokenProbe = /^(?:nan|open|fault)[cfk]?$/i;
const unreadable = /[^ -~]/;

/** Printable ASCII: what a broken UTF-8 byte or a wrong baud rate leaves is never part of a name or a value. */
export const isPrintable = (code: number): boolean => code >= 0x20 && code <= 0x7e;

/** Whether a text holds what is not printable ASCII. */
export const hasUnreadableBytes = (text: string): boolean => unreadable.test(text);

/** The device says that its probe is broken. */
export const broken: Value = { value: null, unit: null };

/**
 * The value that stands in text between two places.
 * A number is an optional sign, digits, and at most one decimal mark with digits after it: no exponent, no hex.
 * Then may follow C, F or K.
 * @param decimal character code of the decimal mark
 */
export function readValue(text: string, from: number, to: number, decimal = point): Value | Refusal {
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
  return withUnit(sign === minus ? -size : size, text, at, to);
}

/** A number of any size that a computer can hold, or why it is not used. */
export function numberValue(value: number, unit: LineUnit | null = null): Value | Refusal {
  return Number.isFinite(value) ? { value, unit } : 'out of range';
}

function withUnit(number: number, text: string, at: number, to: number): Value | Refusal {
  if (at === to) return numberValue(number);
  if (at + 1 !== to) return notANumber(text.slice(at, to));
  switch (text.charCodeAt(at) | 0x20) {
    case 0x63:
      return numberValue(number, 'C');
    case 0x66:
      return numberValue(number, 'F');
    case 0x6b:
      return numberValue(number, 'K');
    default:
      return notANumber(text.slice(at, to));
  }
}

const brokenOrRefused = (text: string): Value | Refusal => (brokenProbe.test(text) ? broken : notANumber(text));

const notANumber = (text: string): Refusal => (hasUnreadableBytes(text) ? 'unreadable bytes' : 'not a number');
