// The history of a boil's alarms: each raising with its answer, its end and a person's word on it, kept short enough for any boil.
import type { AlarmTransition } from '../alarms/alarm.ts';
import { doneAbout } from '../alarms/done-about.ts';
import { type AlarmBook, findAlarm } from '../alarms/engine.ts';
import type { AlarmName, Mark, Priority } from './entries.ts';
import { counts, empties, poursInto } from './mark-flow.ts';
import { lookBack, type LookBack } from './look-back.ts';
import { isByPractice } from './practice-marks.ts';

/** One raising of an alarm; times in ms of boil time. */
export interface Raising {
  alarm: AlarmName;
  pan: string | null;
  port: string | null;
  /** The highest that it reached. */
  priority: Priority;
  /** The numbers behind it when it was raised. */
  why: string;
  raisedAt: number;
  /** First acknowledged; null when nobody did. */
  answeredAt: number | null;
  /** null while it stands. */
  clearedAt: number | null;
  asides: { at: number; until: number; reason: string }[];
  /** Nobody heard it: all sound was off when it was raised. */
  inQuiet?: true;
}

/** A raising as it is shown: with the person's own word that it was of no use. */
export interface RaisingShown extends Raising {
  noUse: boolean;
  /** When somebody noted, while it stood, that they had done what it asks for; left out where nobody did. */
  doneAt?: number;
}

export interface AlarmHistory {
  /** In order of raising, the last 200. */
  raisings: RaisingShown[];
  /** Raised before those, and only counted. */
  earlier: number;
  lookBack: LookBack;
}

interface KeptRaising extends Raising {
  about: string | null;
}

/** Plain data of the boil's state. */
export interface HistoryKept {
  raisings: KeptRaising[];
  earlier: number;
}

/** So many raisings are kept: a day with more than one in four minutes is beyond a look at each. */
export const MOST_RAISINGS = 200;

/** Nothing was raised yet. */
export function startHistory(): HistoryKept {
  return { raisings: [], earlier: 0 };
}

/** Takes in what the alarms did, in order; the book is the one that they were made by, as it stands behind them. */
export function rememberTransitions(
  history: HistoryKept,
  book: AlarmBook,
  transitions: readonly AlarmTransition[],
): void {
  for (const transition of transitions) {
    if (transition.event === 'raised') begin(history, book, transition);
    else goOn(history, book, transition);
  }
}

function begin(history: HistoryKept, { silencedUntil }: AlarmBook, transition: AlarmTransition): void {
  const { alarm, pan, port, about, priority, why, t } = transition;
  history.raisings.push({
    ...{ alarm, pan, port: port ?? null, about: about ?? null, priority, why, raisedAt: t },
    ...{ answeredAt: null, clearedAt: null, asides: [] },
    ...(silencedUntil !== null && t < silencedUntil && { inQuiet: true as const }),
  });
  if (history.raisings.length <= MOST_RAISINGS) return;
  history.raisings.shift();
  history.earlier += 1;
}

function goOn(history: HistoryKept, book: AlarmBook, transition: AlarmTransition): void {
  const { t, event, priority } = transition;
  const raising = history.raisings.findLast((one) => isOf(one, transition));
  if (raising === undefined) return;
  if (event === 'escalated') raising.priority = priority;
  if (event === 'acknowledged') raising.answeredAt ??= t;
  if (event === 'cleared') raising.clearedAt = t;
  if (event !== 'put-aside') return;
  const { asideUntil: until, asideReason: reason } = findAlarm(book, transition) ?? {};
  if (typeof until === 'number') raising.asides.push({ at: t, until, reason: reason ?? '' });
}

function isOf(one: KeptRaising, { alarm, pan, port, about }: AlarmTransition): boolean {
  return one.alarm === alarm && one.pan === pan && one.port === (port ?? null) && one.about === (about ?? null);
}

/** A mark as the history looks at it: `at` is when what it says was done, ms of boil time. */
interface Noted {
  at: number;
  mark: Mark;
  withdrawn: boolean;
  questioned: boolean;
}

/**
 * The history with what people said of it and did; marks that were taken back or are asked about do not count, nor does what a practice
 * boil did by itself, which its header tells.
 */
export function alarmHistory(history: HistoryKept, marks: readonly Noted[], header: object | null): AlarmHistory {
  const standing = marks.filter((noted) => counts(noted) && !isByPractice(noted.mark, header));
  const words = standing.flatMap(({ mark }) =>
    mark.kind === 'note' && mark.no_use === true && mark.about !== undefined ? [mark.about] : [],
  );
  const raisings = history.raisings.map(({ about: _, ...raising }) => {
    const doneAt = doneFor(raising, standing);
    return { ...raising, noUse: words.some((word) => isAbout(raising, word)), ...(doneAt !== null && { doneAt }) };
  });
  return { raisings, earlier: history.earlier, lookBack: lookBack(raisings) };
}

/** What a call of a pan asks to be done there; a call that asks for none of it can only be seen. */
const ASKS_FOR: Partial<Record<AlarmName, readonly Deed[]>> = {
  'near-finish': ['emptied', 'taken-out', 'heat-off', 'measured'],
  finish: ['emptied', 'taken-out', 'heat-off', 'measured'],
  'past-finish': ['emptied', 'taken-out', 'heat-off', 'poured-in'],
  // Less in it makes both worse.
  'scorch-risk': ['emptied', 'heat-off', 'poured-in'],
  'low-level': ['emptied', 'heat-off', 'poured-in'],
};

type Deed = 'poured-in' | 'emptied' | 'taken-out' | 'heat-off' | 'measured';

function deedOn(mark: Mark, pan: string): Deed | null {
  if (poursInto(mark, pan)) return 'poured-in';
  if (empties(mark, pan)) return 'emptied';
  if (mark.kind === 'transfer') return mark.from === pan ? 'taken-out' : null;
  if (!('pan' in mark) || mark.pan !== pan) return null;
  if (mark.kind === 'draw-off') return 'taken-out';
  if (mark.kind === 'density') return 'measured';
  return mark.kind === 'flame' && mark.level === 0 ? 'heat-off' : null;
}

/**
 * Takes what a person notes as done at `at` (ms) for their answer to the calls that ask for it: nobody needs to say that
 * they saw them, too. What is asked about may be of another pan, and answers nothing.
 */
export function answerByDeed(book: AlarmBook, { mark, at, questioned }: Noted, header: object | null): void {
  if (questioned || isByPractice(mark, header)) return;
  doneAbout(book, ({ alarm, pan }) => pan !== null && isAskedFor(alarm, mark, pan), at);
}

function isAskedFor(alarm: AlarmName, mark: Mark, pan: string): boolean {
  const deed = deedOn(mark, pan);
  return deed !== null && ASKS_FOR[alarm]?.includes(deed) === true;
}

/** When the first thing was done that it asks for, while it stood; null where nobody noted any. */
function doneFor({ alarm, pan, raisedAt, clearedAt }: Raising, marks: readonly Noted[]): number | null {
  if (pan === null) return null;
  const times = marks.flatMap(({ at, mark }) => {
    const stood = at >= raisedAt && at <= (clearedAt ?? Infinity);
    return stood && isAskedFor(alarm, mark, pan) ? [at] : [];
  });
  return times.length === 0 ? null : Math.min(...times);
}

/** A mark speaks of this raising. */
export function isAbout(
  raising: Raising,
  word: { alarm: string; pan: string | null; port?: string | undefined; raised: number },
): boolean {
  if (raising.alarm !== word.alarm || raising.pan !== word.pan || raising.raisedAt !== word.raised) return false;
  return word.port === undefined || raising.port === word.port;
}
