// Opens the notebook's SQLite file: checks the engine, the file and its version, and brings an older one forward.
import { accessSync, constants, existsSync, renameSync, rmSync, statSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import { pathToFileURL } from 'node:url';
import { bringForward, bringForwardSafely, pragma } from './bring-forward.ts';
import { NotebookProblem } from './contract.ts';
import { isFolder, makeFolder } from './make-folder.ts';
import { damaged, folderProblem, isUnwritable, notebookProblem } from './problems.ts';
import { APPLICATION_ID, NOTEBOOK_VERSION } from './schema.ts';
import { databasePath, takePlace, waitingPath } from './set-aside.ts';

/** SQLite before this can lose committed rows in WAL mode (sqlite.org/wal.html, "the WAL-reset bug"). */
const OLDEST_ENGINE = [3, 51, 3];

/** Waiting blocks every probe, so it ends well before the 200 ms that the program allows itself. */
const BUSY_TIMEOUT_MS = 150;

const PAGES_PER_CHECKPOINT = 250;
const MOST_WAL_BYTES = 4 * 1024 * 1024;

/** Makes the folder and tries whether it can be written. Throws NotebookProblem (2). */
export function prepareFolder(folder: string): void {
  try {
    makeFolder(folder);
    accessSync(folder, constants.W_OK | constants.X_OK);
  } catch (error) {
    throw folderProblem(folder, error);
  }
}

/** Ready to write, every commit on disk before it returns. Throws NotebookProblem. */
export function openForWriting(folder: string): DatabaseSync {
  prepareFolder(folder);
  return opened(folder, () => {
    placeNew(folder);
    const path = databasePath(folder);
    if (isEmptied(folder)) throw damaged(folder, 'its file is empty: something has emptied it');
    const database = new DatabaseSync(path, { timeout: BUSY_TIMEOUT_MS });
    return guarded(database, () => {
      refuseNewer(checkedVersion(database, folder), folder);
      checkEngine(engineVersion(database));
      const mode = database.prepare('PRAGMA journal_mode = WAL').get()?.['journal_mode'];
      if (mode !== 'wal') {
        throw new NotebookProblem(
          `the data folder ${folder} cannot keep a boil safely (SQLite answers "${String(mode)}" instead of "wal"): name a folder on a disk of this machine with --data`,
          2,
        );
      }
      database.exec('PRAGMA synchronous = FULL');
      // Often and little: a checkpoint is a pause, and what it moves is all that the file beside the database holds.
      database.exec(`PRAGMA wal_autocheckpoint = ${PAGES_PER_CHECKPOINT}`);
      database.exec(`PRAGMA journal_size_limit = ${MOST_WAL_BYTES}`);
      bringForwardSafely(database, path);
    });
  });
}

/** A first notebook is made under another name, so that an empty file is never one that was only just begun. */
function placeNew(folder: string): void {
  takePlace(folder);
  if (existsSync(databasePath(folder))) return;
  makeWaiting(folder, () => {});
  takePlace(folder);
}

/** Makes a complete notebook that waits to take its place; `fill` puts into it what it is to begin with. */
export function makeWaiting(folder: string, fill: (database: DatabaseSync) => void): void {
  const unfinished = `${waitingPath(folder)}.unfinished`;
  rmSync(unfinished, { force: true });
  rmSync(`${unfinished}-journal`, { force: true });
  const database = new DatabaseSync(unfinished);
  try {
    bringForward(database);
    fill(database);
  } finally {
    database.close();
  }
  renameSync(unfinished, waitingPath(folder));
}

/** The file is there and holds nothing: that is no new notebook, something emptied it. */
export function isEmptied(folder: string): boolean {
  return statSync(databasePath(folder), { throwIfNoEntry: false })?.size === 0;
}

/** For reading beside a program that writes. A folder without a notebook reads as an empty one. */
export function openForReading(folder: string): DatabaseSync {
  const path = databasePath(folder);
  if (existsSync(folder) && !isFolder(folder))
    throw new NotebookProblem(`the data folder ${folder} is a file: name a folder with --data`, 2);
  if (!existsSync(path) || isEmptied(folder)) return emptyDatabase();
  return opened(folder, () => {
    const database = openReadOnly(path);
    return guarded(database, () => {
      if (checkedVersion(database, folder) < NOTEBOOK_VERSION) {
        throw new NotebookProblem(
          `the notebook in ${folder} is of an older version: open it once with "start" or "watch" to bring it forward`,
          2,
        );
      }
    });
  });
}

/** Throws NotebookProblem (2) when this SQLite is too old to trust with a boil. */
export function checkEngine(version: string): void {
  const parts = version.split('.').map(Number);
  for (const [index, oldest] of OLDEST_ENGINE.entries()) {
    const part = parts[index] ?? 0;
    if (part > oldest) return;
    if (part < oldest) {
      throw new NotebookProblem(
        `SQLite ${version} can lose what was written down; ${OLDEST_ENGINE.join('.')} or newer is needed: run the program with Node 24.21 or newer`,
        2,
      );
    }
  }
}

function openReadOnly(path: string): DatabaseSync {
  const database = new DatabaseSync(path, { readOnly: true, timeout: BUSY_TIMEOUT_MS });
  try {
    database.prepare('PRAGMA user_version').get();
    database.prepare('SELECT count(*) FROM sqlite_schema').get();
    return database;
  } catch (error) {
    database.close();
    // In a folder that cannot be written SQLite cannot share the file; where no program writes it need not.
    if (!isUnwritable(error) || hasContent(`${path}-wal`)) throw error;
    return new DatabaseSync(new URL(`${pathToFileURL(path).href}?immutable=1`), { readOnly: true });
  }
}

function hasContent(path: string): boolean {
  return existsSync(path) && statSync(path).size > 0;
}

function emptyDatabase(): DatabaseSync {
  const database = new DatabaseSync(':memory:');
  bringForward(database);
  return database;
}

function opened(folder: string, open: () => DatabaseSync): DatabaseSync {
  try {
    return open();
  } catch (error) {
    throw isUnwritable(error) ? folderProblem(folder, error) : notebookProblem(folder, 'opened', error);
  }
}

function guarded(database: DatabaseSync, prepare: () => void): DatabaseSync {
  try {
    prepare();
    return database;
  } catch (error) {
    database.close();
    throw error;
  }
}

function engineVersion(database: DatabaseSync): string {
  return String(database.prepare('SELECT sqlite_version() AS version').get()?.['version']);
}

function checkedVersion(database: DatabaseSync, folder: string): number {
  const version = pragma(database, 'user_version');
  const objects = Number(database.prepare('SELECT count(*) AS count FROM sqlite_schema').get()?.['count']);
  if (objects === 0 && version === 0) return 0;
  if (pragma(database, 'application_id') !== APPLICATION_ID) {
    throw damaged(folder, 'its file is a database of another program');
  }
  return version;
}

/** A newer program may keep things in ways that this one would spoil; reading harms nothing. */
function refuseNewer(version: number, folder: string): void {
  if (version > NOTEBOOK_VERSION) {
    throw new NotebookProblem(
      `the notebook in ${folder} is of version ${version}, and this program knows ${NOTEBOOK_VERSION}: open it with a newer Panwarden, or name another folder with --data`,
      2,
    );
  }
}

/** What is to be said of a notebook that was opened for reading, and is not as it should be. */
export function readingRemarks(database: DatabaseSync, folder: string): string[] {
  const version = pragma(database, 'user_version');
  const remarks = isEmptied(folder) ? [emptiedSentence(folder)] : [];
  if (version > NOTEBOOK_VERSION) {
    remarks.push(
      `The notebook in ${folder} is of version ${version}, and this program knows ${NOTEBOOK_VERSION}: it is only read, and what newer versions keep beside it is not shown.`,
    );
  }
  return remarks;
}

/** What is wrong with a notebook that is an empty file, and what to do. */
export function emptiedSentence(folder: string): string {
  return `The notebook in ${folder} is an empty file: something has emptied it. Bring back a copy of it with "panwarden restore FILE", or name another folder with --data.`;
}
