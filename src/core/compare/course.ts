// A boil in few numbers, one a minute for each pan, so that boils can be laid over each other: by clock, finish, water gone or strength.
import type { Finished } from './finishes.ts';
import { LEAST_BOILING_S } from '../season/boil-facts.ts';
import { HOUR_MS } from '../quantities/time.ts';

export const ALIGNMENTS = ['clock', 'before-finish', 'evaporated', 'strength'] as const;
export type Alignment = (typeof ALIGNMENTS)[number];
/** What is drawn upwards. */
export const COMPARED = ['temperature', 'rise', 'strength', 'evaporation'] as const;
export type Compared = (typeof COMPARED)[number];

/** One number a minute: number i is at i minutes. */
export const COURSE_EVERY_MS = 60_000;

/** null is not known. */
export interface PanCourse {
  id: string;
  name: string;
  /** As sapKey names it. */
  sap: string;
  celsius: (number | null)[];
  /** Water point, °C. */
  water: (number | null)[];
  brix: (number | null)[];
  /** Water that leaves, L/h. */
  evaporation: (number | null)[];
}

export interface BoilCourse {
  pans: PanCourse[];
  finishes: Finished[];
}

/** A line to be drawn. `t` is boil time of each point, ms. */
export interface Line {
  t: number[];
  x: number[];
  y: (number | null)[];
}

/** Whether anything was read of the pan. */
export const wasSeen = ({ celsius }: PanCourse): boolean => celsius.some((one) => one !== null);

/** The pan that is asked for, else the one that was finished last, else the one that got strongest; null where none was seen. */
export function panOf({ pans, finishes }: BoilCourse, asked: string | null): PanCourse | null {
  if (asked !== null) return pans.find(({ id }) => id === asked) ?? null;
  const last = finishes.findLast(({ by }) => by !== 'unfinished');
  if (last !== undefined) return pans.find(({ id }) => id === last.pan) ?? null;
  const strongest = (pan: PanCourse): number => pan.brix.reduce<number>((most, one) => Math.max(most, one ?? 0), 0);
  const seen = pans.filter(wasSeen);
  return seen.reduce<PanCourse | null>(
    (best, pan) => (best === null || strongest(pan) > strongest(best) ? pan : best),
    null,
  );
}

/** Boil time at which the pan was last finished, ms; null where it was not. */
export const finishOf = ({ finishes }: BoilCourse, pan: string): number | null =>
  finishes.findLast((one) => one.pan === pan && one.by !== 'unfinished')?.at ?? null;

/**
 * The pan's line, in at most `points` points; or, in a sentence, why there is none. Along: hours since midnight of the
 * day of the start; hours before the finish (0 is the finish); litres of water gone from this pan; °Bx, each strength as
 * it was last come through. Upwards: °C, °C over the water point, °Bx, L/h. `started` is ISO 8601 with an offset.
 */
export function lineOf(
  course: BoilCourse,
  pan: PanCourse,
  started: string,
  align: Alignment,
  what: Compared,
  points: number,
): Line | { why: string } {
  const along = alongOf(course, pan, started, align);
  if ('why' in along) return along;
  if (what === 'evaporation' && !hasBoiled(pan, LEAST_BOILING_S)) return { why: WATER_UNTOLD };
  const up = upwards(pan, what);
  const all: Line = { t: [], x: [], y: [] };
  for (const [minute, x] of along.x.entries()) {
    if (x === null) continue;
    all.t.push(minute * COURSE_EVERY_MS);
    all.x.push(x);
    all.y.push(up(minute));
  }
  return all.y.every((one) => one === null) ? { why: untold(pan, what) } : thinned(all, points);
}

/** Why there is nothing to be drawn upwards. */
function untold(pan: PanCourse, what: Compared): string {
  if (!wasSeen(pan)) return 'Nothing was seen of this pan.';
  return what === 'rise' ? 'The water point of this pan is not known.' : 'The strength of this pan is not known.';
}

const WATER_UNTOLD = 'How much water left this pan is not known.';

function alongOf(
  course: BoilCourse,
  pan: PanCourse,
  started: string,
  align: Alignment,
): { x: (number | null)[] } | { why: string } {
  const hours = (zeroMs: number): (number | null)[] =>
    pan.celsius.map((_, minute) => (minute * COURSE_EVERY_MS - zeroMs) / HOUR_MS);
  if (align === 'clock') return { x: hours(-clockMs(started)) };
  if (align === 'before-finish') {
    const finish = finishOf(course, pan.id);
    return finish === null ? { why: 'This pan was not finished.' } : { x: hours(finish) };
  }
  if (align === 'evaporated') {
    const gone = evaporated(pan);
    return gone === null ? { why: WATER_UNTOLD } : { x: gone };
  }
  const last = new Set(lastComeThrough(pan));
  return last.size === 0
    ? { why: 'The strength of this pan is not known.' }
    : { x: pan.brix.map((brix, minute) => (last.has(minute) ? brix : null)) };
}

/** Time of day at the boil's own place, ms since midnight. */
function clockMs(started: string): number {
  const [hour = 0, minute = 0, second = 0] = started.slice(11, 19).split(':').map(Number);
  return ((hour * 60 + minute) * 60 + second) * 1000;
}

function upwards({ celsius, water, brix, evaporation }: PanCourse, what: Compared): (minute: number) => number | null {
  if (what === 'temperature') return (minute) => celsius[minute] ?? null;
  if (what === 'strength') return (minute) => brix[minute] ?? null;
  if (what === 'evaporation') return (minute) => evaporation[minute] ?? null;
  return (minute) => {
    const [now, point] = [celsius[minute] ?? null, water[minute] ?? null];
    return now === null || point === null ? null : now - point;
  };
}

/** Whether the pan boiled for so long, s. */
export const hasBoiled = ({ evaporation }: PanCourse, seconds: number): boolean =>
  evaporation.filter((perHour) => (perHour ?? 0) > 0).length * COURSE_EVERY_MS >= 1000 * seconds;

/** Litres gone by each minute; null where nothing is known of it. A minute of which nothing is known counts as none. */
function evaporated(pan: PanCourse): number[] | null {
  const { evaporation } = pan;
  if (!hasBoiled(pan, LEAST_BOILING_S)) return null;
  let gone = 0;
  return evaporation.map((perHour) => (gone += ((perHour ?? 0) * COURSE_EVERY_MS) / HOUR_MS));
}

/** The minutes, in order, after which the pan was never again so weak, up to where it was strongest last. */
export function lastComeThrough({ brix }: PanCourse): number[] {
  const peak = brix.reduce<number>(
    (best, one, minute) => (one !== null && one >= (brix[best] ?? 0) ? minute : best),
    0,
  );
  const minutes: number[] = [];
  let least = Number.POSITIVE_INFINITY;
  for (let minute = peak; minute >= 0; minute -= 1) {
    const one = brix[minute] ?? null;
    if (one === null || one <= 0 || one >= least) continue;
    least = one;
    minutes.push(minute);
  }
  return minutes.reverse();
}

function thinned({ t, x, y }: Line, points: number): Line {
  const step = Math.ceil(t.length / points);
  const isKept = (_: unknown, index: number): boolean => index % step === 0 || index === t.length - 1;
  const most = step === 1 ? t.length : points;
  const keep = <One>(all: One[]): One[] => {
    const kept = all.filter(isKept);
    return kept.length > most ? [...kept.slice(0, most - 1), kept.at(-1)!] : kept;
  };
  return { t: keep(t), x: keep(x), y: keep(y) };
}
