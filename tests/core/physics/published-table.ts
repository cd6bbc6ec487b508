// Reads a table of published or computed check values from fixtures/tables; its source stands in its first lines.
import { readFileSync } from 'node:fs';

export interface TableRow {
  text(column: string): string;
  /** null where the table has no value. */
  value(column: string): number | null;
  /** Throws where the table has no value. */
  number(column: string): number;
}

/** Rows of a comma-separated table below its `#` lines and its line of column names. */
export function readTable(name: string): TableRow[] {
  const path = new URL(`../../../fixtures/tables/${name}.csv`, import.meta.url);
  const lines = readFileSync(path, 'utf8').split('\n');
  const [head, ...rows] = lines.filter((line) => line !== '' && !line.startsWith('#')).map((line) => line.split(','));
  if (head === undefined || rows.length === 0) throw new Error(`${name} holds no rows`);
  return rows.map((cells) => asRow(head, cells, name));
}

function asRow(head: string[], cells: string[], name: string): TableRow {
  const text = (column: string): string => {
    const index = head.indexOf(column);
    const cell = cells[index];
    if (index < 0 || cell === undefined) throw new Error(`${name} has no column ${column}`);
    return cell;
  };
  const value = (column: string): number | null => (text(column) === '' ? null : Number(text(column)));
  const number = (column: string): number => {
    const found = value(column);
    if (found === null || Number.isNaN(found)) throw new Error(`${name} has no number in ${column}`);
    return found;
  };
  return { text, value, number };
}

/** Worst and root-mean-square of differences. */
export function residuals(differences: number[]): { worst: number; rms: number } {
  if (differences.length === 0) throw new Error('no differences to judge');
  const worst = Math.max(...differences.map(Math.abs));
  const rms = Math.sqrt(differences.reduce((sum, d) => sum + d * d, 0) / differences.length);
  return { worst, rms };
}
