// Answers what is asked of the season: pages of boils, collected sap, sums, what is looked for, photos.
import { randomUUID } from 'node:crypto';
import { BOTTLING_STEPS } from '../core/season/bottling.ts';
import { boilFigures } from '../core/season/boil-figures.ts';
import type { BoilFacts } from '../core/season/boil-facts.ts';
import { type EndForm, endForm } from '../core/season/end-form.ts';
import type { BoilPage, Collection, Photo } from '../core/season/records.ts';
import { seasonDays, seasonTotals, yearOf } from '../core/season/season.ts';
import { collectionShown, storeLevel } from '../core/season/store.ts';
import type { BoilSummary, Notebook } from '../notebook/contract.ts';
import type {
  BoilPageView,
  BoilRow,
  CollectionsView,
  Find,
  FoundView,
  SeasonCommand,
  SeasonView,
} from '../protocol/season-messages.ts';
import { BoilQueue } from './boil-queue.ts';
import { isoWithOffset } from './clock.ts';
import type { MachineClock } from './clock.ts';
import { done, refused } from './outcome.ts';
import type { Outcome } from './outcome.ts';
import { pictureToKeep } from './photo-metadata.ts';
import { factsOf, logOf, workOutFacts } from './season-facts.ts';
import { inSlices } from './slices.ts';
import { fits, isBlank, rowOf, type SapByBoil, sapByBoil, sorted } from './season-rows.ts';

const NOT_HIDDEN = 'Only a practice boil that is over can be hidden: a real boil stays in the notebook.';

export class SeasonDesk {
  readonly #notebook: Notebook;
  readonly #machine: MachineClock;
  readonly #worker: BoilQueue;
  /** Rows that are whole, by boil: a list of hundreds is asked for at each letter that is typed. Only this desk changes what they rest on. */
  readonly #whole = new Map<string, { entries: number; row: BoilRow }>();

  constructor(notebook: Notebook, machine: MachineClock) {
    this.#notebook = notebook;
    this.#machine = machine;
    this.#worker = new BoilQueue(machine, (boil) => workOutFacts(notebook, boil, machine));
  }

