// Reads the list of boils out of the notebook's tables.
import type { DatabaseSync } from 'node:sqlite';
import { NotebookProblem, type BoilKind, type BoilSummary } from './contract.ts';

export interface BoilRow {
  number: number;
  id: string;
  kind: BoilKind;
  name: string;
  started: string;
  header: string;
  running: number;
  entries: number;
  last_t: number;
  /** The name that its page gives it since; null where it has the one that it began with. */
  renamed: string | null;
  /** 1 where its page says that it is hidden. */
  hidden: number | null;
}

const ROWS = `SELECT boil.*, json_extract(page.page, '$.name') AS renamed,
  json_extract(page.page, '$.hidden') AS hidden
  FROM boil LEFT JOIN page ON page.boil = boil.number WHERE staged = 0`;

/** Newest start first. Imports that are not finished are not boils yet. */
export function boilRows(database: DatabaseSync): BoilRow[] {
  return database.prepare(`${ROWS} ORDER BY started_ms DESC, number DESC`).all() as unknown as BoilRow[];
}

/** By id, or `latest`. Throws NotebookProblem (2) naming what exists when there is none. */
export function boilRow(database: DatabaseSync, boil: string): BoilRow {
  const row =
    boil === 'latest'
      ? boilRows(database)[0]
      : (database.prepare(`${ROWS} AND id = ?`).get(boil) as BoilRow | undefined);
  if (row === undefined) throw new NotebookProblem(noSuchBoil(database, boil), 2);
  return row;
}

/** Whether a boil of this id is there. */
export function isIdTaken(database: DatabaseSync, id: string): boolean {
  return database.prepare('SELECT 1 FROM boil WHERE id = ?').get(id) !== undefined;
}

/** A row of the table as it is told to others. */
export function summary(row: BoilRow): BoilSummary {
  return {
    boil: row.id,
    kind: row.kind,
    name: row.renamed ?? row.name,
    started: row.started,
    seconds: row.last_t / 1000,
    entries: row.entries,
    running: row.running === 1,
    ...(row.hidden === 1 && { hidden: true as const }),
  };
}

const MOST_NAMED = 5;

function noSuchBoil(database: DatabaseSync, boil: string): string {
  const ids = boilRows(database).map((row) => row.id);
  if (ids.length === 0) return `there is no boil "${boil}": the notebook is empty`;
  const more = ids.length > MOST_NAMED ? ` and ${ids.length - MOST_NAMED} more` : '';
  return `there is no boil "${boil}": the notebook has ${ids.slice(0, MOST_NAMED).join(', ')}${more}`;
}
