// How fast a practice boil goes: as fast as was chosen, and slower while something is called that a learner is to answer.
import type { ListedAlarm } from '../core/alarms/alarm.ts';
import { MINUTE_MS } from '../core/quantities/time.ts';

/** Slow enough to read a call and to note what it asks for, boil seconds a second; of a high one more hangs on it (judgement). */
export const CALLED_SPEED = { medium: 10, high: 3 };

/** Whoever has not answered by then only watches, ms of boil time: half a minute of theirs, more where it is high (judgement). */
export const WAITS_MS = 5 * MINUTE_MS;

/**
 * Boil seconds a second at t (ms) while these calls are listed, where `chosen` was asked for. What a high call, or one
 * that a pan runs low, asks for is still to be done once it was seen; a call of low priority slows nothing.
 */
export function practicePace(chosen: number, calls: readonly ListedAlarm[], t: number): number {
  const waiting = calls.filter((call) => isWaitedFor(call, t));
  if (waiting.length === 0) return chosen;
  return Math.min(chosen, CALLED_SPEED[waiting.some(({ priority }) => priority === 'high') ? 'high' : 'medium']);
}

function isWaitedFor(
  { alarm, pan, condition, priority, answered, asideUntil, since }: ListedAlarm,
  t: number,
): boolean {
  // What is called of the program itself, as that it has no sound, is no part of what is practised.
  if (pan === null || condition !== 'active' || priority === 'low' || asideUntil !== null) return false;
  if (t - since >= WAITS_MS) return false;
  return !answered || priority === 'high' || alarm === 'low-level';
}
