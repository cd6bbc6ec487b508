// Why a probe gives no temperature though its channel is named: by the board's word, by its sensor's, or by a code that only looks like a number.

/** The board says so; a number that does not fit the sensor; the first number after power-on; a number that no pan can have, as it came. */
export type BrokenBy = { by: 'board' } | { by: 'sensor' } | { by: 'power-on' } | CodeSent;

export interface CodeSent {
  by: 'code';
  celsius: number;
  written: string;
}

/** What a digital sensor's reader sends when the sensor does not answer (trade.md, known bad values), °C. */
const NO_ANSWER_C = -127;

/** Top of the range of common converters and of the sensors behind them, °C: a tip or a lead that is open reads as this (trade.md and data sheets, from memory). */
const FULL_SCALES_C = [850, 1023.75, 1370, 1372, 1800, 2047.75];

const isNear = (one: number, other: number): boolean => Math.abs(one - other) < 0.05;

/** What is said of it: the code by its name, and what it means. */
export function brokenWords(broken: BrokenBy): string {
  if (broken.by === 'board') return 'the board says that the probe is broken';
  if (broken.by === 'sensor') return 'the probe is broken, or what it sends is no temperature';
  if (broken.by === 'power-on') return '85.000 at power-on: nothing was measured yet';
  const number = broken.written.replace('-', '−');
  if (isNear(broken.celsius, NO_ANSWER_C)) return `${number}: the sensor does not answer`;
  if (FULL_SCALES_C.some((top) => isNear(broken.celsius, top)))
    return `${number}: the end of its range, so the tip or a lead is open`;
  if (broken.written === '-0') return '−0: what a board prints for a sum that went wrong';
  return `${number}: no pan can be so ${broken.celsius > 0 ? 'hot' : 'cold'}, so it is no temperature`;
}
