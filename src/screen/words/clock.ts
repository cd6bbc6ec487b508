// Times of day and lengths of time in words, all worked out from boil time.
import type { Now } from '../client/types.ts';
import { language, monthFirst } from '../language/language.ts';
import { say } from '../language/say.ts';
import { settings } from '../client/store.ts';
import { DAY_MS, lengthOfTime, MINUTE_MS, onTwelve } from '../../core/quantities/time.ts';

/** Minutes east of Greenwich that an ISO 8601 time carries; 0 when it carries none. */
export function offsetMinutes(iso: string): number {
  const found = /([+-])(\d{2}):?(\d{2})$/.exec(iso);
  if (found === null) return 0;
  const minutes = Number(found[2]) * 60 + Number(found[3]);
  return found[1] === '-' ? -minutes : minutes;
}

type Clock = Pick<Now, 'mode' | 't' | 'clock'> & { header: { started: string } | null; speed?: number };

/**
 * The wall clock is told to the second and drifts a little against boil time, ms: 15:30, when a fire was lit, must not
 * show as 15:29 now and as 15:30 later. Who sets a clock moves it further.
 */
const NOT_SET_MS = 5000;

/**
 * The moment of boil time `at` in ms since 1970, moved so that its UTC fields read as the boil's own time of day.
 * A live boil is read off the wall clock of now, because that clock may have been set since the boil was lit.
 */
export function wallMs(now: Clock, at: number): number {
  const zone = now.header?.started ?? now.clock;
  const started = now.header === null ? null : Date.parse(now.header.started);
  const byClock = Date.parse(now.clock) - now.t;
  const isSet = started === null || (now.mode === 'live' && Math.abs(byClock - started) > NOT_SET_MS);
  return (isSet ? byClock : started) + at + offsetMinutes(zone) * 60_000;
}

/** The machine's own clock in the same form, ms: what it shows whatever boil is looked at. */
export function machineWallMs({ clock }: Pick<Now, 'clock'>): number {
  return Date.parse(clock) + offsetMinutes(clock) * 60_000;
}

/** What a clock beside the pans shows, ms: boil time stands still once a boil is over; the time of day does not. */
export function clockMs(now: Clock & Pick<Now, 'view' | 'ended'>): number {
  return now.view === 'live' && now.ended ? machineWallMs(now) : wallMs(now, now.t);
}

/** A moment that is later by `byMs` than an ISO 8601 time, with its offset from Greenwich. */
function isoLater(iso: string, byMs: number): string {
  const zone = /([+-]\d{2}:?\d{2}|Z)$/.exec(iso)?.[0] ?? 'Z';
  const shown = new Date(Date.parse(iso) + byMs + offsetMinutes(iso) * 60_000).toISOString();
  return `${shown.slice(0, -1)}${zone}`;
}

/** A boil that is over, with its clock as it stood at its end: its pans stay as they were then, and grow no older. */
export function asAtItsEnd(now: Now): Now {
  const { view, ended, endedAt, t, clock } = now;
  if (view !== 'live' || !ended || endedAt === null) return now;
  // Both, for a time of day is told by what lies between them.
  return { ...now, t: endedAt, clock: isoLater(clock, endedAt - t) };
}

/** Whether a live boil is over whose pans still stand there: an age that grows no more would be read as one of now. */
export const standsAtItsEnd = ({ view, ended }: Pick<Now, 'view' | 'ended'>): boolean => view === 'live' && ended;

/** How old what is shown is, from seconds; while it is not, a clock that is not the person's is named. */
export function ageWords(now: Pick<Now, 'mode' | 'ended'>, seconds: number): string {
  const whole = Math.floor(seconds);
  if (whole >= 2) return say('shell.seconds_old', { seconds: whole });
  return say(now.mode === 'practice' && !now.ended ? 'shell.practice_time' : 'shell.now');
}

function two(value: number): string {
  return String(value).padStart(2, '0');
}

/** "16:40", or "4:40 pm" where that clock was chosen, of a moment from wallMs. */
export function hoursAndMinutes(ms: number): string {
  const date = new Date(ms);
  const [hours, minutes] = [date.getUTCHours(), two(date.getUTCMinutes())];
  if (settings.value.clock === '24') return `${two(hours)}:${minutes}`;
  const { hour, half } = onTwelve(hours);
  return say(HALVES[half], { time: `${hour}:${minutes}` });
}

