// Puts entries away in packed blocks, so that a long boil takes little room, and brings them back byte for byte.
import type { DatabaseSync } from 'node:sqlite';
import { crc32, zstdCompressSync, zstdDecompressSync } from 'node:zlib';

/** Enough to pack well; one block is packed and unpacked in some 10 ms, so that a live boil never waits for it. */
export const ENTRIES_PER_BLOCK = 2048;
/** A line may hold much text: then fewer go into a block. */
export const CHARACTERS_PER_BLOCK = 1_000_000;

export interface Block {
  first: number;
  entries: number;
  first_t: number;
  last_t: number;
  checksum: number;
  packed: Uint8Array;
}

interface Timed {
  t: number;
  text: string;
}

/** Writes entries, which stand nowhere else, as one block; `first` is the place of the first. */
export function insertBlock(database: DatabaseSync, boil: number, first: number, entries: readonly Timed[]): void {
  const [head, last] = [entries[0], entries.at(-1)];
  if (head === undefined || last === undefined) return;
  const bytes = Buffer.from(entries.map(({ text }) => `${text}\n`).join(''));
  database
    .prepare('INSERT INTO block (boil, first, entries, first_t, last_t, checksum, packed) VALUES (?, ?, ?, ?, ?, ?, ?)')
    .run(boil, first, entries.length, head.t, last.t, crc32(bytes), zstdCompressSync(bytes));
}

/** Moves the next entries that stand in rows into a block; false when there are fewer than `least`. The caller brings the transaction. */
export function sealBlock(database: DatabaseSync, boil: number, kept: number, least: number): boolean {
  const sealed = sealedUpTo(database, boil);
  if (kept - sealed < least) return false;
  const rows = database
    .prepare('SELECT place, t, text FROM entry WHERE boil = ? AND place > ? ORDER BY place LIMIT ?')
    .all(boil, sealed, ENTRIES_PER_BLOCK) as unknown as (Timed & { place: number })[];
  const fitting = rows.slice(0, fittingCount(rows));
  const last = fitting.at(-1)?.place;
  // Where places are missing, a check must still see it.
  if (last === undefined || last !== sealed + fitting.length) return false;
  insertBlock(database, boil, sealed + 1, fitting);
  database.prepare('DELETE FROM entry WHERE boil = ? AND place <= ?').run(boil, last);
  return true;
}

/** The block that holds the entry at this place, if one does. */
export function blockAt(database: DatabaseSync, boil: number, place: number): Block | undefined {
  const block = database
    .prepare('SELECT * FROM block WHERE boil = ? AND first <= ? ORDER BY first DESC LIMIT 1')
    .get(boil, place) as Block | undefined;
  return block !== undefined && block.first + block.entries > place ? block : undefined;
}

/** The first block behind this place. */
export function blockAfter(database: DatabaseSync, boil: number, place: number): Block | undefined {
  return database
    .prepare('SELECT * FROM block WHERE boil = ? AND first > ? ORDER BY first LIMIT 1')
    .get(boil, place) as Block | undefined;
}

/** The texts of a block in order, or why it does not hold together. */
export function unpacked({ first, entries, checksum, packed }: Block): string[] | { why: string } {
  const what = `entries ${first} to ${first + entries - 1}`;
  let bytes: Buffer;
  try {
    bytes = zstdDecompressSync(packed);
  } catch (error) {
    return { why: `${what} cannot be unpacked (${(error as Error).message})` };
  }
  if (crc32(bytes) !== checksum) return { why: `${what} are not as they were kept: their checksum differs` };
  const texts = bytes.toString('utf8').split('\n');
  texts.pop();
  return texts.length === entries ? texts : { why: `${what} are ${texts.length} texts` };
}

function sealedUpTo(database: DatabaseSync, boil: number): number {
  const row = database
    .prepare('SELECT first + entries - 1 AS last FROM block WHERE boil = ? ORDER BY first DESC LIMIT 1')
    .get(boil);
  return Number(row?.['last'] ?? 0);
}

/** At least one, whatever its length. */
function fittingCount(rows: readonly Timed[]): number {
  let characters = 0;
  const over = rows.findIndex(({ text }) => (characters += text.length) > CHARACTERS_PER_BLOCK);
  return over === -1 ? rows.length : Math.max(over, 1);
}
