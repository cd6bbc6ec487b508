// The notebook: all boils, their entries and the settings of one data folder, kept in SQLite.
import { statSync } from 'node:fs';
import type { DatabaseSync } from 'node:sqlite';
import type { Header, Learnt, ProbeSetup } from '../core/boil/entries.ts';
import type { BoilPage, Collection, Photo } from '../core/season/records.ts';
import { checkHeader } from '../protocol/header-schema.ts';
import { parseHeader } from '../protocol/recording.ts';
import { backUp } from './backup.ts';
import { ENTRIES_PER_BLOCK, sealBlock } from './blocks.ts';
import { boilRow, boilRows, summary } from './boil-table.ts';
import { checkNotebook } from './check-notebook.ts';
import { NotebookProblem, type BoilSummary, type Notebook, type Teaching } from './contract.ts';
import { isEmptied, openForReading, openForWriting, emptiedSentence, readingRemarks } from './database.ts';
import { figuresOf, keepFigures } from './figures.ts';
import { importRecording } from './import-recording.ts';
import { KeptCount, lostSentence } from './kept-count.ts';
import { collections, dropCollection, keepCollection, keepPage, pageOf } from './pages.ts';
import { addPhoto, dropPhoto, photosOf, readPhoto } from './photos.ts';
import { damaged, folderProblem, notebookProblem } from './problems.ts';
import { searchBoils } from './search.ts';
import { databasePath } from './set-aside.ts';
import { stretches } from './stretches.ts';
import { forgetName, keepTeaching, teachings } from './teachings.ts';
import { appendTexts, endBoil, inTransaction, insertBoil } from './write-entries.ts';

export { lockFolder, watcherOf, type FolderLock } from './lock-folder.ts';
export { DamagedNotebook } from './problems.ts';

/**
 * Opens the notebook of a folder, and makes both where they are not there. `readOnly` makes and changes
 * nothing, works beside a program that writes, and reads a folder without a notebook as an empty one.
 * Throws NotebookProblem with a sentence that names the folder; DamagedNotebook when the file is no notebook.
 */
export function openNotebook(folder: string, { readOnly = false }: { readOnly?: boolean } = {}): Notebook {
  return new SqliteNotebook(folder, readOnly);
}

class SqliteNotebook implements Notebook {
  readonly folder: string;
  readonly remarks: readonly string[];
  readonly #database: DatabaseSync;
  readonly #readOnly: boolean;
  /** The file that was opened, to notice when another stands in its place or none does. */
  readonly #inode: number | null;
  readonly #kept: KeptCount;
  #importing = false;

