// What an export is made of: a boil as the notebook keeps it.
import type { Header } from '../../core/boil/entries.ts';
import type { Notebook } from '../../notebook/contract.ts';

export interface BoilSource {
  /** Its id in the notebook. */
  boil: string;
  header: Header;
  /** Invented by the program's own simulator: every file that shows it says so. */
  practice: boolean;
  /** The entry texts in their order; made anew by each call. */
  texts(): Iterable<string>;
}

/** `boil` is an id, or `latest`. Throws NotebookProblem (2) when there is no such boil. */
export function boilSource(notebook: Notebook, boil: string): BoilSource {
  const found = notebook.find(boil);
  const header = notebook.header(found.boil);
  return {
    boil: found.boil,
    // It may have been given another name since.
    header: found.name === '' ? header : { ...header, name: found.name },
    practice: found.kind === 'practice',
    texts: () => notebook.entries(found.boil),
  };
}
