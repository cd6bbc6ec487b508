// Which files an export makes, by the end of the name that is asked for.
import type { Notebook } from '../../notebook/contract.ts';
import { boilSource } from './boil-source.ts';
import type { SliceOptions } from './in-slices.ts';
import { marksCsv } from './marks-csv.ts';
import type { NewFile } from './new-file.ts';
import { readingsCsv } from './readings-csv.ts';
import { recordingPieces } from './recording-pieces.ts';

const RECORDING = '.boil.jsonl';
const MARKS = '.marks.csv';
const CSV = '.csv';

/** For a sentence about a name that ends otherwise. */
export const endsSentence =
  'its name must end in .boil.jsonl (the recording) or .csv (a table, with one of the marks beside it)';

/** The files of one boil, to be written together; null when the name asks for no known form. Throws NotebookProblem (2). */
export function boilFiles(notebook: Notebook, boil: string, to: string, options: SliceOptions): NewFile[] | null {
  if (to.endsWith(RECORDING)) {
    const { boil: id } = notebook.find(boil);
    return [{ path: to, type: 'application/x-ndjson; charset=utf-8', pieces: recordingPieces(notebook, id) }];
  }
  const source = boilSource(notebook, boil);
  const csv = { type: 'text/csv; charset=utf-8' };
  if (to.endsWith(MARKS)) return [{ ...csv, path: to, pieces: marksCsv(source, options) }];
  if (!to.endsWith(CSV)) return null;
  const marks = `${to.slice(0, -CSV.length)}${MARKS}`;
  return [
    { ...csv, path: to, pieces: readingsCsv(source, options) },
    { ...csv, path: marks, pieces: marksCsv(source, options) },
  ];
}
