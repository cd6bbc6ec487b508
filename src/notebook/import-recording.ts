// Takes a recording into the notebook as a stream, so that all of it becomes a boil or nothing does.
import type { DatabaseSync } from 'node:sqlite';
import { readRecording, RecordingProblem } from '../protocol/recording.ts';
import type { BoilRow } from './boil-table.ts';
import { NotebookProblem } from './contract.ts';
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
  dropStaged(database);
  try {
    const leftOut = new SentenceList(name);
    const staged = await stage(database, chunks, leftOut);
    return { boil: inTransaction(database, () => settle(database, staged)), leftOut: leftOut.sentences() };
  } catch (error) {
    if (error instanceof RecordingProblem) throw new NotebookProblem(`${name}, ${error.message}`, 2);
    throw error;
  } finally {
    dropStaged(database);
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
      const staged = { header, headerText: raw, kind: 'imported', running: false, staged: true } as const;
      boil = inTransaction(database, () => insertBoil(database, staged));
    } else if (item.kind === 'entry') {
      batch.push({ t: item.entry.t, text: item.raw });
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
function settle(database: DatabaseSync, staged: BoilRow): BoilRow {
  const twin = twinOf(database, staged);
  if (twin !== null) return twin;
  database.prepare('UPDATE boil SET staged = 0 WHERE number = ?').run(staged.number);
  return staged;
}

/** A boil with the same header and the same entries, byte for byte. */
function twinOf(database: DatabaseSync, staged: BoilRow): BoilRow | null {
  const candidates = database
    .prepare('SELECT * FROM boil WHERE staged = 0 AND header = ? AND entries = ? AND last_t = ?')
    .all(staged.header, staged.entries, staged.last_t) as unknown as BoilRow[];
  const differing = database.prepare(
    'SELECT 1 FROM entry AS a JOIN entry AS b ON b.place = a.place WHERE a.boil = ? AND b.boil = ? AND a.text <> b.text LIMIT 1',
  );
  return candidates.find((boil) => differing.get(boil.number, staged.number) === undefined) ?? null;
}

/** What an import that was stopped, or a twin, has left behind. */
function dropStaged(database: DatabaseSync): void {
  database.exec('DELETE FROM boil WHERE staged = 1');
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
