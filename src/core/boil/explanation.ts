// What is behind one number on the screen, as facts: its range, what it rests on, and the mark that would make it surer.
import type { Origin, OriginKind } from '../quantities/measured.ts';
import { Z80 } from '../quantities/spread.ts';
import type { MarkKind } from './entries.ts';

/** The numbers that can be asked about; the points are the temperatures at which a pan is done and burns. */
export const EXPLAINED = [
  'water',
  'temperature',
  'rise',
  'rate',
  'strength',
  'litres',
  'depth',
  'top-up',
  'finish',
  'finish-point',
  'scorch-point',
] as const;
export type Explained = (typeof EXPLAINED)[number];

/** What something rests on and when that was seen, ms of boil time. */
export type From = Pick<Origin, 'kind' | 'at'>;

/** What is known of a pan beside the number itself; null is "not known" or "there is none". */
export interface PanFacts {
  temperatureC: number | null;
  riseC: number | null;
  brix: number | null;
  /** Counted at 20 °C. */
  litres: number | null;
  depthMm: number | null;
  leastDepthMm: number;
  evaporationLPerH: number | null;
  finishBrix: number;
  /** The finish was given as a rise, °C. */
  finishRiseC: number | null;
  scorchBrix: number;
  scorchInS: number | null;
  ceilingC: number | null;
  /** The probe that the pan is read by; null for a thermometer in the hand. */
  probe: string | null;
  /** When it was last heard or read, ms. */
  heardAt: number | null;
  /** What is added to its bare number to make it true, °C. */
  correctionC: number;
  /** What tells how this sap's rise differs from that of its sugars; null where nothing does. */
  sapFrom: From | null;
  /**
   * When the density that was noted last was taken of a boiling pan whose thermometer in the hand nobody read just before it,
   * ms: it tells the strength, and nothing of how this sap boils; null for none.
   */
  densityAlone: number | null;
  /** The last mark that told how much is in the pan. */
  volume: { kind: MarkKind; at: number } | null;
}

/** In °C, °C/min, °Bx, litres at 20 °C, mm, or s from now, as `what` says. */
export interface Explanation {
  what: Explained;
  pan: string | null;
  /** The moment that it stands for, ms of boil time. */
  t: number;
  value: number | null;
  /** The middle 80 %; null where it cannot be told. */
  low: number | null;
  high: number | null;
  /** What the uncertainty comes from, each with its share of it in the unit of the value; the largest first. */
  parts: Origin[];
  /** The mark that would take most off the uncertainty; null where none would take much. */
  surer: MarkKind | null;
  waterC: number | null;
  waterFrom: From | null;
  facts: PanFacts | null;
}

/** The number with its range and parts, before its surroundings are told. */
export type Bare = Pick<Explanation, 'value' | 'low' | 'high' | 'parts'>;

export const NOT_KNOWN: Bare = { value: null, low: null, high: null, parts: [] };

/** A value whose middle 80 % goes by its standard uncertainty. */
export function bare(value: number | null, sigma: number, parts: readonly Origin[]): Bare {
  if (value === null) return NOT_KNOWN;
  const shares = largestFirst(within(parts, sigma));
  return { value, low: value - Z80 * sigma, high: value + Z80 * sigma, parts: shares };
}

/** The same where the range is told already. */
export const ranged = (value: number | null, low: number | null, high: number | null, parts: readonly Origin[]): Bare =>
  value === null ? NOT_KNOWN : { value, low, high, parts: largestFirst(parts) };

/** What several things measured is surer than each of them says alone: no part is then more than the whole. */
function within(parts: readonly Origin[], sigma: number): Origin[] {
  const whole = Math.hypot(...parts.map((part) => part.sigma));
  return whole > sigma ? scaled(parts, sigma / whole) : [...parts];
}

const largestFirst = (parts: readonly Origin[]): Origin[] =>
  [...parts].sort((a, b) => Math.abs(b.sigma) - Math.abs(a.sigma));

/** The same parts behind a value that changes by `slope` for one of theirs. */
export const scaled = (parts: readonly Origin[], slope: number): Origin[] =>
  parts.map((part) => ({ ...part, sigma: part.sigma * slope }));

/** A part that makes less of the whole variance than this is not worth a mark. */
const WORTH_A_MARK = 0.2;

/** The mark that would take most off; `remedies` says which mark helps against which part. */
export function surest(
  parts: readonly Origin[],
  remedies: Partial<Record<OriginKind, MarkKind | null>>,
): MarkKind | null {
  const whole = parts.reduce((sum, { sigma }) => sum + sigma * sigma, 0);
  const worth = parts.filter(({ sigma }) => sigma * sigma > WORTH_A_MARK * whole);
  return largestFirst(worth).reduce<MarkKind | null>((mark, { kind }) => mark ?? remedies[kind] ?? null, null);
}
