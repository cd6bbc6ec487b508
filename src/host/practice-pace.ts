// How fast a practice boil goes: as fast as was chosen, and slower while something is called that a learner is to answer.
import type { ListedAlarm } from '../core/alarms/alarm.ts';
import { listAlarms } from '../core/alarms/engine.ts';
import type { BoilState } from '../core/boil/state.ts';
import { MINUTE_MS } from '../core/quantities/time.ts';
import type { BoilClock } from './clock.ts';

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

/** How fast somebody wants a boil to go, and how fast its clock goes; boil seconds a second. */
export class Pace {
  chosen: number;
  readonly #clock: BoilClock;
  readonly #slowsForCalls: boolean;

  constructor(clock: BoilClock, slowsForCalls: boolean) {
    this.#clock = clock;
    this.#slowsForCalls = slowsForCalls;
    this.chosen = clock.speed;
  }

  /** Both, for the screen; the chosen one only where it is another. */
  get told(): { speed: number; chosenSpeed?: number } {
    const { speed } = this.#clock;
    return speed === this.chosen ? { speed } : { speed, chosenSpeed: this.chosen };
  }

  /**
   * Sets the clock's speed by what is called at t, ms of boil time. Gives for how many seconds of boil time what is quiet
   * has to be quiet from now on, so that it is so for as long as whoever hears it asked; null where it stays as it is.
   */
  keep(book: BoilState['book'], t: number, isSimulated: boolean): number | null {
    const before = this.#clock.speed;
    const speed = this.#slowsForCalls ? practicePace(this.chosen, listAlarms(book), t) : this.chosen;
    if (speed === before) return null;
    // What is due by the clock and was not simulated yet, as behind a busy moment, goes by at the new pace.
    if (isSimulated) this.#clock.goTo(Math.min(this.#clock.now(), t));
    this.#clock.setSpeed(speed);
    const leftMs = (book.silencedUntil ?? t) - t;
    return leftMs > 0 ? Math.round((leftMs * speed) / before / 1000) : null;
  }
}
