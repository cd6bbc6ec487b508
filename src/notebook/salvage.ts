// Reads whatever can still be read of a damaged notebook into a new one.
import {
  copyFileSync,
  existsSync,
  mkdtempSync,
  openSync,
  closeSync,
  readSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { parseEntry, parseHeader } from '../protocol/recording.ts';
import { unpacked, ENTRIES_PER_BLOCK, type Block } from './blocks.ts';
import type { BoilRow } from './boil-table.ts';
import { pageOf } from './pages.ts';
import { readableRows } from './readable-rows.ts';
import { replacePageWords, wordsOf } from './search.ts';
import { inTransaction, insertPacked, type TimedText } from './write-entries.ts';

export interface Salvaged {
  boil: string;
  /** How many were kept, and how many could be read. */
  kept: number;
  read: number;
}

/** What is kept of a boil beside its entries; figures are worked out again. */
const TABLES_BESIDE = ['setting', 'learnt', 'forgotten', 'page', 'collection', 'photo'];

/** Works on a copy: the files at `path` are not touched. Gives null when nothing in them can be read at all. */
export function salvageInto(database: DatabaseSync, path: string, scratchIn: string): Salvaged[] | null {
  const folder = mkdtempSync(join(scratchIn, 'salvage-'));
  try {
    const copy = join(folder, 'notebook.sqlite');
    for (const ending of ['', '-wal'])
      if (existsSync(`${path}${ending}`)) copyFileSync(`${path}${ending}`, `${copy}${ending}`);
    mendLength(copy);
    const old = new DatabaseSync(copy);
    try {
      return inTransaction(database, () => readAll(database, old));
    } finally {
      old.close();
    }
  } catch {
    return null;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A file that was cut says that it has more pages than there are, and SQLite then reads none of them. */
function mendLength(path: string): void {
  if (existsSync(`${path}-wal`)) return;
  const header = Buffer.alloc(100);
  const file = openSync(path, 'r+');
  try {
    readSync(file, header, 0, 100, 0);
    const size = header.readUInt16BE(16);
    const pages = Math.floor(statSync(path).size / (size === 1 ? 65_536 : size));
    if (!Number.isFinite(pages) || pages >= header.readUInt32BE(28)) return;
    header.writeUInt32BE(pages, 28);
    // The list of free pages may point beyond the end.
    header.writeUInt32BE(0, 32);
    header.writeUInt32BE(0, 36);
    writeSync(file, header, 0, 100, 0);
  } finally {
    closeSync(file);
  }
}

function readAll(database: DatabaseSync, old: DatabaseSync): Salvaged[] {
  old.prepare('SELECT count(*) FROM sqlite_schema').get();
  const boils = readableRows(old, 'boil').filter(({ staged }) => staged === 0) as unknown as BoilRow[];
  const blocks = readableRows(old, 'block') as unknown as (Block & { boil: number })[];
  const salvaged = boils.flatMap((boil) => {
    if (!parseHeader(String(boil.header)).ok || !insertRow(database, 'boil', { ...boil, entries: 0, last_t: 0 }))
      return [];
    const own = blocks.filter((block) => block.boil === boil.number);
    return [{ boil: boil.id, kept: boil.entries, read: copyEntries(database, old, boil, own) }];
  });
  for (const table of TABLES_BESIDE) for (const row of readableRows(old, table)) insertRow(database, table, row);
  for (const { boil } of salvaged) findPage(database, boil);
  return salvaged;
}

/** False when the new notebook refuses it. The names of the columns are those of our own tables. */
function insertRow(database: DatabaseSync, table: string, row: object): boolean {
  const known = new Set(
    database
      .prepare(`PRAGMA table_info(${table})`)
      .all()
      .map(({ name }) => String(name)),
  );
  const fields = Object.entries(row).filter(([name]) => known.has(name));
  const names = fields.map(([name]) => name);
  try {
    return (
      database
        .prepare(`INSERT OR IGNORE INTO ${table} (${names.join(', ')}) VALUES (${names.map(() => '?').join(', ')})`)
        .run(...fields.map(([, value]) => value as string | number | null)).changes > 0
    );
  } catch {
    return false;
  }
}

/** In order of place; what is no entry or steps back in time is left out, as it would make the boil unreadable. */
function copyEntries(database: DatabaseSync, old: DatabaseSync, boil: BoilRow, blocks: Block[]): number {
  let row: BoilRow = { ...boil, entries: 0, last_t: 0 };
  let batch: TimedText[] = [];
  let lastT = 0;
  const write = () => {
    row = insertPacked(database, row, batch);
    batch = [];
  };
  for (const text of textsOf(old, boil, blocks)) {
    const parsed = parseEntry(text);
    if (!parsed.ok || parsed.entry.t < lastT) continue;
    lastT = parsed.entry.t;
    batch.push({ t: lastT, text, words: wordsOf(parsed.entry) });
    if (batch.length === ENTRIES_PER_BLOCK) write();
  }
  write();
  return row.entries;
}

function* textsOf(old: DatabaseSync, { number, entries }: BoilRow, blocks: Block[]): Generator<string> {
  let place = 0;
  for (const block of blocks.toSorted((a, b) => a.first - b.first)) {
    yield* rowTexts(old, number, place + 1, block.first - 1);
    const texts = unpacked(block);
    if (Array.isArray(texts)) yield* texts;
    place = Math.max(place, block.first + block.entries - 1);
  }
  yield* rowTexts(old, number, place + 1, entries);
}

const ROWS_AT_A_TIME = 200;

/** A page that cannot be read spoils the rows on it: then they are asked for one by one. */
function* rowTexts(old: DatabaseSync, boil: number, from: number, to: number): Generator<string> {
  const some = old.prepare('SELECT text FROM entry WHERE boil = ? AND place BETWEEN ? AND ? ORDER BY place');
  for (let first = from; first <= to; first += ROWS_AT_A_TIME) {
    const last = Math.min(first + ROWS_AT_A_TIME - 1, to);
    const together = attempt(() => some.all(boil, first, last));
    for (const { text } of together ?? []) yield String(text);
    for (let place = first; together === null && place <= last; place += 1) {
      const alone = attempt(() => some.get(boil, place, place));
      if (alone) yield String(alone['text']);
    }
  }
}

function findPage(database: DatabaseSync, boil: string): void {
  const page = attempt(() => pageOf(database, boil));
  const number = database.prepare('SELECT number FROM boil WHERE id = ?').get(boil)?.['number'];
  if (page !== null) replacePageWords(database, Number(number), page);
}

function attempt<Result>(read: () => Result): Result | null {
  try {
    return read();
  } catch {
    return null;
  }
}
