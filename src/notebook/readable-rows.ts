// Reads those rows of a table that can be read, around pages that cannot.
import type { DatabaseSync } from 'node:sqlite';

type Row = Record<string, unknown>;

/** So many numbers in a row without a readable row are taken for the end of a table that cannot be counted. */
const LONGEST_HOLE = 20_000;

/** All rows that come before the first damaged page and after the last; and by row numbers those between. */
export function readableRows(database: DatabaseSync, table: string): Row[] {
  const straight = readTo(database, `SELECT * FROM ${table}`);
  if (straight.whole) return straight.rows;
  const numbered = byNumber(database, table);
  return numbered.length > straight.rows.length ? numbered : straight.rows;
}

function readTo(database: DatabaseSync, query: string): { rows: Row[]; whole: boolean } {
  const rows: Row[] = [];
  try {
    for (const row of database.prepare(query).iterate()) rows.push(row);
    return { rows, whole: true };
  } catch {
    return { rows, whole: false };
  }
}

/** A table without row numbers gives none. */
function byNumber(database: DatabaseSync, table: string): Row[] {
  const rows: Row[] = [];
  try {
    const one = database.prepare(`SELECT * FROM ${table} NOT INDEXED WHERE rowid = ?`);
    for (let number = 1, hole = 0; hole < LONGEST_HOLE; number += 1) {
      const row = attempt(() => one.get(number));
      hole = row === undefined ? hole + 1 : 0;
      if (row !== undefined) rows.push(row);
    }
  } catch {
    return rows;
  }
  return rows;
}

function attempt(read: () => Row | undefined): Row | undefined {
  try {
    return read();
  } catch {
    return undefined;
  }
}
