// Takes a recording into the notebook as a stream, so that all of it becomes a boil or nothing does.
import type { DatabaseSync } from 'node:sqlite';
import { setImmediate as otherWork } from 'node:timers/promises';
import { readRecording, RecordingProblem } from '../protocol/recording.ts';
import { CHARACTERS_PER_BLOCK, ENTRIES_PER_BLOCK } from './blocks.ts';
import type { BoilRow } from './boil-table.ts';
import { NotebookProblem } from './contract.ts';
import { stretches } from './stretches.ts';
import { wordsOf } from './search.ts';
import { inTransaction, insertBoil, insertPacked, type TimedText } from './write-entries.ts';

/** Blocks that are dropped at a time, and texts that are compared, so that the event loop stays free. */
const BLOCKS_A_STEP = 50;
const TEXTS_A_STEP = 5000;
const MOST_SENTENCES = 100;
/** A file with more lines that are none, and fewer that are, was never a recording. */
const MOST_LEFT_OUT = 100_000;
/** Twenty times a day and a night of 16 probes at one line a second: what is longer is no boil. */
const LONGEST_RECORDING_MB = 500;

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
    const staged = await stage(database, limited(chunks, name), leftOut);
    return { boil: await settle(database, staged), leftOut: leftOut.sentences() };
  } catch (error) {
    if (error instanceof RecordingProblem) throw new NotebookProblem(`${name}, ${error.message}`, 2);
    throw error;
  } finally {
    await dropStaged(database);
  }
}

async function* limited(
  chunks: AsyncIterable<Uint8Array | string> | Iterable<Uint8Array | string>,
  name: string,
): AsyncGenerator<Uint8Array | string> {
  let left = LONGEST_RECORDING_MB * 1_000_000;
  for await (const chunk of chunks) {
    left -= chunk.length;
    if (left < 0) {
      throw new NotebookProblem(
        `${name} is longer than ${LONGEST_RECORDING_MB} MB, which no boil needs: it was not taken in`,
        2,
      );
    }
    yield chunk;
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
    const kept = inTransaction(database, () => insertPacked(database, into, batch));
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
      leftOut.refuseMore((boil?.entries ?? 0) + batch.length);
    }
    const full = batch.length >= ENTRIES_PER_BLOCK || characters >= CHARACTERS_PER_BLOCK;
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
  const others = textsOf(database, other);
  let compared = 0;
  for (const text of textsOf(database, one)) {
    if (others.next().value !== text) return false;
    compared += 1;
    if (compared % TEXTS_A_STEP === 0) await otherWork();
  }
  return true;
}

/** What cannot be read is like nothing else. */
function* textsOf(database: DatabaseSync, boil: BoilRow): Generator<string> {
  for (const { texts } of stretches(database, boil.number, boil.entries)) {
    if (Array.isArray(texts)) yield* texts;
    else yield `boil ${boil.number}: ${texts.why}`;
  }
}

/** What an import that was stopped, or a twin, has left behind; in pieces too. */
async function dropStaged(database: DatabaseSync): Promise<void> {
  const boils = database.prepare('SELECT * FROM boil WHERE staged = 1').all() as unknown as BoilRow[];
  const dropSome = database.prepare(
    'DELETE FROM block WHERE boil = ? AND first IN (SELECT first FROM block WHERE boil = ? ORDER BY first LIMIT ?)',
  );
  for (const { number } of boils) {
    while (dropSome.run(number, number, BLOCKS_A_STEP).changes > 0) await otherWork();
    database.prepare('DELETE FROM boil WHERE number = ?').run(number);
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

  /** Throws NotebookProblem when nearly all of the file is left out. */
  refuseMore(entries: number): void {
    if (this.#count <= MOST_LEFT_OUT || this.#count <= entries) return;
    throw new NotebookProblem(
      `${this.#name}: ${this.#count} lines are no entries, and ${entries} are: this is no recording`,
      2,
    );
  }

  sentences(): string[] {
    const more = this.#count - MOST_SENTENCES;
    return more > 0 ? [...this.#first, `${this.#name}: ${more} more lines were left out`] : [...this.#first];
  }
}
