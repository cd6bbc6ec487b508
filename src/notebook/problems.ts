// Turns what the file system and SQLite report into sentences that name the folder and the cure.
import { NotebookProblem } from './contract.ts';

/** The notebook's file cannot be read as one. Nothing was changed. */
export class DamagedNotebook extends NotebookProblem {
  /** What is damaged, in a few words. */
  readonly what: string;
  constructor(sentence: string, what: string) {
    super(sentence, 2);
    this.what = what;
    this.name = 'DamagedNotebook';
  }
}

/** Primary result codes of SQLite (sqlite.org/rescode.html). */
const BUSY = 5;
const READONLY = 8;
const CORRUPT = 11;
const FULL = 13;
const CANTOPEN = 14;
const NOTADB = 26;

/** The primary result code, or null when the error is not SQLite's. */
function sqliteCode(error: unknown): number | null {
  const code = (error as { errcode?: unknown } | null)?.errcode;
  return typeof code === 'number' ? code & 0xff : null;
}

/** Whether another program is writing in the database. */
export function isBusy(error: unknown): boolean {
  return sqliteCode(error) === BUSY;
}

/** Whether the database cannot be written, or not opened. */
export function isUnwritable(error: unknown): boolean {
  const code = sqliteCode(error);
  return code === READONLY || code === CANTOPEN;
}

/** The problem of a folder that cannot be made or opened; exit code 2. */
export function folderProblem(folder: string, error: unknown): NotebookProblem {
  return new NotebookProblem(
    `the data folder ${folder} cannot be used (${reason(error)}): name another with --data, or give yourself the right to write there`,
    2,
  );
}

/** The problem of a notebook that opens no more or fails in the middle; `doing` completes "the notebook in … cannot be". */
export function notebookProblem(folder: string, doing: string, error: unknown): Error {
  if (error instanceof NotebookProblem) return error;
  switch (sqliteCode(error)) {
    case null:
      return error instanceof Error ? error : new Error(String(error));
    case CORRUPT:
    case NOTADB:
      return damaged(folder, reason(error));
    case BUSY:
      return problem(folder, doing, 'another program is writing in it: try again in a moment');
    case FULL:
      return problem(folder, doing, 'the disk is full: make room on it');
    default:
      return problem(folder, doing, `${reason(error)}: see whether the disk and the folder can be written`);
  }
}

/** The problem of a notebook that cannot be read; `what` is SQLite’s own word for it. */
export function damaged(folder: string, what: string): DamagedNotebook {
  return new DamagedNotebook(
    `the notebook in ${folder} is damaged (${what}) and was left as it is: "start" and "watch" set it aside, begin a new one and salvage what can be read`,
    what,
  );
}

function problem(folder: string, doing: string, why: string): NotebookProblem {
  return new NotebookProblem(`the notebook in ${folder} cannot be ${doing}: ${why}`, 1);
}

function reason(error: unknown): string {
  const { code, errstr, message } = error as { code?: unknown; errstr?: unknown; message?: unknown };
  if (typeof errstr === 'string') return errstr;
  switch (code) {
    case 'EACCES':
    case 'EPERM':
      return 'permission denied';
    case 'EROFS':
      return 'it is on a read-only disk';
    case 'ENOTDIR':
    case 'EEXIST':
      return 'a file stands in its place';
    case 'ENOSPC':
      return 'the disk is full';
    default:
      return String(message ?? error);
  }
}