  async do(command: SeasonCommand): Promise<Outcome> {
    if ('boil_page' in command) return { ok: true, data: this.#page(command.boil_page.boil) };
    if ('keep_page' in command) return this.#keepPage(command.keep_page.boil, command.keep_page.page);
    if ('collections' in command) return { ok: true, data: this.#collections() };
    if ('keep_collection' in command) return this.#keepCollection(command.keep_collection);
    if ('drop_collection' in command) return this.#dropCollection(command.drop_collection.id);
    if ('season' in command) return { ok: true, data: await this.#season(command.season.year) };
    if ('find' in command) return { ok: true, data: await this.#find(command.find) };
    this.#notebook.dropPhoto(command.drop_photo.boil, command.drop_photo.id);
    return done;
  }

  /** Its figures are worked out now, so that they are there when somebody looks. */
  boilEnded(boil: string): void {
    this.#worker.want(boil, true);
  }

  /** Syrup (litres at 20 °C, °Bx) that somebody measured, or that was drawn off or stood in the pans; null where nobody knows. */
  syrupOf(boil: string): { litres: number; brix: number | null } | null {
    const { figures } = rowOf(this.#notebook, this.#notebook.find(boil), sapByBoil(this.#notebook.collections()));
    const litres = figures?.syrup_litres?.value;
    return litres === undefined ? null : { litres, brix: figures?.syrup_brix?.value ?? null };
  }

  /** Resolves when all that was asked for is worked out. */
  idle(): Promise<void> {
    return this.#worker.idle();
  }

  close(): void {
    this.#worker.close();
  }

  /** Keeps a photo; what it says of the place is taken out unless it is wanted. Throws with a sentence. */
  addPhoto(boil: string, bytes: Uint8Array, { caption, keepsPlace }: { caption: string; keepsPlace: boolean }): Photo {
    const picture = pictureToKeep(bytes, keepsPlace);
    return this.#notebook.addPhoto(boil, { type: picture.type, caption }, picture.bytes);
  }

  /** Throws with a sentence when it is not there. */
  photo(boil: string, id: string): { photo: Photo; bytes: Uint8Array } {
    return this.#notebook.photo(boil, id);
  }

  #today(): string {
    return isoWithOffset(this.#machine.wallMs()).slice(0, 10);
  }

  #keepPage(name: string, page: BoilPage): Outcome {
    const { boil, kind, running } = this.#notebook.find(name);
    if (page.hidden === true && (kind !== 'practice' || running)) return refused(NOT_HIDDEN);
    this.#notebook.keepPage(boil, page);
    this.#whole.delete(boil);
    return { ok: true, data: this.#page(boil) };
  }

  #page(name: string): BoilPageView {
    const notebook = this.#notebook;
    const summary = notebook.find(name);
    const { boil } = summary;
    if (!summary.running && factsOf(notebook, boil) === null) this.#worker.want(boil, true);
    const collections = notebook.collections();
    const { isBlank: _, ...row } = rowOf(notebook, summary, sapByBoil(collections));
    const page = notebook.page(boil);
    const facts = summary.running ? null : factsOf(notebook, boil);
    const log = facts === null ? null : logOf(notebook, boil);
    return {
      ...row,
      header: notebook.header(boil),
      page,
      pours: facts?.pours ?? null,
      boiling_never_seen: facts !== null && facts.boilingSeconds === null,
      marks: log?.marks ?? null,
      history: log?.history ?? null,
      photos: notebook.photos(boil),
      steps: BOTTLING_STEPS.map((step) => ({ ...step, ticked: page.steps?.[step.id] ?? null })),
      form: facts === null ? null : this.#form(summary, facts, collections),
    };
  }

  #form({ boil, started }: BoilSummary, facts: BoilFacts, collections: readonly Collection[]): EndForm {
    const ofThis = sapByBoil(collections).get(boil) ?? [];
    return endForm(facts, boilFigures(facts, {}, ofThis), this.#pageBefore(started));
  }

  /** Of the last boil before this that is not practice and of which somebody wrote anything. */
  #pageBefore(started: string): BoilPage {
    const at = Date.parse(started);
    for (const { boil, kind, started: then } of this.#notebook.boils()) {
      if (kind === 'practice' || !(Date.parse(then) < at)) continue;
      const page = this.#notebook.page(boil);
      if (!isBlank(page)) return page;
    }
    return {};
  }

  #collections(): CollectionsView {
    const today = this.#today();
    const collections = this.#notebook.collections();
    return {
      today,
      collections: collections.map((one) => collectionShown(one, today)),
      store: storeLevel(collections, today),
    };
  }

  #keepCollection(given: Omit<Collection, 'id'> & { id?: string | undefined }): Outcome {
    if (given.boil !== undefined) this.#notebook.find(given.boil);
    const id = given.id ?? randomUUID();
    const before = this.#notebook.collections().find((one) => one.id === id);
    this.#notebook.keepCollection({ ...given, id });
    for (const { boil } of [given, before ?? {}]) if (boil !== undefined) this.#whole.delete(boil);
    return { ok: true, data: this.#collections() };
  }

  #dropCollection(id: string): Outcome {
    const there = this.#notebook.collections().find((one) => one.id === id);
    if (there === undefined) return refused('That sap is not in the list any more.');
    this.#notebook.dropCollection(id);
    if (there.boil !== undefined) this.#whole.delete(there.boil);
    return { ok: true, data: this.#collections() };
  }

  /** All rows, made in slices; what is missing of their figures is worked out from now on. */
  async #rows(
    summaries: readonly BoilSummary[],
    collections: SapByBoil,
  ): Promise<{ rows: BoilRow[]; working: number }> {
    const rows: BoilRow[] = [];
    for await (const summary of inSlices(summaries, this.#machine)) {
      const row = this.#row(summary, collections);
      rows.push(row);
      if (row.figures === null && !row.running) this.#worker.want(row.boil);
    }
    return { rows, working: this.#worker.left };
  }

  #row(summary: BoilSummary, collections: SapByBoil): BoilRow {
    const { boil, entries } = summary;
    const kept = this.#whole.get(boil);
    if (kept?.entries === entries && !summary.running) return kept.row;
    const row = rowOf(this.#notebook, summary, collections);
    if (row.figures !== null) this.#whole.set(boil, { entries, row });
    return row;
  }

  async #season(asked: number | null): Promise<SeasonView> {
    const collections = this.#notebook.collections();
    const summaries = this.#notebook.boils().filter(({ kind }) => kind !== 'practice');
    const { rows, working } = await this.#rows(summaries.toReversed(), sapByBoil(collections));
    const rowsOf = Map.groupBy(rows, ({ started }) => yearOf(started));
    const sapOf = Map.groupBy(collections, ({ day }) => yearOf(day));
    const years = [...new Set([...rowsOf.keys(), ...sapOf.keys()])].sort((a, b) => b - a);
    const year = asked ?? years[0] ?? yearOf(this.#today());
    const boils = rowsOf.get(year) ?? [];
    const sap = sapOf.get(year) ?? [];
    return {
      year,
      years,
      totals: seasonTotals(boils, sap),
      boils,
      days: seasonDays(boils, sap),
      seasons: years.map((one) => ({ year: one, totals: seasonTotals(rowsOf.get(one) ?? [], sapOf.get(one) ?? []) })),
      store: storeLevel(collections, this.#today()),
      working,
    };
  }

  async #find(asked: Find): Promise<FoundView> {
    const wanted = asked.text === undefined || asked.text.trim() === '' ? null : this.#notebook.search(asked.text);
    const byId = new Map(this.#notebook.boils().map((summary) => [summary.boil, summary]));
    const summaries =
      wanted === null ? [...byId.values()] : wanted.flatMap((boil) => (byId.has(boil) ? [byId.get(boil)!] : []));
    const { rows, working } = await this.#rows(summaries, sapByBoil(this.#notebook.collections()));
    const boils = sorted(
      rows.filter((row) => fits(row, asked)),
      asked,
    );
    return { boils, working };
  }
}
