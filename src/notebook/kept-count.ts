// Remembers beside the notebook how many entries were last kept, so that a lost or cut write-ahead file is noticed.
import { closeSync, openSync, readFileSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';

/** Every text is as long as the longest, so that one write replaces all of the one before. */
const LENGTH = 1024;
const schema = z.object({ boil: z.string(), entries: z.number().int().nonnegative() });

export class KeptCount {
  readonly #path: string;
  #file: number | null = null;

  constructor(folder: string) {
    this.#path = join(folder, 'last-kept.json');
  }

  /** Called after the commit, so it never says more than is on disk. A failure here costs no entry and is passed over. */
  note(boil: string, entries: number): void {
    try {
      this.#file ??= openSync(this.#path, 'w');
      writeSync(this.#file, JSON.stringify({ boil, entries }).padEnd(LENGTH), 0);
    } catch {
      this.close();
    }
  }

  /** What was noted last; null where nothing was, or where it cannot be read. */
  read(): { boil: string; entries: number } | null {
    try {
      return schema.parse(JSON.parse(readFileSync(this.#path, 'utf8')));
    } catch {
      return null;
    }
  }

  /** What was told need not be told again. */
  forget(): void {
    this.close();
    rmSync(this.#path, { force: true });
  }

  close(): void {
    if (this.#file !== null) closeSync(this.#file);
    this.#file = null;
  }
}

/** A sentence when fewer entries are there than were kept; null when all are. `entriesOf` gives null for no such boil. */
export function lostSentence(
  kept: ReturnType<KeptCount['read']>,
  entriesOf: (boil: string) => number | null,
): string | null {
  if (kept === null) return null;
  const there = entriesOf(kept.boil) ?? 0;
  if (there >= kept.entries) return null;
  return `Boil ${kept.boil}: ${kept.entries} entries were kept, and ${there} are there: the file notebook.sqlite-wal was cut or taken away, or an older notebook.sqlite was put back. Where you still have it, put it back while no program runs here.`;
}
