// `export`: writes a boil to a file, in the form that the end of the file's name asks for.
import { dataFolder } from '../host/data-folder.ts';
import { boilFiles, endsSentence } from '../host/export/boil-files.ts';
import { systemClock } from '../host/clock.ts';
import { openNotebook } from '../notebook/open-notebook.ts';
import { CommandProblem } from './failure.ts';
import { printer } from './printer.ts';
import { writeWhole } from './write-whole.ts';

export interface ExportOptions {
  to: string;
  data?: string;
}

export async function exportBoil(boil: string, { to, data }: ExportOptions): Promise<void> {
  const notebook = openNotebook(dataFolder(data), { readOnly: true });
  try {
    const files = boilFiles(notebook, boil, to, { machine: systemClock() });
    if (files === null) throw new CommandProblem(`--to ${to}: ${endsSentence}.`, 2);
    await writeWhole(files);
    const out = printer();
    out.line(`${notebook.find(boil).boil} is in ${files.map(({ path }) => path).join(' and ')}.`);
    await out.flush();
  } finally {
    notebook.close();
  }
}
