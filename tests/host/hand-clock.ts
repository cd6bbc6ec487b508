// A machine clock that a test moves by hand: time is an input, nothing sleeps.
import type { MachineClock } from '../../src/host/clock.ts';

export class HandClock implements MachineClock {
  wall = Date.parse('2027-04-18T14:30:00Z');
  #monotonic = 1000;
  #timers: { at: number; call: () => void }[] = [];

  wallMs(): number {
    return this.wall;
  }

  monotonicMs(): number {
    return this.#monotonic;
  }

  after(milliseconds: number, call: () => void): () => void {
    const timer = { at: this.#monotonic + milliseconds, call };
    this.#timers.push(timer);
    return () => (this.#timers = this.#timers.filter((other) => other !== timer));
  }

  /** Lets time run, with every timer called at its moment. */
  run(milliseconds: number): void {
    const until = this.#monotonic + milliseconds;
    for (;;) {
      const due = this.#timers.filter(({ at }) => at <= until).sort((a, b) => a.at - b.at)[0];
      if (due === undefined) break;
      this.#timers = this.#timers.filter((other) => other !== due);
      this.#goTo(Math.max(due.at, this.#monotonic));
      due.call();
    }
    this.#goTo(until);
  }

  /** The machine sleeps: time goes on, no timer is called. */
  sleep(milliseconds: number): void {
    this.#goTo(this.#monotonic + milliseconds);
  }

  #goTo(monotonic: number): void {
    this.wall += monotonic - this.#monotonic;
    this.#monotonic = monotonic;
  }
}
