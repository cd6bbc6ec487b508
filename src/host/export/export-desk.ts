// Makes the files that a page asks for, beside a live boil.
import type { Notebook } from '../../notebook/contract.ts';
import type { MachineClock } from '../clock.ts';
import { boilFile } from './boil-files.ts';
import type { NewFile } from './new-file.ts';
import { seasonCsv } from './season-csv.ts';
import type { Paper } from './sheet.ts';

export interface AskedFile {
  paper: Paper;
  /** The person's own words on labels. */
  text: string;
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
    return boilFile(this.#notebook, boil, `${boil}${end}`, end, { ...asked, machine: this.#machine });
  }

  /** Every boil when `year` is null. */
  seasonFile(year: number | null): NewFile {
    const path = year === null ? 'season.csv' : `season-${year}.csv`;
    return {
      path,
      type: 'text/csv; charset=utf-8',
      pieces: seasonCsv(this.#notebook, { machine: this.#machine, year }),
    };
  }
}
