// Which files an export makes, by the end of the name that is asked for.
import type { Notebook } from '../../notebook/contract.ts';
import { boilSource } from './boil-source.ts';
import { marksCsv } from './marks-csv.ts';
import type { NewFile } from './new-file.ts';
import { readingsCsv } from './readings-csv.ts';
import { recordingPieces } from './recording-pieces.ts';
import type { ReportOptions } from './report-pdf.ts';
import { senmlPack } from './senml-pack.ts';

type FileOptions = ReportOptions & {
  /** The person's own words on the labels. */
  text: string;
};
type FileMaker = (notebook: Notebook, boil: string, options: FileOptions) => NewFile['pieces'];

interface Form {
  end: string;
  type: string;
  make: FileMaker;
}

/** What draws on paper takes a tenth of a second to load, which every start of the program would wait for. */
const labels: FileMaker = async function* (...words) {
  yield* (await import('./labels-pdf.ts')).labelsPdf(...words);
};
const report: FileMaker = async function* (...words) {
  yield* (await import('./report-pdf.ts')).reportPdf(...words);
};

/** The longer end goes before the shorter that it ends in. */
const FORMS: readonly Form[] = [
  { end: '.boil.jsonl', type: 'application/x-ndjson; charset=utf-8', make: recordingPieces },
  {
    end: '.marks.csv',
    type: 'text/csv; charset=utf-8',
    make: (notebook, boil, options) => marksCsv(boilSource(notebook, boil), options),
  },
  {
    end: '.csv',
    type: 'text/csv; charset=utf-8',
    make: (notebook, boil, options) => readingsCsv(boilSource(notebook, boil), options),
  },
  {
    end: '.senml.json',
    type: 'application/senml+json',
    make: (notebook, boil, options) => senmlPack(boilSource(notebook, boil), options),
  },
  { end: '.labels.pdf', type: 'application/pdf', make: labels },
  { end: '.pdf', type: 'application/pdf', make: report },
];

/** For a sentence about a name that ends otherwise. */
export const endsSentence =
  'its name must end in .boil.jsonl (the recording), .csv (a table, with one of the marks beside it), .senml.json or .pdf (the report)';

/** The name without its end, and the end; null where no form has it. */
export function formOf(name: string): { stem: string; end: string } | null {
  const form = FORMS.find(({ end }) => name.endsWith(end));
  return form === undefined ? null : { stem: name.slice(0, -form.end.length), end: form.end };
}

/** One file; `end` is one that formOf tells. Throws NotebookProblem (2) when there is no such boil. */
export function boilFile(notebook: Notebook, boil: string, path: string, end: string, options: FileOptions): NewFile {
  const form = FORMS.find((one) => one.end === end);
  if (form === undefined) throw new RangeError(`no form ends in ${end}`);
  const { boil: id } = notebook.find(boil);
  return { path, type: form.type, pieces: form.make(notebook, id, options) };
}

/** The files of one boil, to be written together; null when the name asks for no known form. */
export function boilFiles(notebook: Notebook, boil: string, to: string, options: FileOptions): NewFile[] | null {
  const form = formOf(to);
  if (form === null) return null;
  const files = [boilFile(notebook, boil, to, form.end, options)];
  if (form.end !== '.csv') return files;
  return [...files, boilFile(notebook, boil, `${form.stem}.marks.csv`, '.marks.csv', options)];
}
