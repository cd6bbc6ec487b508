// Gathers the raisings of alarms, as they are made, into calls with their beginning and end.
import type { AlarmTransition } from '../alarms/alarm.ts';
import type { AlarmName, Called, Priority } from '../boil/entries.ts';
import { isProgramAlarm } from '../boil/program-alarms.ts';

/** One raising of an alarm, ms of boil time; `ended` is null while it stands, or as far as the boil is read. */
export interface Call {
  pan: string | null;
  port: string | null;
  alarm: AlarmName;
  /** The highest that it reached. */
  priority: Priority;
  raised: number;
  ended: number | null;
  /** The numbers behind it when it was raised. */
  why: string;
}

type Change = Omit<AlarmTransition, 'about'> & { about?: string | undefined };

export class Calls {
  readonly all: Call[] = [];
  /** The call that stands, by the alarm's whole name. */
  readonly #standing = new Map<string, Call>();

  /** Takes one transition, in order of t. */
  take(change: Change): void {
    const key = JSON.stringify([change.alarm, change.pan, change.port ?? null, change.about ?? null]);
    if (change.event === 'raised') this.#begin(key, change);
    const standing = this.#standing.get(key);
    if (standing === undefined) return;
    if (change.event === 'escalated') standing.priority = change.priority;
    if (change.event !== 'cleared') return;
    standing.ended = change.t;
    this.#standing.delete(key);
  }

  /** What was called at the time, t ms: only what the program called of itself is not made anew by the fold. */
  takeCalled(t: number, called: Called): void {
    if (isProgramAlarm(called.alarm)) this.take({ ...called, t });
  }

  #begin(key: string, { alarm, pan, port, priority, t, why }: Change): void {
    const call = { pan, port: port ?? null, alarm, priority, raised: t, ended: null, why };
    this.#standing.set(key, call);
    this.all.push(call);
  }
}
