// When a boil that runs is looked at though nothing came: four times a second, at the moment something falls due, and after a sleep.
import type { BoilClock, MachineClock } from './clock.ts';

const TICK_MS = 250;
/** When nothing ran for so long, the program was stopped or the machine slept, and what came meanwhile is lost. */
const SHORTEST_GAP_MS = 10_000;

export interface BoilWakesOptions {
  clock: BoilClock;
  machine: MachineClock;
  /** A practice boil: its time is simulated, so nothing falls due by the clock, and a sleep only makes it wait. */
  isSimulated: boolean;
  /** Four times a second until it is stopped. */
  tick(): void;
  /** What was to fall due by boil time t, ms, is due. */
  due(t: number): void;
}

/** The timers of one boil: started once, stopped for good. */
export class BoilWakes {
  readonly #options: BoilWakesOptions;
  #seenMs: number;
  #cancelTick: (() => void) | null = null;
  /** The boil time that is waited for, ms; null when none is. */
  #dueT: number | null = null;
  #cancelDue: (() => void) | null = null;
  #isStopped = false;

  constructor(options: BoilWakesOptions) {
    this.#options = options;
    this.#seenMs = options.machine.monotonicMs();
  }

  start(): void {
    if (this.#isStopped) return;
    this.#cancelTick = this.#options.machine.after(TICK_MS, () => {
      this.#options.tick();
      this.start();
    });
  }

  /** What falls due at boil time dueT, ms, is called at its moment, whether or not anything comes then. */
  wakeAt(dueT: number): void {
    if (this.#options.isSimulated || this.#isStopped) return;
    if (this.#dueT !== null && this.#dueT <= dueT) return;
    this.#cancelDue?.();
    this.#dueT = dueT;
    // The millisecond after: until then a line may still come that is no later than what is due.
    const waitMs = Math.max(0, dueT + 1 - this.#options.clock.now());
    this.#cancelDue = this.#options.machine.after(waitMs, () => {
      this.#dueT = null;
      if (!this.#isStopped) this.#options.due(this.#options.clock.now() - 1);
    });
  }

  /** How long nothing ran since this was asked last, ms; null where it was too short for a sleep, or time is simulated. */
  sleptMs(): number | null {
    const nowMs = this.#options.machine.monotonicMs();
    const awayMs = nowMs - this.#seenMs;
    this.#seenMs = nowMs;
    return awayMs < SHORTEST_GAP_MS || this.#options.isSimulated ? null : awayMs;
  }

  stop(): void {
    this.#isStopped = true;
    this.#cancelTick?.();
    this.#cancelDue?.();
  }
}
