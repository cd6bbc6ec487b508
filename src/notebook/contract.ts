// What the rest of the program may ask of the notebook, whatever keeps it.
import type { Header, Learnt, ProbeSetup } from '../core/boil/entries.ts';
import type { BoilPage, Collection, Photo } from '../core/season/records.ts';

export type BoilKind = 'live' | 'practice' | 'imported';

export interface BoilSummary {
  boil: string;
  kind: BoilKind;
  name: string;
  started: string;
  /** Length from t = 0 to the last entry, s. */
  seconds: number;
  entries: number;
  running: boolean;
  /** A practice boil that its person wants out of the list; absent for all others. */
  hidden?: true;
}

/** What a live boil taught about its probes and saps. */
export interface Teaching {
  boil: string;
  name: string;
  started: string;
  learnt: Learnt;
  /** The probes as they were set up when it was taught. */
  probes: ProbeSetup[];
  /** The names that a person does not want used any more. */
  forgotten: string[];
}

/** A problem that a person can act on: what, where, what to do. `code` is the exit code of a command that meets it. */
export class NotebookProblem extends Error {
  readonly code: 1 | 2;
  constructor(sentence: string, code: 1 | 2) {
    super(sentence);
    this.name = 'NotebookProblem';
    this.code = code;
  }
}

/** All calls are synchronous; each write is on disk when the call returns, or it throws. */
export interface Notebook {
  readonly folder: string;
  /** Newest start first. */
  boils(): BoilSummary[];
  /** By id, or `latest`. Throws NotebookProblem (2) naming what exists when there is none. */
  find(boil: string): BoilSummary;
  /** A live boil goes before a practice boil that was left running. */
  running(): BoilSummary | null;
  /** A new running boil; the id is the date and the name in lower case, made unique. */
  begin(header: Header, kind: 'live' | 'practice'): BoilSummary;
  /** Entry texts, one JSON object each without line end, in order; one transaction. Returns the number of entries now kept.
   *  A text that is no entry, or whose t steps back, is refused with all that came with it. */
  append(boil: string, texts: readonly string[]): number;
  /** Adds `{"t","run":"ended"}` with the greater of `t` and the last kept t, and marks the boil as over. */
  end(boil: string, t: number): number;
  header(boil: string): Header;
  /** The header's line exactly as it was kept, without its line end. */
  headerText(boil: string): string;
  /** The entry texts exactly as they were kept, in order, read as a stream of rows. */
  entries(boil: string): Iterable<string>;
  /**
   * Streams a recording in; the same recording twice is one boil. `pieces` are pieces of the file as they
   * come, line ends included (bytes are best: then text that is no UTF-8 is told). `name` is what sentences
   * call the file; `leftOut` says every line that was not taken. Throws NotebookProblem (2).
   */
  importRecording(
    pieces: AsyncIterable<Uint8Array | string> | Iterable<Uint8Array | string>,
    name: string,
  ): Promise<{ boil: BoilSummary; leftOut: string[] }>;
  /** In place of what the running live boil had taught before; null takes that away. Another boil teaches nothing. */
  keepLearnt(boil: string, learnt: Learnt | null, probes: readonly ProbeSetup[]): void;
  /** What live boils taught, the one begun last first. */
  learnt(): Teaching[];
  /** What any boil begun so far taught under this name is forgotten; a later boil may teach it anew. */
  forget(name: string): void;
  /** What a person wrote about a boil; empty when nothing was. Over boils too. */
  page(boil: string): BoilPage;
  /** The whole page in place of the one before. */
  keepPage(boil: string, page: BoilPage): void;
  /** What was worked out of a boil's entries and is costly to work out again; null when nothing is kept under this `key`
   *  (the caller puts into it what the figures depend on). Entries that come later drop it. */
  figures(boil: string, key: string): unknown;
  keepFigures(boil: string, key: string, figures: unknown): void;
  /** Newest day first. */
  collections(): Collection[];
  /** A new one, or in place of the one with its id. */
  keepCollection(collection: Collection): void;
  dropCollection(id: string): void;
  /** In the order in which they were added. */
  photos(boil: string): Photo[];
  /** `bytes` are kept as they are handed in: at most 10 MB, on disk when the call returns. Throws NotebookProblem (2). */
  addPhoto(boil: string, photo: Pick<Photo, 'type' | 'caption'>, bytes: Uint8Array): Photo;
  photo(boil: string, id: string): { photo: Photo; bytes: Uint8Array };
  dropPhoto(boil: string, id: string): void;
  /** Ids of boils whose name, pans, notes or page hold all these words, or words that begin so; best match first. */
  search(words: string): string[];
  /** A dated, whole copy of the notebook in another folder, and only the newest `keep` of ours left there; returns its path. */
  backup(folder: string, keep: number): string;
  /** undefined when nothing was kept under the key. */
  setting(key: string): unknown;
  keepSetting(key: string, value: unknown): void;
  /** Verifies everything and says what it found; `damaged` when something is. */
  check(): { damaged: boolean; findings: string[] };
  /** Sentences on how the notebook was found when it was opened; mostly none. */
  readonly remarks: readonly string[];
  close(): void;
}
