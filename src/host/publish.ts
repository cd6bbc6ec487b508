// Decides when listeners get a new snapshot: at most four a second, at once when an alarm changed, and one a second as a sign of life.
import type { MachineClock } from './clock.ts';

const SHORTEST_MS = 250;
const LONGEST_MS = 1000;

export class Publisher {
  readonly #machine: MachineClock;
  readonly #send: () => void;
  #sentMs = Number.NEGATIVE_INFINITY;
  #dueMs = Number.POSITIVE_INFINITY;
  #cancelTimer: (() => void) | null = null;
  #stopped = false;

  /** `send` makes a snapshot and hands it to whoever listens. */
  constructor(machine: MachineClock, send: () => void) {
    this.#machine = machine;
    this.#send = send;
    this.#sendAt(machine.monotonicMs() + LONGEST_MS);
  }

  /** Something changed; listeners hear of it within a quarter of a second. */
  changed(): void {
    this.#sendAt(Math.max(this.#machine.monotonicMs(), this.#sentMs + SHORTEST_MS));
  }

  /** Something changed that cannot wait. */
  urgent(): void {
    this.#sendNow();
  }

  stop(): void {
    this.#stopped = true;
    this.#cancelTimer?.();
  }

  #sendAt(dueMs: number): void {
    if (this.#stopped || dueMs >= this.#dueMs) return;
    this.#cancelTimer?.();
    this.#dueMs = dueMs;
    const waitMs = Math.max(0, dueMs - this.#machine.monotonicMs());
    this.#cancelTimer = this.#machine.after(waitMs, () => this.#sendNow());
  }

  #sendNow(): void {
    if (this.#stopped) return;
    this.#cancelTimer?.();
    this.#dueMs = Number.POSITIVE_INFINITY;
    this.#sentMs = this.#machine.monotonicMs();
    this.#send();
    this.#sendAt(this.#sentMs + LONGEST_MS);
  }
}
