// When something was done that is noted now: so many minutes ago, at a time of day, or when a pour was seen.
import { DAY_MS, MINUTE_MS } from '../../core/quantities/time.ts';
import type { Mark, Now } from '../client/types.ts';
import { say } from '../language/say.ts';
import { hoursAndMinutes, timeOfDay, wallMs } from '../words/clock.ts';

/**
 * `ago` in min; `typed` is a time of day: "14:05", "9.30", "9h30", "1405", "9:30 am" or "2 pm", of the day so many `days` ago, or when it
 * last was; `then` is when the pour was seen, or the note that is corrected happened.
 */
export type When = { ago: number } | { typed: string; days?: number | undefined } | 'then';

/** What a person typed as a time of day, ms since midnight; null where it is none. */
export function sinceMidnightMs(typed: string): number | null {
  const tidy = typed.replaceAll(/\s/gu, '').toLowerCase();
  const [, hours = '24', minutes = '60'] = /^(\d{1,2})[:.h]?(\d{2})$/u.exec(tidy) ?? [];
  const [, hour = '24', past = '0', half = ''] = /^(\d{1,2})(?:[:.]?(\d{2}))?([ap])\.?m\.?$/u.exec(tidy) ?? [];
  const [h, min] = half === '' ? [Number(hours), Number(minutes)] : [of24(Number(hour), half), Number(past)];
  return h > 23 || min > 59 ? null : (h * 60 + min) * MINUTE_MS;
}

/** An hour from 1 to 12 am or pm; 24 where there is none such. */
const of24 = (hour: number, half: string): number =>
  hour < 1 || hour > 12 ? 24 : (hour % 12) + (half === 'p' ? 12 : 0);

/** Midnights between two moments from wallMs. */
const daysBetween = (one: number, other: number): number => Math.floor(other / DAY_MS) - Math.floor(one / DAY_MS);

/** How many days ago a time of day last was; 0 for what is none. */
function daysSinceLast(now: Now, typed: string): number {
  const wall = wallMs(now, now.t);
  return Math.floor(wall / DAY_MS) * DAY_MS + (sinceMidnightMs(typed) ?? 0) > wall ? 1 : 0;
}

/**
 * The days of which a time of day may be, as days ago, the latest first: in a boil of a day and more each time of day was more
 * than once. Empty where none was.
 */
export function daysToChoose(now: Now): number[] {
  if (now.t < DAY_MS) return [];
  return Array.from({ length: daysBetween(wallMs(now, 0), wallMs(now, now.t)) + 1 }, (_, days) => days);
}

/** The day that a time of day is taken for, as days ago. */
export const dayOf = (when: When, now: Now): number =>
  when !== 'then' && 'typed' in when ? (when.days ?? daysSinceLast(now, when.typed)) : 0;

/** A time of day of that day, ms of boil time; null where it is none, still to come, or before the boil began. */
function typedAt(now: Now, typed: string, days: number): number | null {
  const sinceMidnight = sinceMidnightMs(typed);
  if (sinceMidnight === null) return null;
  const wall = wallMs(now, now.t);
  const begins = now.t - (wall - ((Math.floor(wall / DAY_MS) - days) * DAY_MS + sinceMidnight));
  if (begins > now.t) return null;
  // Who types a minute means some moment in it, and the minute in which the boil began is of it.
  return begins <= -MINUTE_MS ? null : Math.max(0, Math.min(now.t, begins + MINUTE_MS / 2));
}

/** A time of day that has just passed, as an example. */
export const justPassed = (now: Now): string => hoursAndMinutes(wallMs(now, Math.max(0, now.t - MINUTE_MS)));

/** When the fire was lit, where that was before the program watched, as somebody would type it; null where it was not. */
export function litAt(now: Now): { typed: string; days: number } | null {
  if (now.watchedFrom === undefined) return null;
  const lit = wallMs(now, 0);
  return { typed: hoursAndMinutes(lit), days: daysBetween(lit, wallMs(now, now.t)) };
}

/** What is wrong with a time of day of which `momentOf` made nothing. */
export const whyNoMoment = (when: When, now: Now): string =>
  when !== 'then' && 'typed' in when && sinceMidnightMs(when.typed) !== null
    ? say('marks.problem.before', { began: timeOfDay(now, 0), typed: when.typed.trim() })
    : say('marks.problem.time', { example: justPassed(now) });

/** The moment, ms of boil time; undefined for now, null for a time of day that is none, to come or before the boil. */
export function momentOf(when: When, now: Now, then: { at: number } | undefined): number | null | undefined {
  if (when === 'then') return then?.at;
  if ('typed' in when) return typedAt(now, when.typed, dayOf(when, now));
  return when.ago > 0 ? now.t - when.ago * MINUTE_MS : undefined;
}

/** The mark with the moment at which it happened. */
export const happenedAt = (mark: Mark, at: number | undefined): Mark =>
  at === undefined ? mark : { ...mark, happened: at };
