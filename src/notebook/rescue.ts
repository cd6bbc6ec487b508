// Opens the notebook of a live command: a damaged one is set aside, a new one begun at once, and what can be read is salvaged.
import { statSync } from 'node:fs';
import { basename } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { backupsIn, usualBackupFolder } from './backup.ts';
import type { Notebook } from './contract.ts';
import { makeWaiting, prepareFolder } from './database.ts';
import { openNotebook } from './open-notebook.ts';
import { DamagedNotebook, damaged } from './problems.ts';
import { salvageInto, type Salvaged } from './salvage.ts';
import { databasePath, setAside, takePlace } from './set-aside.ts';

/** Looking through a file takes about a second for so many bytes; in a larger one damage shows when it is read. */
const MOST_LOOKED_THROUGH = 256 * 1024 * 1024;
const MOST_NAMED = 20;

/** Throws NotebookProblem when the folder cannot be used, or a newer program keeps the notebook. */
export function openForWatching(folder: string): { notebook: Notebook; told: string[] } {
  try {
    lookThrough(folder);
    const notebook = openNotebook(folder);
    return { notebook, told: [...notebook.remarks] };
  } catch (error) {
    if (!(error instanceof DamagedNotebook)) throw error;
    return rescued(folder, error.what);
  }
}

/** The same for a notebook in which `what` turned out to be damaged while it was used; close it first. */
export function rescued(folder: string, what: string): { notebook: Notebook; told: string[] } {
  prepareFolder(folder);
  const path = databasePath(folder);
  let salvaged: Salvaged[] | null = null;
  makeWaiting(folder, (database) => (salvaged = salvageInto(database, path, folder)));
  const aside = setAside(folder, 'damaged');
  takePlace(folder);
  const notebook = openNotebook(folder);
  const name = aside === null ? 'another name' : basename(aside);
  const told = [
    `The notebook in ${folder} was damaged (${what}). It was set aside as ${name}, nothing of it was deleted, and a new one was begun.`,
    ...salvageSentences(salvaged),
    ...copySentences(folder),
  ];
  // What was salvaged is told here, and better.
  return { notebook, told };
}

function lookThrough(folder: string): void {
  const path = databasePath(folder);
  const size = statSync(path, { throwIfNoEntry: false })?.size ?? 0;
  if (size === 0 || size > MOST_LOOKED_THROUGH) return;
  let answer: string;
  try {
    // Not for reading only: a write-ahead file that a stop has left is brought in on the way.
    const database = new DatabaseSync(path, { timeout: 150 });
    try {
      answer = String(database.prepare('PRAGMA quick_check(1)').get()?.['quick_check']);
    } finally {
      database.close();
    }
  } catch {
    // Opening it properly says what is wrong.
    return;
  }
  if (answer !== 'ok') throw damaged(folder, answer.replaceAll(/\s+/gu, ' '));
}

function salvageSentences(salvaged: Salvaged[] | null): string[] {
  if (salvaged === null || salvaged.length === 0) return ['Nothing could be read of the one that was set aside.'];
  const boils = salvaged.slice(0, MOST_NAMED).map(({ boil, kept, read }) => {
    return read >= kept ? `${boil} with all ${read} entries` : `${boil} with ${read} of ${kept} entries`;
  });
  const more = salvaged.length > MOST_NAMED ? ` and ${salvaged.length - MOST_NAMED} more` : '';
  return [`Salvaged into the new one: ${boils.join(', ')}${more}.`];
}

function copySentences(folder: string): string[] {
  const newest = backupsIn(usualBackupFolder(folder))[0];
  return newest === undefined ? [] : [`The newest copy is ${newest}: "panwarden restore ${newest}" brings it back.`];
}
