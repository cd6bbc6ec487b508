// Keeps the reading processes: one for each open port, and one that was given back for the next opening.
import type { OpenPort } from './open-port.ts';
import { ReaderProcess } from './reader-process.ts';

/** Longer than the longest pause between two tries of one port (port-keeper.ts). */
const KEPT_IDLE_MS = 10_000;

export class ReaderPool {
  readonly #start: () => ReaderProcess;
  readonly #readers = new Set<ReaderProcess>();
  #timer: NodeJS.Timeout | null = null;

  constructor(start: () => ReaderProcess = () => new ReaderProcess()) {
    this.#start = start;
  }

  /** How many processes there are, busy and idle. */
  get size(): number {
    this.#forgetDead();
    return this.#readers.size;
  }

  readonly open: OpenPort = async (path, baud, events) => {
    this.#forgetDead();
    const reader = [...this.#readers].find(({ isIdle }) => isIdle) ?? this.#start();
    this.#readers.add(reader);
    try {
      const opened = await reader.open(path, baud, events);
      return { close: () => opened.close().finally(() => this.#tidyLater()) };
    } catch (error) {
      this.#tidyLater();
      throw error;
    }
  };

  /** Ends those that nothing was opened with for a while. */
  #tidyLater(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      for (const reader of this.#readers) if (reader.isIdle) reader.kill();
      this.#forgetDead();
    }, KEPT_IDLE_MS).unref();
  }

  #forgetDead(): void {
    for (const reader of this.#readers) if (reader.isDead) this.#readers.delete(reader);
  }
}
