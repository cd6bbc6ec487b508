// Writes a boil's entries down: lines once a second, what a person did or was told at once; loses nothing while writing fails.
import type { MachineClock } from './clock.ts';
import { done, refused } from './outcome.ts';
import type { Outcome } from './outcome.ts';

/** Lines wait at most this long, so that `kept` is never more than a second behind. */
const LINE_WAIT_MS = 800;
const RETRY_MS = 1000;
/** Texts in one transaction: after a long failure many wait, and watching must not wait for all of them. */
const TEXTS_A_WRITE = 1000;
/** What memory holds while writing fails, in characters: some 14 h of eight probes in eight ports. */
const MOST_HELD = 32_000_000;

export interface RecorderPorts {
  /** Keeps the texts in one transaction and returns the number of entries now kept; throws when it cannot. */
  append(texts: readonly string[]): number;
  /** Characters that memory may hold, where it is not the usual. */
  mostHeld?: number | undefined;
  after: MachineClock['after'];
  kept(entries: number): void;
  /** Writing has begun to fail (said once), and works again. */
  failing(why: string): void;
  working(): void;
  /** Memory holds all that it may (said once): lines that come now are not kept, until writing works again. */
  overflowing(): void;
}

export class Recorder {
  readonly #ports: RecorderPorts;
  #texts: string[] = [];
  #heldCharacters = 0;
  /** The t of the first line that was not kept, ms. */
  #droppedFrom: number | null = null;
  #waiting: ((outcome: Outcome) => void)[] = [];
  #cancelTimer: (() => void) | null = null;
  #failure: string | null = null;
  #closed = false;

  constructor(ports: RecorderPorts) {
    this.#ports = ports;
  }

  /** Why writing fails now, or null while it works. */
  get failure(): string | null {
    return this.#failure;
  }

  /**
   * Queues a text for the next transaction. `lineT` is the t of a port's line, ms: only lines are given up when memory
   * holds too much, and a gap stands for them.
   */
  add(text: string, lineT: number | null = null): void {
    if (lineT !== null && this.#heldCharacters > (this.#ports.mostHeld ?? MOST_HELD)) {
      if (this.#droppedFrom === null) this.#ports.overflowing();
      this.#droppedFrom ??= lineT;
      return;
    }
    if (lineT !== null && this.#droppedFrom !== null) {
      this.#hold(JSON.stringify({ t: lineT, run: 'gap', seconds: (lineT - this.#droppedFrom) / 1000 }));
      this.#droppedFrom = null;
    }
    this.#hold(text);
    this.#flushIn(LINE_WAIT_MS);
  }

  /** Writes all that is queued at once, or as soon as writing works again; resolves when it is on disk. */
  commit(): Promise<Outcome> {
    return new Promise((resolve) => {
      this.#waiting.push(resolve);
      if (this.#failure === null) this.#flush();
      else this.#flushIn(RETRY_MS);
    });
  }

  /** A last try to write everything; whoever still waits is told that it did not work. */
  close(): void {
    while (this.#texts.length > 0 && this.#write());
    this.#closed = true;
    this.#cancelTimer?.();
    this.#settle(refused(`It could not be written down: ${this.#failure ?? 'the boil was closed'}.`));
  }

  #flushIn(milliseconds: number): void {
    if (this.#cancelTimer !== null || this.#closed) return;
    this.#cancelTimer = this.#ports.after(this.#failure === null ? milliseconds : RETRY_MS, () => this.#flush());
  }

  #hold(text: string): void {
    this.#texts.push(text);
    this.#heldCharacters += text.length;
  }

  #flush(): void {
    this.#cancelTimer?.();
    this.#cancelTimer = null;
    if (this.#texts.length > 0 && !this.#write()) return;
    if (this.#texts.length > 0) this.#flushIn(0);
    else this.#settle(done);
  }

  /** Writes the first of what waits; false when it failed, and then all of it still stands in the queue. */
  #write(): boolean {
    const texts = this.#texts.slice(0, TEXTS_A_WRITE);
    let entries: number;
    try {
      entries = this.#ports.append(texts);
    } catch (error) {
      this.#fail(error instanceof Error ? error.message : String(error));
      return false;
    }
    this.#texts = this.#texts.slice(texts.length);
    for (const { length } of texts) this.#heldCharacters -= length;
    this.#ports.kept(entries);
    if (this.#failure !== null) {
      this.#failure = null;
      this.#ports.working();
    }
    return true;
  }

  #fail(why: string): void {
    const first = this.#failure === null;
    this.#failure = why;
    this.#flushIn(RETRY_MS);
    if (first) this.#ports.failing(why);
  }

  #settle(outcome: Outcome): void {
    const waiting = this.#waiting;
    this.#waiting = [];
    for (const resolve of waiting) resolve(outcome);
  }
}
