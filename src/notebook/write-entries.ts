// Adds boils and entries to the notebook's tables; the caller brings the transaction.
import type { DatabaseSync } from 'node:sqlite';
import type { Header } from '../core/boil/entries.ts';
import { parseEntry } from '../protocol/recording.ts';
import { insertBlock } from './blocks.ts';
import { boilRow, isIdTaken, type BoilRow } from './boil-table.ts';
import { freeBoilId } from './boil-id.ts';
import { NotebookProblem, type BoilKind } from './contract.ts';
import { dropFigures } from './figures.ts';
import { addWords, wordsOf, type Words } from './search.ts';

/** Runs the work as one transaction: all of it is on disk afterwards, or none of it. */
export function inTransaction<Result>(database: DatabaseSync, work: () => Result): Result {
  database.exec('BEGIN IMMEDIATE');
  try {
    const result = work();
    database.exec('COMMIT');
    return result;
  } catch (error) {
    // SQLite has rolled back by itself after some errors, a full disk among them.
    if (database.isTransaction) database.exec('ROLLBACK');
    throw error;
  }
}

export interface NewBoil {
  header: Header;
  /** The header's line as it is to be exported. */
  headerText: string;
  kind: BoilKind;
  running: boolean;
  staged: boolean;
}

/** A new boil without entries; returns its row. */
export function insertBoil(database: DatabaseSync, boil: NewBoil): BoilRow {
  const { header, headerText, kind, running, staged } = boil;
  const id = freeBoilId(header, (taken) => isIdTaken(database, taken));
  return database
    .prepare(
      `INSERT INTO boil (id, kind, name, started, started_ms, header, running, staged, entries, last_t)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?, 0, 0) RETURNING *`,
    )
    .get(
      id,
      kind,
      header.name ?? '',
      header.started,
      Date.parse(header.started),
      headerText,
      Number(running),
      Number(staged),
    ) as unknown as BoilRow;
}

export interface TimedText {
  t: number;
  text: string;
  /** What of it can be searched for. */
  words: Words | null;
}

/** Adds entries behind the last one, each in a row of its own, and counts them in the boil's row. */
export function insertEntries(database: DatabaseSync, boil: BoilRow, entries: readonly TimedText[]): BoilRow {
  const insert = database.prepare('INSERT INTO entry (boil, place, t, text) VALUES (?, ?, ?, ?)');
  let place = boil.entries;
  for (const { t, text } of entries) {
    place += 1;
    insert.run(boil.number, place, t, text);
  }
  return counted(database, boil, entries);
}

/** The same, put away at once as one block. */
export function insertPacked(database: DatabaseSync, boil: BoilRow, entries: readonly TimedText[]): BoilRow {
  insertBlock(database, boil.number, boil.entries + 1, entries);
  return counted(database, boil, entries);
}

function counted(database: DatabaseSync, boil: BoilRow, added: readonly TimedText[]): BoilRow {
  for (const { words } of added) if (words !== null) addWords(database, boil.number, words);
  dropFigures(database, boil.number);
  const entries = boil.entries + added.length;
  const lastT = added.at(-1)?.t ?? boil.last_t;
  database.prepare('UPDATE boil SET entries = ?, last_t = ? WHERE number = ?').run(entries, lastT, boil.number);
  return { ...boil, entries, last_t: lastT };
}

/** Adds the texts of a running boil; returns the number of entries now kept. Throws NotebookProblem. */
export function appendTexts(database: DatabaseSync, id: string, texts: readonly string[]): number {
  const boil = runningRow(database, id);
  const entries: TimedText[] = [];
  let lastT = boil.last_t;
  for (const text of texts) {
    const entry = timedText(text, lastT);
    lastT = entry.t;
    entries.push(entry);
  }
  return insertEntries(database, boil, entries).entries;
}

/** Adds the `ended` entry and marks the boil as over; returns the number of entries now kept. */
export function endBoil(database: DatabaseSync, id: string, t: number): number {
  const boil = runningRow(database, id);
  const lastT = Math.max(Math.floor(t), boil.last_t);
  const ended = { t: lastT, text: JSON.stringify({ t: lastT, run: 'ended' }), words: null };
  const { entries } = insertEntries(database, boil, [ended]);
  database.prepare('UPDATE boil SET running = 0 WHERE number = ?').run(boil.number);
  return entries;
}

function runningRow(database: DatabaseSync, id: string): BoilRow {
  const boil = boilRow(database, id);
  if (boil.running === 1) return boil;
  throw new NotebookProblem(`the boil "${boil.id}" is over already: nothing can be added to it`, 2);
}

/** A text that is no entry, or steps back, would make the recording unreadable; only a fault in the program brings one. */
function timedText(text: string, lastT: number): TimedText {
  const parsed = parseEntry(text);
  if (!parsed.ok) throw new NotebookProblem(`this is no entry of a boil: ${parsed.why}`, 1);
  if (/\n|\r$/u.test(text)) throw new NotebookProblem('this is no entry of a boil: it holds a line end', 1);
  const { t } = parsed.entry;
  if (t < lastT)
    throw new NotebookProblem(`this entry comes too late: its t of ${t} is before the ${lastT} that is kept`, 1);
  return { t, text, words: wordsOf(parsed.entry) };
}
