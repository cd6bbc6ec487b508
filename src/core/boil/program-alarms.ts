// Alarms of the program itself: their host finds them, a `called` entry brings them into the boil, and the book keeps them like any other.
import { type AlarmBook, findAlarm, observe } from '../alarms/engine.ts';
import type { AlarmTransition } from '../alarms/alarm.ts';
import type { AlarmName, Called } from './entries.ts';

/** What no entry of a boil can tell: the host must. */
export const PROGRAM_ALARMS = ['not-recording', 'no-sound', 'power-low'] as const satisfies readonly AlarmName[];
export type ProgramAlarm = (typeof PROGRAM_ALARMS)[number];

/** Whether the host finds it, and no pan or port does. */
export const isProgramAlarm = (alarm: AlarmName): boolean => PROGRAM_ALARMS.some((one) => one === alarm);

/** The call that makes this alarm stand or be over; null when it is so already. `why` is the numbers behind it. */
export function programCall(book: AlarmBook, alarm: ProgramAlarm, isThere: boolean, why: string): Called | null {
  const stands = findAlarm(book, { alarm, pan: null })?.condition === 'active';
  if (stands === isThere) return null;
  return { pan: null, alarm, event: isThere ? 'raised' : 'cleared', priority: 'medium', why };
}

/**
 * What was called at t (ms), if it is one of these; calls of the boil's own alarms are worked out anew and change
 * nothing. Whoever made the call has told of it: the transitions given back are for the history alone.
 */
export function takeCall(book: AlarmBook, { alarm, event, priority, why }: Called, t: number): AlarmTransition[] {
  if (!isProgramAlarm(alarm) || (event !== 'raised' && event !== 'cleared')) return [];
  const over = event === 'raised';
  const finding = { over, inside: !over, priority, why: () => why };
  return observe(book, { alarm, pan: null }, { onDelayMs: 0, offDelayMs: 0 }, finding, t);
}
