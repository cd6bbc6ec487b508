// Finds where in a line each reading stands, by asking read-line itself: a changed digit changes the reading that it belongs to.
import type { PortFormat } from '../../core/boil/entries.ts';
import type { LineReading } from '../../core/boil/line-reading.ts';
import { readLine } from '../read-line.ts';

export interface ReadingPlace extends LineReading {
  start: number;
  end: number;
}

/** Longer lines and lines with more digits are read, but not shown piece by piece: the work grows with the square. */
const mostDigitRuns = 200;

/** The readings of a line, each with its place; those whose place cannot be found are left out. In order of place. */
export function readingPlaces(line: string, format: PortFormat): ReadingPlace[] {
  const { readings } = readLine(line, format);
  if (readings.length === 0) return [];
  const places = new Map<string, ReadingPlace>();
  const runs = [...line.matchAll(/\d+|(?:nan|open|fault)(?:[cfk]\b)?|null/gi)].slice(0, mostDigitRuns);
  for (const { index, 0: run } of runs) {
    const changed = readLine(line.slice(0, index) + otherThan(run) + line.slice(index + run.length), format).readings;
    const reading = theOneChanged(readings, changed);
    if (reading === null) continue;
    const end = index + run.length;
    const known = places.get(reading.channel);
    const start = /[-+]/.test(line[index - 1] ?? '') ? index - 1 : index;
    places.set(reading.channel, known === undefined ? { ...reading, start, end } : { ...known, end });
  }
  return [...places.values()].sort((one, other) => one.start - other.start);
}

function otherThan(run: string): string {
  if (!/^\d/.test(run)) return '1';
  return (run[0] === '9' ? '8' : String(Number(run[0]) + 1)) + run.slice(1);
}

function theOneChanged(before: LineReading[], after: LineReading[]): LineReading | null {
  if (before.length !== after.length) return null;
  const changed = before.filter((one, at) => one.value !== after[at]!.value);
  const sameNames = before.every((one, at) => one.channel === after[at]!.channel);
  return sameNames && changed.length === 1 ? changed[0]! : null;
}
