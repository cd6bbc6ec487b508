// `export`, `labels` and `season`: write a boil or a season to a file, in the form that the end of its name asks for.
import { systemClock } from '../host/clock.ts';
import { dataFolder } from '../host/data-folder.ts';
import { boilFile, boilFiles, endsSentence } from '../host/export/boil-files.ts';
import type { NewFile } from '../host/export/new-file.ts';
import { seasonCsv } from '../host/export/season-csv.ts';
import { type Paper, usualPaper } from '../core/quantities/paper.ts';
import { keptSettings } from '../host/kept-settings.ts';
import { languages } from '../host/languages.ts';
import type { Tongue } from '../language/tongue.ts';
import type { Notebook } from '../notebook/contract.ts';
import { openNotebook } from '../notebook/open-notebook.ts';
import { CommandProblem } from './failure.ts';
import { printer } from './printer.ts';
import { writeWhole } from './write-whole.ts';

interface FileOptions {
  to: string;
  data?: string;
}

interface PaperOptions extends FileOptions {
  /** Left out for the one that is usual with the notebook's units. */
  paper?: Paper;
  /** The tag of a catalogue. */
  language: string;
}

/** Writes a boil into a file whose ending says what it becomes; throws a CommandProblem for an ending, boil or language that is not there. */
export async function exportBoil(boil: string, options: PaperOptions): Promise<void> {
  const { to, language } = options;
  const tongue = tongueOf(language);
  await written(options, (notebook) => {
    const paper = options.paper ?? usualPaper(keptSettings(notebook));
    const files = boilFiles(notebook, boil, to, { machine: systemClock(), paper, tongue, text: '' });
    if (files === null) throw new CommandProblem(`--to ${to}: ${endsSentence}.`, 2);
    return { what: notebook.find(boil).boil, files };
  });
}

/** Writes a sheet of labels for a boil’s jars, a .pdf; throws as exportBoil. */
export async function labels(boil: string, options: PaperOptions & { text: string }): Promise<void> {
  const { to, text, language } = options;
  const tongue = tongueOf(language);
  refuseOtherEnd(to, '.pdf');
  await written(options, (notebook) => {
    const paper = options.paper ?? usualPaper(keptSettings(notebook));
    const files = [boilFile(notebook, boil, to, '.labels.pdf', { machine: systemClock(), paper, tongue, text })];
    return { what: `A sheet of labels for ${notebook.find(boil).boil}`, files };
  });
}

/** Writes the figures of all boils, or of one year’s, into a .csv; throws as exportBoil. */
export async function season(options: FileOptions & { year?: number }): Promise<void> {
  const { to, year = null } = options;
  refuseOtherEnd(to, '.csv');
  await written(options, (notebook) => {
    const pieces = seasonCsv(notebook, { machine: systemClock(), year });
    return {
      what: year === null ? 'Every boil' : `The season of ${year}`,
      files: [{ path: to, type: 'text/csv', pieces }],
    };
  });
}

function tongueOf(language: string): Tongue {
  const tags = languages().named.map(([tag]) => tag);
  if (tags.includes(language)) return languages().tongue(language);
  throw new CommandProblem(`--language ${language}: there is ${tags.join(' and ')}.`, 2);
}

function refuseOtherEnd(to: string, end: string): void {
  if (!to.endsWith(end)) throw new CommandProblem(`--to ${to}: its name must end in ${end}.`, 2);
}

async function written(
  { data }: FileOptions,
  make: (notebook: Notebook) => { what: string; files: NewFile[] },
): Promise<void> {
  const notebook = openNotebook(dataFolder(data), { readOnly: true });
  try {
    const { what, files } = make(notebook);
    await writeWhole(files);
    const out = printer();
    out.line(`${what} is in ${files.map(({ path }) => path).join(' and ')}.`);
    await out.flush();
  } finally {
    notebook.close();
  }
}
