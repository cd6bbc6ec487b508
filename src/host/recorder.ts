// Writes a boil's entries down: lines once a second, what a person did or was told at once; loses nothing while writing fails.
import type { MachineClock } from './clock.ts';
import { done, refused } from './outcome.ts';
import type { Outcome } from './outcome.ts';

/** Lines wait at most this long, so that `kept` is never more than a second behind. */
const LINE_WAIT_MS = 800;
const RETRY_MS = 1000;

export interface RecorderPorts {
  /** Keeps the texts in one transaction and returns the number of entries now kept; throws when it cannot. */
  append(texts: readonly string[]): number;
  after: MachineClock['after'];
  kept(entries: number): void;
  /** Writing has begun to fail (said once), and works again. */
  failing(why: string): void;
  working(): void;
}

export class Recorder {
  readonly #ports: RecorderPorts;
  #texts: string[] = [];
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

  /** Queues a text for the next transaction. */
  add(text: string): void {
    this.#texts.push(text);
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
    this.#flush();
    this.#closed = true;
    this.#cancelTimer?.();
    this.#settle(refused(`It could not be written down: ${this.#failure ?? 'the boil was closed'}.`));
  }

  #flushIn(milliseconds: number): void {
    if (this.#cancelTimer !== null || this.#closed) return;
    this.#cancelTimer = this.#ports.after(this.#failure === null ? milliseconds : RETRY_MS, () => this.#flush());
  }

  #flush(): void {
    this.#cancelTimer?.();
    this.#cancelTimer = null;
    const texts = this.#texts;
    if (texts.length > 0 && !this.#write(texts)) return;
    this.#settle(done);
  }

  /** False when it failed; then every text still stands in the queue. */
  #write(texts: readonly string[]): boolean {
    let entries: number;
    try {
      entries = this.#ports.append(texts);
    } catch (error) {
      this.#fail(error instanceof Error ? error.message : String(error));
      return false;
    }
    this.#texts = this.#texts.slice(texts.length);
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
