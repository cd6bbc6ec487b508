// One alarm to watch in tests: findings in short, a clock that only goes on, and what a person can see of the book.
import type { AlarmTransition, ListedAlarm } from '../../../src/core/alarms/alarm.ts';
import {
  type AlarmBook,
  answerAlarms,
  listAlarms,
  observe,
  soundNow,
  startAlarms,
  timePassed,
} from '../../../src/core/alarms/engine.ts';
import type { Finding } from '../../../src/core/alarms/rules.ts';
import type { AlarmName, Answer, Priority } from '../../../src/core/boil/entries.ts';

const ON_DELAY_MS = 3000;
const OFF_DELAY_MS = 10_000;

export const over = (priority: Priority): Finding => ({ over: true, inside: false, priority, why: () => 'why' });
export const inside: Finding = { over: false, inside: true, priority: 'low', why: () => '' };
export const between: Finding = { over: false, inside: false, priority: 'low', why: () => '' };

/** Looks at alarms of one pan once a second; what is found stays found until something else is. */
export class Watched {
  readonly book: AlarmBook = startAlarms();
  t = 0;
  told: AlarmTransition[] = [];
  readonly #found = new Map<AlarmName, Finding | null>();

  /** From now on this is found; null: it is not known. */
  find(finding: Finding | null, alarm: AlarmName = 'low-level'): this {
    this.#found.set(alarm, finding);
    return this.#look();
  }

  seconds(count: number): this {
    for (let i = 0; i < count; i++) {
      this.t += 1000;
      this.#look();
    }
    return this;
  }

  /** So many seconds later, with nothing looked at on the way. */
  later(seconds: number): this {
    this.t += seconds * 1000;
    return this.#look();
  }

  answer(answer: Answer): this {
    this.told.push(...answerAlarms(this.book, answer, this.t));
    return this;
  }

  acknowledge(alarm: AlarmName = 'low-level'): this {
    return this.answer({ acknowledge: { pan: 'p1', alarm } });
  }

  putAside(seconds: number, alarm: AlarmName = 'low-level'): this {
    return this.answer({ put_aside: { pan: 'p1', alarm, seconds, reason: 'sap is on its way' } });
  }

  get sound(): Priority | null {
    return soundNow(this.book, this.t);
  }

  get list(): ListedAlarm[] {
    return listAlarms(this.book);
  }

  #look(): this {
    this.told.push(...timePassed(this.book, this.t));
    for (const [alarm, finding] of this.#found) {
      const delays = { onDelayMs: ON_DELAY_MS, offDelayMs: OFF_DELAY_MS };
      this.told.push(...observe(this.book, { alarm, pan: 'p1' }, delays, finding, this.t));
    }
    return this;
  }
}
