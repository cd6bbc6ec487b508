// The one interface through which a boil's entries come in: serial ports, a replayed recording, the practice boil.
import type { Entry } from '../core/boil/entries.ts';

/** Boil time, handed in by the host, which owns the one clock. */
export interface Timekeeper {
  /** Whole milliseconds of boil time, never stepping back. */
  now(): number;
  /** Calls back once, after so many milliseconds of real time; returns the way to call it off. */
  after(milliseconds: number, call: () => void): () => void;
}

export type SourceItem =
  /** Something happened at entry.t. */
  | { kind: 'entry'; entry: Entry; raw?: string }
  /** Time has reached t and nothing came; every later item has a greater t. */
  | { kind: 'idle'; t: number }
  /** Nothing more will come. */
  | { kind: 'end'; t: number };

/** A fact about the source that a person may need, in one sentence (a port that is held, unreadable data). */
export interface SourceNotice {
  port: string | null;
  sentence: string;
  /** It is over as soon as the port is open. */
  untilOpen?: boolean;
}

export interface SourceListener {
  item(item: SourceItem): void;
  notice(notice: SourceNotice): void;
}

/**
 * Items come in order of t, from start() on and never after stop() has resolved.
 * stop() is safe at any time and more than once; a stopped source is not started again.
 */
export interface Source {
  start(listener: SourceListener): void;
  stop(): Promise<void>;
  /** What a person noted or changed, for sources whose pans react to it (the practice boil). */
  hear?(entry: Entry): void;
}