  constructor(folder: string, readOnly: boolean) {
    this.folder = folder;
    this.#readOnly = readOnly;
    this.#database = readOnly ? openForReading(folder) : openForWriting(folder);
    this.#kept = new KeptCount(folder);
    this.remarks = readOnly ? readingRemarks(this.#database, folder) : this.#lostRemarks();
    this.#inode = readOnly ? null : statSync(databasePath(folder)).ino;
  }

  boils(): BoilSummary[] {
    return this.#read(() => boilRows(this.#database).map(summary));
  }

  find(boil: string): BoilSummary {
    return this.#read(() => summary(boilRow(this.#database, boil)));
  }

  /** A live boil goes before a practice boil that was left running. */
  running(): BoilSummary | null {
    const running = this.boils().filter((boil) => boil.running);
    return running.find((boil) => boil.kind === 'live') ?? running[0] ?? null;
  }

  begin(header: Header, kind: 'live' | 'practice'): BoilSummary {
    const checked = checkHeader(header);
    if (!checked.ok) throw new NotebookProblem(`no boil can begin so: ${checked.why}`, 2);
    return this.#write(() => {
      const other = this.boils().find((boil) => boil.running && boil.kind === kind);
      if (other !== undefined) {
        throw new NotebookProblem(`the boil "${other.boil}" is still running in ${this.folder}: end it first`, 2);
      }
      const boil = { header, headerText: JSON.stringify(header), kind, running: true, staged: false };
      return summary(insertBoil(this.#database, boil));
    });
  }

  append(boil: string, texts: readonly string[]): number {
    const kept = this.#write(() => appendTexts(this.#database, boil, texts));
    this.#kept.note(boil, kept);
    this.#putAway(boil);
    return kept;
  }

  end(boil: string, t: number): number {
    const kept = this.#write(() => endBoil(this.#database, boil, t));
    this.#kept.note(boil, kept);
    while (this.#putAway(boil, 1));
    return kept;
  }

  header(boil: string): Header {
    const parsed = parseHeader(this.headerText(boil));
    if (!parsed.ok) throw damaged(this.folder, `the header of the boil "${boil}": ${parsed.why}`);
    return parsed.header;
  }

  headerText(boil: string): string {
    return this.#read(() => boilRow(this.#database, boil).header);
  }

  *entries(boil: string): Generator<string> {
    const { number, entries } = this.#read(() => boilRow(this.#database, boil));
    try {
      for (const { texts } of stretches(this.#database, number, entries)) {
        if (!Array.isArray(texts)) throw damaged(this.folder, `the boil "${boil}": ${texts.why}`);
        yield* texts;
      }
    } catch (error) {
      throw notebookProblem(this.folder, 'read', error);
    }
  }

  async importRecording(
    chunks: AsyncIterable<Uint8Array | string> | Iterable<Uint8Array | string>,
    name: string,
  ): Promise<{ boil: BoilSummary; leftOut: string[] }> {
    this.#refuseUnwritable();
    if (this.#importing) throw new NotebookProblem(`${name} must wait: another recording is being imported`, 2);
    this.#importing = true;
    try {
      const { boil, leftOut } = await importRecording(this.#database, chunks, name);
      return { boil: summary(boil), leftOut };
    } catch (error) {
      throw notebookProblem(this.folder, 'written', error);
    } finally {
      this.#importing = false;
    }
  }

  keepLearnt(boil: string, learnt: Learnt | null, probes: readonly ProbeSetup[]): void {
    this.#write(() => keepTeaching(this.#database, boil, learnt, probes));
  }

  learnt(): Teaching[] {
    return this.#read(() => teachings(this.#database));
  }

  forget(name: string): void {
    this.#write(() => forgetName(this.#database, name));
  }

  page(boil: string): BoilPage {
    return this.#read(() => pageOf(this.#database, boil));
  }

  keepPage(boil: string, page: BoilPage): void {
    this.#write(() => keepPage(this.#database, boil, page));
  }

  figures(boil: string, key: string): unknown {
    return this.#read(() => figuresOf(this.#database, boil, key));
  }

  keepFigures(boil: string, key: string, figures: unknown): void {
    this.#write(() => keepFigures(this.#database, boil, key, figures));
  }

  collections(): Collection[] {
    return this.#read(() => collections(this.#database));
  }

  keepCollection(collection: Collection): void {
    this.#write(() => keepCollection(this.#database, collection));
  }

  dropCollection(id: string): void {
    this.#write(() => dropCollection(this.#database, id));
  }

  photos(boil: string): Photo[] {
    return this.#read(() => photosOf(this.#database, boil));
  }

  addPhoto(boil: string, photo: Pick<Photo, 'type' | 'caption'>, bytes: Uint8Array): Photo {
    const dated = { ...photo, added: new Date().toISOString() };
    return this.#write(() => addPhoto(this.#database, this.folder, boil, dated, bytes));
  }

  photo(boil: string, id: string): { photo: Photo; bytes: Uint8Array } {
    return this.#read(() => readPhoto(this.#database, this.folder, boil, id));
  }

  dropPhoto(boil: string, id: string): void {
    const dropFile = this.#write(() => dropPhoto(this.#database, this.folder, boil, id));
    dropFile();
  }

  search(words: string): string[] {
    return this.#read(() => searchBoils(this.#database, words));
  }

  backup(folder: string, keep: number): string {
    try {
      return backUp(this.#database, this.folder, folder, keep, new Date());
    } catch (error) {
      throw new NotebookProblem(`no copy of the notebook could be made in ${folder}: ${(error as Error).message}`, 1);
    }
  }

  setting(key: string): unknown {
    const row = this.#read(() => this.#database.prepare('SELECT value FROM setting WHERE key = ?').get(key));
    return row === undefined ? undefined : JSON.parse(String(row['value']));
  }

  keepSetting(key: string, value: unknown): void {
    const text = JSON.stringify(value);
    this.#write(() =>
      this.#database.prepare('INSERT OR REPLACE INTO setting (key, value) VALUES (?, ?)').run(key, text),
    );
  }

  check(): { damaged: boolean; findings: string[] } {
    if (isEmptied(this.folder)) {
      return {
        damaged: true,
        findings: [emptiedSentence(this.folder)],
      };
    }
    return checkNotebook(this.#database, this.folder);
  }

  close(): void {
    this.#kept.close();
    if (this.#database.isOpen) this.#database.close();
  }

  /** In a transaction of its own: what was appended is kept already, and stays where it is when this fails. */
  #putAway(boil: string, least = ENTRIES_PER_BLOCK): boolean {
    try {
      const { number, entries } = boilRow(this.#database, boil);
      return inTransaction(this.#database, () => sealBlock(this.#database, number, entries, least));
    } catch {
      return false;
    }
  }

  /** What is said once need not be said again. */
  #lostRemarks(): string[] {
    const entriesOf = (boil: string) => this.boils().find((one) => one.boil === boil)?.entries ?? null;
    const lost = lostSentence(this.#kept.read(), entriesOf);
    this.#kept.forget();
    return lost === null ? [] : [lost];
  }

  #read<Result>(work: () => Result): Result {
    try {
      return work();
    } catch (error) {
      throw notebookProblem(this.folder, 'read', error);
    }
  }

  #write<Result>(work: () => Result): Result {
    this.#refuseUnwritable();
    try {
      return inTransaction(this.#database, work);
    } catch (error) {
      throw notebookProblem(this.folder, 'written', error);
    }
  }

  /** A file that was taken away goes on being written on some systems, and is lost when it is closed. */
  #refuseUnwritable(): void {
    if (this.#readOnly) throw new NotebookProblem(`the notebook in ${this.folder} was opened for reading only`, 1);
    let inode: number;
    try {
      inode = statSync(databasePath(this.folder)).ino;
    } catch (error) {
      throw folderProblem(this.folder, error);
    }
    if (inode === this.#inode) return;
    throw new NotebookProblem(
      `the notebook in ${this.folder} was replaced by another while it was open: start the program again`,
      1,
    );
  }
}
