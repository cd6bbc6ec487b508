// The shape of an alarm: the condition now and a person's answer to it, kept apart.
import type { AlarmEventName, AlarmName, Priority } from '../boil/entries.ts';

export type Condition = 'ok' | 'pending' | 'active' | 'clearing';

/** An alarm that is listed: active, or over and not yet seen. Times are ms of boil time. */
export interface ListedAlarm {
  alarm: AlarmName;
  pan: string | null;
  port: string | null;
  priority: Priority;
  condition: 'active' | 'over';
  answered: boolean;
  /** The phone on which it was; absent for the screen by the pans. */
  answeredBy?: string;
  /** It began to ask while all sound was off, as it still is. */
  inQuiet?: true;
  since: number;
  /** When what it was called ahead of came; absent while it has not, and where it was there at once. */
  cameAt?: number;
  asideUntil: number | null;
  asideReason: string | null;
  /** The numbers behind it. */
  why: string;
}

/** One change of an alarm, as the `alarm` line of recording.md prints it. */
export interface AlarmTransition {
  t: number;
  pan: string | null;
  port?: string | undefined;
  /** Tells reminders apart; it is neither printed nor kept. */
  about?: string | undefined;
  alarm: AlarmName;
  event: AlarmEventName;
  priority: Priority;
  why: string;
}

/** The one of them, in their order, that is said first: what burns goes before what is past its finish, though both are for now. */
export const foremost = <One extends Pick<ListedAlarm, 'alarm' | 'priority'>>(
  standing: readonly One[],
): One | undefined =>
  standing.find(({ alarm, priority }) => alarm === 'scorch-risk' && priority === 'high') ?? standing[0];

type Placed = Pick<ListedAlarm, 'alarm' | 'pan' | 'priority' | 'condition' | 'answered' | 'asideUntil'>;

/** Whether it calls its pan for its finish, reached or soon, and stands. */
export const isOfFinish = ({ alarm, condition }: Pick<ListedAlarm, 'alarm' | 'condition'>): boolean =>
  condition === 'active' && (alarm === 'near-finish' || alarm === 'finish' || alarm === 'past-finish');

/**
 * The same in the same order, but what runs low stands behind what calls the same pan for its finish, where both are as
 * urgent and neither has been seen, or both: whoever goes there takes it off, and pours nothing in.
 */
export function lowBehindFinish<One extends Placed>(alarms: readonly One[]): One[] {
  const list = [...alarms];
  for (const low of alarms.filter(({ alarm, condition }) => alarm === 'low-level' && condition === 'active')) {
    const behind = list.findLastIndex((one) => isOfFinish(one) && isAsUrgent(one, low));
    const place = list.indexOf(low);
    if (behind > place) list.splice(behind, 0, ...list.splice(place, 1));
  }
  return list;
}

const isAsUrgent = (one: Placed, low: Placed): boolean =>
  one.pan === low.pan &&
  one.priority === low.priority &&
  one.answered === low.answered &&
  (one.asideUntil === null) === (low.asideUntil === null);
