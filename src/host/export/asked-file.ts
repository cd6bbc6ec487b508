// Finds out which file an address asks for: a boil in one of its forms, or the table of a season.
import { formOf } from './boil-files.ts';
import type { ExportDesk } from './export-desk.ts';
import type { NewFile } from './new-file.ts';

const LONGEST_TEXT = 200;

/** Null for a name that is none of ours. Throws NotebookProblem when there is no such boil. */
export function askedFile(
  exports: ExportDesk,
  name: string,
  query: { paper?: string | undefined; text?: string | undefined; year?: string | undefined },
  signal: AbortSignal,
): NewFile | null {
  if (name === 'season.csv') return exports.seasonFile(/^\d{4}$/u.test(query.year ?? '') ? Number(query.year) : null);
  const form = formOf(name);
  if (form === null || !/^[\p{L}\p{N}-]+$/u.test(form.stem)) return null;
  const paper = query.paper === 'letter' ? 'letter' : 'a4';
  return exports.boilFile(form.stem, form.end, { paper, text: (query.text ?? '').slice(0, LONGEST_TEXT), signal });
}
