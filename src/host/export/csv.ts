// Writes rows as CSV after RFC 4180, so that a spreadsheet never runs what a person or a file wrote into a name or a note.
import { stringify } from 'csv-stringify/sync';

export type Cell = string | number | boolean | null | undefined;

/**
 * The rows as text, each ended by CR LF. Numbers stand as they are; what is not known is an empty field. Text that begins
 * as a formula would, or with an apostrophe, gets an apostrophe before it: to read it back, take one off.
 */
export function csvText(rows: readonly (readonly Cell[])[]): string {
  return stringify(
    rows.map((row) => row.map(safeCell)),
    { record_delimiter: '\r\n' },
  );
}

/** What a spreadsheet takes for the start of a formula (the list of OWASP's "CSV injection"), and the guard itself. */
const GUARDED = /^['=+\-@\t\r\n]/u;

function safeCell(cell: Cell): string | number | null {
  if (typeof cell === 'boolean') return cell ? 'true' : 'false';
  if (typeof cell === 'string') return GUARDED.test(cell) ? `'${cell}` : cell;
  return cell ?? null;
}
