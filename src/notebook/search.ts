// Finds boils by the words in their names, pans, notes and pages, and keeps those words in step with what is kept.
import type { DatabaseSync } from 'node:sqlite';
import type { Entry } from '../core/boil/entries.ts';
import type { BoilPage } from '../core/season/records.ts';

/** What of an entry can be searched for. */
export interface Words {
  column: 'pans' | 'notes';
  text: string;
}

/** The words of a note, or the names of pans that are set in the middle of a boil; null for all else. */
export function wordsOf(entry: Entry): Words | null {
  if ('mark' in entry) return entry.mark.kind === 'note' ? { column: 'notes', text: entry.mark.text } : null;
  if (!('set' in entry) || !Array.isArray(entry.set['pans'])) return null;
  const names = entry.set['pans'].map((pan: unknown) => (pan as { name?: unknown } | null)?.name);
  const text = names.filter((name) => typeof name === 'string').join(' ');
  return text === '' ? null : { column: 'pans', text };
}

/** Adds words to those of a boil; the caller brings the transaction. */
export function addWords(database: DatabaseSync, boilNumber: number, { column, text }: Words): void {
  database.prepare(`UPDATE search SET ${column} = ${column} || char(10) || ? WHERE rowid = ?`).run(text, boilNumber);
}

/** In place of the words of the page before. */
export function replacePageWords(database: DatabaseSync, boilNumber: number, page: BoilPage): void {
  const { name, taste, colour, next_time, notes, jars } = page;
  const lots = (jars ?? []).map(({ lot }) => lot);
  const words = [name, taste, colour, next_time, notes, ...lots].filter((text) => text !== undefined);
  database.prepare('UPDATE search SET page = ? WHERE rowid = ?').run(words.join('\n'), boilNumber);
}

/** Ids of boils that hold all the words, or words that begin so; best match first. */
export function searchBoils(database: DatabaseSync, words: string): string[] {
  // Only letters and digits are looked for, so nothing that is typed is read as the search's own signs.
  const wanted = (words.match(/[\p{L}\p{N}\p{M}]+/gu) ?? []).map((word) => `"${word}"*`).join(' ');
  if (wanted === '') return [];
  return database
    .prepare(
      'SELECT id FROM search JOIN boil ON number = search.rowid WHERE search MATCH ? AND staged = 0 ORDER BY rank',
    )
    .all(wanted)
    .map(({ id }) => String(id));
}
