// Makes the files that a page asks for, beside a live boil.
import type { Tongue } from '../../language/tongue.ts';
import type { Notebook } from '../../notebook/contract.ts';
import type { MachineClock } from '../clock.ts';
import { keptSettings } from '../kept-settings.ts';
import { languages } from '../languages.ts';
import { boilFile } from './boil-files.ts';
import type { NewFile } from './new-file.ts';
import { seasonCsv } from './season-csv.ts';
import { type Paper, usualPaper } from '../../core/quantities/paper.ts';

export interface AskedFile {
  /** Null for the one that is usual with the units of the settings. */
  paper: Paper | null;
  /** The person's own words on labels. */
  text: string;
  /** The tag of the language that the page speaks; null for that of the settings. */
  language: string | null;
  /** Ends the work when nobody waits for the file any more. */
  signal: AbortSignal;
}

export class ExportDesk {
  readonly #notebook: Notebook;
  readonly #machine: MachineClock;

  constructor(notebook: Notebook, machine: MachineClock) {
    this.#notebook = notebook;
    this.#machine = machine;
  }

  /** `end` is one that formOf tells. Throws NotebookProblem when there is no such boil. */
  boilFile(boil: string, end: string, asked: AskedFile): NewFile {
    const tongue = this.#tongue(asked.language);
    const path = `${boil}${endShown(end, tongue)}`;
    const paper = asked.paper ?? usualPaper(keptSettings(this.#notebook));
    return boilFile(this.#notebook, boil, path, end, { ...asked, paper, machine: this.#machine, tongue });
  }

  /** Every boil when `year` is null; `language` as for a boil. */
  seasonFile(year: number | null, language: string | null): NewFile {
    const name = this.#tongue(language).say('file.season');
    const path = year === null ? `${name}.csv` : `${name}-${year}.csv`;
    return {
      path,
      type: 'text/csv; charset=utf-8',
      pieces: seasonCsv(this.#notebook, { machine: this.#machine, year }),
    };
  }

  #tongue(language: string | null): Tongue {
    return languages().tongueFor(language ?? keptSettings(this.#notebook).language, []);
  }
}

/** The end of the file's name, where a person sees it. */
function endShown(end: string, tongue: Tongue): string {
  if (end === '.labels.pdf') return `.${tongue.say('file.labels')}.pdf`;
  return end === '.marks.csv' ? `.${tongue.say('file.marks')}.csv` : end;
}
