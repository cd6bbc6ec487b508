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
