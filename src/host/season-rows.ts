// One row for each boil that is kept: what it was, and its figures as far as they are worked out.
import { balanceOf, boilFigures } from '../core/season/boil-figures.ts';
import type { BoilFacts } from '../core/season/boil-facts.ts';
import type { BoilPage, Collection } from '../core/season/records.ts';
import { sapKindOf } from '../core/physics/sap-kinds.ts';
import type { Header } from '../core/boil/entries.ts';
import type { BoilSummary, Notebook } from '../notebook/contract.ts';
import type { BoilRow, Find } from '../protocol/season-messages.ts';
import { factsOf } from './season-facts.ts';

/** Sap by the boil that took it. */
export type SapByBoil = ReadonlyMap<string | undefined, Collection[]>;

/** Collections by the boil that they went into; undefined for those in the store. */
export const sapByBoil = (collections: readonly Collection[]): SapByBoil =>
  Map.groupBy(collections, ({ boil }) => boil);

/** Of a running boil nothing is worked out yet. */
export function rowOf(notebook: Notebook, summary: BoilSummary, collections: SapByBoil): BoilRow {
  const { boil, kind, ...shown } = summary;
  const page = notebook.page(boil);
  const facts = summary.running ? null : factsOf(notebook, boil);
  const figures = facts === null ? null : boilFigures(facts, page, collections.get(boil) ?? []);
  return {
    ...{ boil, ...shown, practice: kind === 'practice' },
    ...(facts === null ? setUp(notebook.header(boil)) : { pans: facts.pans, saps: facts.saps }),
    outcomes: facts?.outcomes ?? [],
    figures,
    balance: figures === null ? null : balanceOf(figures),
    isBlank: isBlank(page),
  };
}

/** Whether nobody has written anything on the page. */
export const isBlank = (page: BoilPage): boolean => Object.keys(page).length === 0;

/** What the header alone says, until its entries are read. */
function setUp({ pans = [] }: Header): Pick<BoilFacts, 'pans' | 'saps'> {
  const syrup = pans.filter(({ role }) => role !== 'reference');
  return {
    pans: syrup.map(({ id, name }) => ({ id, name: name ?? id })),
    saps: [...new Set(syrup.map(({ sap }) => sapKindOf(sap ?? 'maple').key))],
  };
}

/** Whether a row is what is looked for; text is looked for by the notebook's own search. */
export function fits(row: BoilRow, { sap, pan, from, to, outcome }: Find): boolean {
  const day = row.started.slice(0, 10);
  if (from !== undefined && day < from) return false;
  if (to !== undefined && day > to) return false;
  if (sap !== undefined && !row.saps.some((key) => key === sap)) return false;
  if (pan !== undefined && !row.pans.some(({ id, name }) => isLike(id, pan) || isLike(name, pan))) return false;
  return outcome === undefined || row.outcomes.includes(outcome);
}

const isLike = (one: string, other: string): boolean =>
  one.toLocaleLowerCase('en').includes(other.toLocaleLowerCase('en'));

/** In the order that is asked for; what is not known comes last either way. `best` leaves them as they come. */
export function sorted(
  rows: readonly BoilRow[],
  { sort = 'started', descending = sort === 'started' }: Find,
): BoilRow[] {
  if (sort === 'best') return [...rows];
  const direction = descending ? -1 : 1;
  if (sort === 'name') return rows.toSorted((a, b) => direction * a.name.localeCompare(b.name, 'en'));
  const keyOf = (row: BoilRow): number | null =>
    sort === 'started' ? Date.parse(row.started) : (row.figures?.[sort]?.value ?? null);
  return rows.toSorted((a, b) => {
    const [one, other] = [keyOf(a), keyOf(b)];
    if (one === null || other === null) return Number(one === null) - Number(other === null);
    return direction * (one - other);
  });
}
