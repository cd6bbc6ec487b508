// Plays the entries of a recording at the pace of the clock that it is given.
import type { Entry } from '../core/boil/entries.ts';
import { PacedSource } from './paced-source.ts';
import type { Source, Timekeeper } from './source.ts';

export interface ReplaySourceOptions {
  /** In order of t; a function gives one after another, then null. */
  entries: readonly Entry[] | (() => Entry | null);
  /** Runs as fast as the replay is to be; stands still for a pause. */
  timekeeper: Timekeeper;
}

/** A recording as a source; after its last entry comes `end`. To play from another place, a new one is made. */
export function replaySource({ entries, timekeeper }: ReplaySourceOptions): Source {
  const pull = typeof entries === 'function' ? entries : pullFrom(entries);
  let ahead = pull();
  return new PacedSource(
    {
      next(t) {
        if (ahead === null || ahead.t > t) return null;
        const entry = ahead;
        ahead = pull();
        return entry;
      },
      ended: () => ahead === null,
    },
    timekeeper,
  );
}

function pullFrom(entries: readonly Entry[]): () => Entry | null {
  let index = 0;
  return () => entries[index++] ?? null;
}
