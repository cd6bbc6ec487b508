// Finds out which file an address asks for: a boil in one of its forms, or the table of a season, and in which language.
import { formOf } from './boil-files.ts';
import type { ExportDesk } from './export-desk.ts';
import type { NewFile } from './new-file.ts';

const LONGEST_TEXT = 200;

/** Null for a name that is none of ours. Throws NotebookProblem when there is no such boil. */
export function askedFile(
  exports: ExportDesk,
  name: string,
  query: Readonly<Record<'paper' | 'text' | 'year' | 'language', string | undefined>>,
  signal: AbortSignal,
): NewFile | null {
  const { language = null } = query;
  if (name === 'season.csv')
    return exports.seasonFile(/^\d{4}$/u.test(query.year ?? '') ? Number(query.year) : null, language);
  const form = formOf(name);
  if (form === null || !/^[\p{L}\p{N}-]+$/u.test(form.stem)) return null;
  const paper = query.paper === 'letter' || query.paper === 'a4' ? query.paper : null;
  const text = (query.text ?? '').slice(0, LONGEST_TEXT);
  return exports.boilFile(form.stem, form.end, { paper, text, language, signal });
}
