// The season as CSV: one row for each boil, with every figure, its range and where it comes from.
import { boilFigures } from '../../core/season/boil-figures.ts';
import { FIGURES, FIGURE_NAMES, type BoilFigures } from '../../core/season/figures.ts';
import type { BoilSummary, Notebook } from '../../notebook/contract.ts';
import type { MachineClock } from '../clock.ts';
import { factsOf, workOutFacts, type Workable } from '../season-facts.ts';
import { type Cell, csvText } from './csv.ts';

export interface SeasonOptions {
  machine: MachineClock;
  /** Boils that began in this year on the clock there; all when null. */
  year: number | null;
}

/** Oldest first; practice boils are no part of a season. Changes nothing in the notebook. */
export async function* seasonCsv(notebook: Notebook, { machine, year }: SeasonOptions): AsyncGenerator<string> {
  yield csvText([['boil', 'name', 'started', ...FIGURE_NAMES.flatMap(columnsOf)]]);
  const boils = notebook.boils().filter((boil) => boil.kind !== 'practice' && isOfYear(boil, year));
  for (const boil of boils.reverse()) yield csvText([await rowOf(notebook, boil, machine)]);
}

const isOfYear = ({ started }: BoilSummary, year: number | null): boolean =>
  year === null || Number(started.slice(0, 4)) === year;

async function rowOf(notebook: Notebook, { boil, name, started }: BoilSummary, machine: MachineClock): Promise<Cell[]> {
  const facts = factsOf(notebook, boil) ?? (await workOutFacts(readerOf(notebook), boil, machine));
  const given = notebook.collections().filter((collection) => collection.boil === boil);
  const figures = boilFigures(facts, notebook.page(boil), given);
  return [boil, name, started, ...FIGURE_NAMES.flatMap((figure) => cellsOf(figures, figure))];
}

/** What is worked out here is not kept: the notebook may be open for reading only. */
const readerOf = (notebook: Notebook): Workable => ({
  header: (boil) => notebook.header(boil),
  entries: (boil) => notebook.entries(boil),
  keepFigures: () => {},
});

type FigureName = (typeof FIGURE_NAMES)[number];

/** A unit stands in the name's end where the figure's own name has none: "syrup_brix [°Bx]". */
function columnsOf(name: FigureName): string[] {
  const title = FIGURES[name] === '' ? name : `${name} [${FIGURES[name]}]`;
  return [title, `${name} low`, `${name} high`, `${name} from`];
}

function cellsOf(figures: BoilFigures, name: FigureName): Cell[] {
  const figure = figures[name];
  if (figure === null) return [null, null, null, null];
  return [rounded(figure.value), rounded(figure.low), rounded(figure.high), figure.from];
}

/** Six figures are more than anybody measures. */
const rounded = (value: number | null): number | null => (value === null ? null : Number(value.toPrecision(6)));
