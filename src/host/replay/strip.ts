// Puts a boil that was read, or is being read, into the columns of its strip; and two of them beside each other.
import { callDifferences } from '../../core/compare/call-differences.ts';
import type { PanStrip, ReplayDifferences, ReplayStrip } from '../../protocol/replay-messages.ts';
import { LOOK_MS, type Looks } from './looks.ts';
import type { WholeBoil } from './whole-boil.ts';

/** The boil as a strip of at most so many columns, as far as it is read. */
export function stripOf(whole: WholeBoil, points: number): ReplayStrip {
  const { length, readUntil, looks } = whole;
  const columnMs = columnOf(length, points);
  return {
    length,
    readUntil,
    columnMs,
    pans: looks.pans.map((pan) => panStrip(looks, pan, columnMs)),
    calls: [...whole.calls],
    marks: whole.marks.map(({ t, at, mark }) => ({ t, at, mark })),
    gaps: whole.gaps,
    finishes: [...whole.finishes],
  };
}

/** Of the whole pans; calls that lie beyond what both are read say nothing yet. */
export function differencesOf(was: WholeBoil, would: WholeBoil, points: number): ReplayDifferences {
  const { length } = was;
  const readUntil = Math.min(was.readUntil, would.readUntil);
  const columnMs = columnOf(length, points);
  const pans = [...new Set([...was.looks.pans, ...would.looks.pans])];
  const one = (whole: WholeBoil, pan: string): PanStrip | null =>
    whole.looks.pans.includes(pan) ? panStrip(whole.looks, pan, columnMs) : null;
  const read = (whole: WholeBoil) => whole.calls.filter(({ raised }) => raised <= readUntil);
  const calls = { was: read(was), would: read(would) };
  return {
    length,
    readUntil,
    columnMs,
    pans: pans.map((pan) => ({ pan, was: one(was, pan), would: one(would, pan) })),
    calls,
    differences: callDifferences(calls.was, calls.would),
  };
}

/** How long a column is, ms: whole looks, and at most so many columns. */
const columnOf = (length: number, points: number): number =>
  Math.max(1, Math.ceil((length + 1) / LOOK_MS / points)) * LOOK_MS;

function panStrip(looks: Looks, pan: string, columnMs: number): PanStrip {
  const perColumn = columnMs / LOOK_MS;
  const strip: PanStrip = { pan, low: [], high: [], brix: [], water: [], finish: [] };
  for (let first = 0; first < looks.count; first += perColumn) {
    const numbers = Array.from({ length: Math.min(perColumn, looks.count - first) }, (_, i) => first + i);
    const celsius = numbers.map((number) => looks.at(pan, 'celsius', number)).filter((value) => value !== null);
    strip.low.push(celsius.length === 0 ? null : Math.min(...celsius));
    strip.high.push(celsius.length === 0 ? null : Math.max(...celsius));
    const last = numbers.at(-1)!;
    for (const name of ['brix', 'water', 'finish'] as const) strip[name].push(looks.at(pan, name, last));
  }
  return strip;
}
