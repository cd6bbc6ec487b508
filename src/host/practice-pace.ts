// How fast a practice boil goes: as fast as was chosen, and slower while something is called that a learner is to answer.
import type { ListedAlarm } from '../core/alarms/alarm.ts';
import type { AlarmName } from '../core/boil/entries.ts';

/** Slow enough to read a call and to note what it asks for, quick enough to wait through one, boil seconds a second (judgement). */
export const CALLED_SPEED = 10;

/** What these ask to be done is still to be done once they were seen. */
const ASKS_A_DEED: ReadonlySet<AlarmName> = new Set(['finish', 'past-finish', 'scorch-risk', 'low-level']);

/** Boil seconds a second while these calls are listed, where `chosen` was asked for. A call of low priority slows nothing. */
export const practicePace = (chosen: number, calls: readonly ListedAlarm[]): number =>
  calls.some(isWaitedFor) ? Math.min(chosen, CALLED_SPEED) : chosen;

function isWaitedFor({ alarm, pan, condition, priority, answered, asideUntil }: ListedAlarm): boolean {
  // What is called of the program itself, as that it has no sound, is no part of what is practised.
  if (pan === null || condition !== 'active' || priority === 'low' || asideUntil !== null) return false;
  return !answered || ASKS_A_DEED.has(alarm);
}
