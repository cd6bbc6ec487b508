// Hands entries that are known beforehand on when boil time reaches them: what replay and practice have in common.
import type { Entry } from '../core/boil/entries.ts';
import type { Source, SourceListener, Timekeeper } from './source.ts';

export interface Feed {
  /** The next entry at or before t (ms), each once and in order of t; null when there is none yet. */
  next(t: number): Entry | null;
  /** True when no entry will ever come again. */
  ended(): boolean;
}

/** Ten times a second of real time is as smooth as a screen needs. */
const everyMs = 100;
/** At high speed many are due at once: after so many the process does something else first. */
const mostAtOnce = 2000;

export class PacedSource implements Source {
  #feed: Feed;
  #timekeeper: Timekeeper;
  #listener: SourceListener | null = null;
  #callOff: () => void = () => undefined;
  #lastT = 0;

  constructor(feed: Feed, timekeeper: Timekeeper) {
    this.#feed = feed;
    this.#timekeeper = timekeeper;
  }

  start(listener: SourceListener): void {
    this.#listener = listener;
    this.#waitFor(0);
  }

  async stop(): Promise<void> {
    this.#listener = null;
    this.#callOff();
  }

  /** Hands on all that is due at or before t, so that what happens at t comes after it. */
  catchUp(t: number): void {
    while (this.#handOn(() => t) === mostAtOnce);
  }

  #waitFor(milliseconds: number): void {
    this.#callOff = this.#timekeeper.after(milliseconds, () => this.#turn());
  }

  #turn(): void {
    const begun = this.#timekeeper.now();
    // Whoever hears something may set the clock back to it: what was due beyond that waits.
    const until = (): number => Math.min(begun, this.#timekeeper.now());
    const isAll = this.#handOn(until) < mostAtOnce;
    if (this.#listener === null) return;
    if (isAll && this.#feed.ended()) {
      this.#listener.item({ kind: 'end', t: this.#lastT });
      this.#listener = null;
      return;
    }
    if (isAll) this.#idle(until());
    this.#waitFor(isAll ? everyMs : 0);
  }

  #handOn(until: () => number): number {
    for (let count = 0; count < mostAtOnce; count++) {
      const entry = this.#listener === null ? null : this.#feed.next(until());
      if (entry === null) return count;
      this.#lastT = entry.t;
      this.#listener?.item({ kind: 'entry', entry });
    }
    return mostAtOnce;
  }

  #idle(t: number): void {
    if (t <= this.#lastT) return;
    this.#lastT = t;
    this.#listener?.item({ kind: 'idle', t });
  }
}
