// Keeps what was worked out of a boil's entries and is costly to work out again; entries that come later drop it.
import type { DatabaseSync } from 'node:sqlite';
import { boilRow } from './boil-table.ts';

/** null when nothing is kept under this key. */
export function figuresOf(database: DatabaseSync, boil: string, key: string): unknown {
  const row = database
    .prepare('SELECT figures FROM figures WHERE boil = ? AND key = ?')
    .get(boilRow(database, boil).number, key);
  return row === undefined ? null : JSON.parse(String(row['figures']));
}

/** In place of what was kept under this key. */
export function keepFigures(database: DatabaseSync, boil: string, key: string, figures: unknown): void {
  const { number } = boilRow(database, boil);
  database
    .prepare('INSERT OR REPLACE INTO figures (boil, key, figures) VALUES (?, ?, ?)')
    .run(number, key, JSON.stringify(figures));
}

/** Forgets the figures of a boil, which are worked out anew when they are asked for. */
export function dropFigures(database: DatabaseSync, boilNumber: number): void {
  database.prepare('DELETE FROM figures WHERE boil = ?').run(boilNumber);
}
