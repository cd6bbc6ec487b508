// Takes a recording into the notebook as a stream, so that all of it becomes a boil or nothing does.
import type { DatabaseSync } from 'node:sqlite';
import { setImmediate as otherWork } from 'node:timers/promises';
import { readRecording, RecordingProblem } from '../protocol/recording.ts';
import type { BoilRow } from './boil-table.ts';
import { NotebookProblem } from './contract.ts';
import { wordsOf } from './search.ts';
import { inTransaction, insertBoil, insertEntries, type TimedText } from './write-entries.ts';

/** Large enough for few commits, small enough to keep memory flat and the event loop free. */
const ENTRIES_PER_COMMIT = 2000;
const CHARACTERS_PER_COMMIT = 1_000_000;
const MOST_SENTENCES = 100;

/**
 * Reads pieces of a file (see readRecording) into a staged boil, which readers do not see, and lets it
 * appear at the end. When the notebook has the same header and entries already, that boil is returned.
 * `name` is what sentences call the file. Throws NotebookProblem (2) when it is no recording.
 */
export async function importRecording(
  database: DatabaseSync,
  chunks: AsyncIterable<Uint8Array | string> | Iterable<Uint8Array | string>,
  name: string,
): Promise<{ boil: BoilRow; leftOut: string[] }> {
  await dropStaged(database);
  try {
    const leftOut = new SentenceList(name);
    const staged = await stage(database, chunks, leftOut);
    return { boil: await settle(database, staged), leftOut: leftOut.sentences() };
  } catch (error) {
    if (error instanceof RecordingProblem) throw new NotebookProblem(`${name}, ${error.message}`, 2);
    throw error;
  } finally {
    await dropStaged(database);
  }
}

async function stage(
  database: DatabaseSync,
  chunks: AsyncIterable<Uint8Array | string> | Iterable<Uint8Array | string>,
  leftOut: SentenceList,
): Promise<BoilRow> {
  let boil: BoilRow | null = null;
  let batch: TimedText[] = [];
  let characters = 0;
  const keepBatch = (into: BoilRow): BoilRow => {
    const kept = inTransaction(database, () => insertEntries(database, into, batch));
    batch = [];
    characters = 0;
    return kept;
  };
  for await (const item of readRecording(chunks)) {
    if (item.kind === 'header') {
      const { header, raw } = item;
      const staged = {
        header,
        headerText: raw,
        kind: (header as { practice?: unknown }).practice === true ? 'practice' : 'imported',
        running: false,
        staged: true,
      } as const;
      boil = inTransaction(database, () => insertBoil(database, staged));
    } else if (item.kind === 'entry') {
      batch.push({ t: item.entry.t, text: item.raw, words: wordsOf(item.entry) });
      characters += item.raw.length;
    } else {
      leftOut.add(item.why);
    }
    const full = batch.length >= ENTRIES_PER_COMMIT || characters >= CHARACTERS_PER_COMMIT;
    if (full && boil !== null) boil = keepBatch(boil);
  }
  if (boil === null) throw new RecordingProblem('line 1: there is no header');
  return keepBatch(boil);
}

/** The staged boil comes out, unless an equal one is there; then that one stands for it. */
async function settle(database: DatabaseSync, staged: BoilRow): Promise<BoilRow> {
  const candidates = database
    .prepare('SELECT * FROM boil WHERE staged = 0 AND header = ? AND entries = ? AND last_t = ?')
    .all(staged.header, staged.entries, staged.last_t) as unknown as BoilRow[];
  for (const boil of candidates) {
    if (await haveSameEntries(database, boil, staged)) return boil;
  }
  database.prepare('UPDATE boil SET staged = 0 WHERE number = ?').run(staged.number);
  return staged;
}

/** Byte for byte; in pieces, as the rest of the program must not wait for a long boil. */
async function haveSameEntries(database: DatabaseSync, one: BoilRow, other: BoilRow): Promise<boolean> {
  const differing = database.prepare(
    `SELECT 1 FROM entry AS a JOIN entry AS b ON b.boil = ? AND b.place = a.place
     WHERE a.boil = ? AND a.place > ? AND a.place <= ? AND a.text <> b.text LIMIT 1`,
  );
  for (let place = 0; place < one.entries; place += ENTRIES_PER_COMMIT) {
    if (differing.get(other.number, one.number, place, place + ENTRIES_PER_COMMIT) !== undefined) return false;
    await otherWork();
  }
  return true;
}

/** What an import that was stopped, or a twin, has left behind; in pieces too. */
async function dropStaged(database: DatabaseSync): Promise<void> {
  const boils = database.prepare('SELECT * FROM boil WHERE staged = 1').all() as unknown as BoilRow[];
  const dropUpTo = database.prepare('DELETE FROM entry WHERE boil = ? AND place <= ?');
  for (const boil of boils) {
    for (let place = 0; place < boil.entries; place += ENTRIES_PER_COMMIT) {
      dropUpTo.run(boil.number, place + ENTRIES_PER_COMMIT);
      await otherWork();
    }
    database.prepare('DELETE FROM boil WHERE number = ?').run(boil.number);
  }
}

/** A hostile file can have millions of bad lines: the first are said, the rest counted. */
class SentenceList {
  readonly #name: string;
  readonly #first: string[] = [];
  #count = 0;

  constructor(name: string) {
    this.#name = name;
  }

  add(sentence: string): void {
    this.#count += 1;
    if (this.#count <= MOST_SENTENCES) this.#first.push(`${this.#name}, ${sentence}`);
  }

  sentences(): string[] {
    const more = this.#count - MOST_SENTENCES;
    return more > 0 ? [...this.#first, `${this.#name}: ${more} more lines were left out`] : [...this.#first];
  }
}
