// The alarms of the program itself (it cannot write the boil down), kept beside those of the boil.
import type { AlarmTransition } from '../core/alarms/alarm.ts';
import { ALARM_WORDS } from '../core/alarms/words.ts';
import type { AlarmName, Answer } from '../core/boil/entries.ts';
import type { AlarmView } from '../protocol/messages.ts';

/** Every change is handed to `changed`, which prints and keeps it; times are ms of boil time. */
export class ProgramAlarms {
  #listed: AlarmView[] = [];
  readonly #changed: (transition: AlarmTransition) => void;

  constructor(changed: (transition: AlarmTransition) => void) {
    this.#changed = changed;
  }

  get listed(): readonly AlarmView[] {
    return this.#listed;
  }

  raise(alarm: AlarmName, t: number, why: string): void {
    if (this.#find(alarm)?.condition === 'active') return;
    this.#listed = this.#listed.filter((listed) => listed.alarm !== alarm);
    this.#listed.push({
      ...ALARM_WORDS[alarm],
      alarm,
      pan: null,
      port: null,
      priority: 'medium',
      condition: 'active',
      answered: false,
      since: t,
      asideUntil: null,
      asideReason: null,
      why,
    });
    this.#changed({ t, pan: null, alarm, event: 'raised', priority: 'medium', why });
  }

  clear(alarm: AlarmName, t: number, why: string): void {
    const listed = this.#find(alarm);
    if (listed?.condition !== 'active') return;
    listed.condition = 'over';
    if (listed.answered) this.#drop(listed);
    this.#changed({ t, pan: null, alarm, event: 'cleared', priority: listed.priority, why });
  }

  /** True when the answer was for one of these alarms; it is then dealt with. */
  answer(answer: Answer, t: number): boolean {
    if (!('acknowledge' in answer) || answer.acknowledge.pan !== null) return false;
    const listed = this.#listed.find(({ alarm }) => alarm === answer.acknowledge.alarm);
    if (listed === undefined) return false;
    const first = !listed.answered;
    listed.answered = true;
    if (listed.condition === 'over') this.#drop(listed);
    const { alarm, priority, why } = listed;
    if (first) this.#changed({ t, pan: null, alarm, event: 'acknowledged', priority, why });
    return true;
  }

  #find(alarm: AlarmName): AlarmView | undefined {
    return this.#listed.find((listed) => listed.alarm === alarm);
  }

  #drop(gone: AlarmView): void {
    this.#listed = this.#listed.filter((listed) => listed !== gone);
  }
}
