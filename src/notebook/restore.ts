// Puts a copy of the notebook in the place of the present one, which is set aside.
import { copyFileSync, existsSync, renameSync } from 'node:fs';
import { dirname } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { copyPhotos } from './backup.ts';
import { pragma } from './bring-forward.ts';
import { NotebookProblem } from './contract.ts';
import { prepareFolder } from './database.ts';
import { syncFile } from './durable-file.ts';
import { KeptCount } from './kept-count.ts';
import { photosFolder } from './photos.ts';
import { APPLICATION_ID, NOTEBOOK_VERSION } from './schema.ts';
import { setAside, takePlace, waitingPath } from './set-aside.ts';

/**
 * Nobody may use the folder's notebook meanwhile. Gives the path under which the one before is kept, or null when
 * there was none. Throws NotebookProblem when the copy is none; then nothing was changed.
 */
export function restoreNotebook(folder: string, file: string): string | null {
  checkCopy(file);
  prepareFolder(folder);
  const unfinished = `${waitingPath(folder)}.unfinished`;
  try {
    copyPhotos(photosFolder(dirname(file)), photosFolder(folder));
    copyFileSync(file, unfinished);
    syncFile(unfinished);
    renameSync(unfinished, waitingPath(folder));
    const aside = setAside(folder, 'replaced');
    takePlace(folder);
    new KeptCount(folder).forget();
    return aside;
  } catch (error) {
    throw new NotebookProblem(`${file} could not be brought back into ${folder}: ${(error as Error).message}`, 1);
  }
}

function checkCopy(file: string): void {
  const refuse = (why: string) => new NotebookProblem(`${file} cannot be brought back: ${why}`, 2);
  if (!existsSync(file)) throw refuse('there is no such file');
  let why: string | null;
  try {
    const database = new DatabaseSync(file, { readOnly: true });
    try {
      why = whyNoCopy(database);
    } finally {
      database.close();
    }
  } catch (error) {
    why = `it cannot be read (${(error as Error).message})`;
  }
  if (why !== null) throw refuse(why);
}

function whyNoCopy(database: DatabaseSync): string | null {
  if (pragma(database, 'application_id') !== APPLICATION_ID) return 'it is no copy of a notebook';
  if (pragma(database, 'user_version') > NOTEBOOK_VERSION) return 'a newer Panwarden has made it';
  const answer = String(database.prepare('PRAGMA quick_check(1)').get()?.['quick_check']);
  return answer === 'ok' ? null : `it is damaged (${answer})`;
}
