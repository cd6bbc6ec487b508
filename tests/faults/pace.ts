// Time for boils over pretend boards: a machine clock that a test moves by hand, or lets run along with real time.
import { HandClock } from '../host/hand-clock.ts';

const STEP_MS = 10;

export class Pace {
  readonly clock = new HandClock();
  #timer: NodeJS.Timeout | null = null;

  /** From now on it goes as fast as real time. */
  runOn(): void {
    let beforeMs = performance.now();
    this.#timer ??= setInterval(() => {
      const nowMs = performance.now();
      this.clock.run(nowMs - beforeMs);
      beforeMs = nowMs;
    }, STEP_MS);
  }

  /** From now on it stands until it is moved by hand. */
  stand(): void {
    if (this.#timer !== null) clearInterval(this.#timer);
    this.#timer = null;
  }
}