const HALVES = { am: 'clock.am', pm: 'clock.pm' } as const;

/** "16:32–16:55" of two times of day; "4:32–4:55 pm" where both are of one half of the day. */
export function fromTo(from: string, to: string): string {
  const plain = /^\d{1,2}:\d\d/u.exec(from)?.[0];
  const isOneHalf = plain !== undefined && plain !== from && /^\d{1,2}:\d\d/u.test(to);
  const ending = isOneHalf ? from.slice(plain.length) : '';
  return `${isOneHalf && to.replace(/^\d{1,2}:\d\d/u, '') === ending ? plain : from}–${to}`;
}

/** What this page was told last is up to so much older than what was just noted, ms of the person's own time. */
const TOLD_LATE_MS = 2000;

/**
 * "16:40" of boil time `at`: what has been, or is just being noted, as a clock on the wall showed it, what is expected to the nearest minute;
 * "tomorrow 02:10" when it falls on another day; in a practice only where the time of day alone would not tell which.
 */
export function timeOfDay(now: Clock, at: number): string {
  const exact = wallMs(now, at);
  const then =
    at <= now.t + TOLD_LATE_MS * (now.mode === 'practice' ? (now.speed ?? 1) : 1)
      ? exact
      : Math.round(exact / MINUTE_MS) * MINUTE_MS;
  const today = wallMs(now, now.t);
  const days = Math.floor(then / DAY_MS) - Math.floor(today / DAY_MS);
  const time = hoursAndMinutes(then);
  // A practice at speed is past its own midnight in seconds, while it is the same evening for the person.
  const isSameRound = now.mode === 'practice' && Math.abs(at - now.t) < DAY_MS;
  if (days === 0 || isSameRound) return time;
  if (days === 1) return say('clock.tomorrow', { time });
  if (days === -1) return say('clock.yesterday', { time });
  return days > 0 ? say('clock.in_days', { time, days }) : say('clock.days_ago', { time, days: -days });
}

/** "just now", "5 min ago". */
export function ago(seconds: number): string {
  return seconds < 5 ? say('clock.just_now') : say('clock.ago', { length: lengthOfTime(seconds) });
}

interface Day {
  day: number;
  month: string;
  year: number;
  time: string;
}

/** By which a message sets out a day: as is usual where the page is read. */
const dayOrder = (): { order: string } => ({ order: monthFirst.value ? 'month_first' : 'day_first' });

/** The parts of an ISO 8601 time in that time's own zone; null for what is no time. */
function dayOf(iso: string): Day | null {
  const ms = Date.parse(iso);
  if (Number.isNaN(ms)) return null;
  const date = new Date(ms + offsetMinutes(iso) * 60_000);
  const month = new Intl.DateTimeFormat(language.value, { month: 'short', timeZone: 'UTC' }).format(date);
  return { day: date.getUTCDate(), month, year: date.getUTCFullYear(), time: hoursAndMinutes(date.getTime()) };
}

/** "18 Apr 2027, 07:30", or "Apr 18, 2027, 07:30", of an ISO 8601 time, in that time's own zone. */
export function dayAndTime(iso: string): string {
  const parts = dayOf(iso);
  return parts === null ? iso : say('clock.day_and_time', { ...parts, year: String(parts.year), ...dayOrder() });
}

/** "18 Apr", or "Apr 18", of an ISO 8601 day or time, in that time's own zone. */
export function shortDay(iso: string): string {
  const parts = dayOf(iso);
  return parts === null ? iso : say('clock.short_day', { day: parts.day, month: parts.month, ...dayOrder() });
}

/** "Sunday 18 April 2027", or "Sunday, April 18, 2027", of an ISO 8601 day, with its time of day where it has one; what is no day as it is. */
export function dayInWords(iso: string): string {
  const parts = dayOf(iso);
  if (parts === null) return iso;
  const date = new Date(Date.parse(iso) + offsetMinutes(iso) * MINUTE_MS);
  const part = (how: Intl.DateTimeFormatOptions): string =>
    new Intl.DateTimeFormat(language.value, { ...how, timeZone: 'UTC' }).format(date);
  const { day, time } = parts;
  const words = {
    weekday: part({ weekday: 'long' }),
    day,
    month: part({ month: 'long' }),
    year: String(parts.year),
    ...dayOrder(),
  };
  return iso.includes('T') ? say('clock.whole_day_time', { ...words, time }) : say('clock.whole_day', words);
}
