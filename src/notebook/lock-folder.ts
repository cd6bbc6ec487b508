// Lets one program at a time write boils in a folder, by a lock that dies with the program however it stops.
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { prepareFolder } from './database.ts';
import { folderProblem, isBusy } from './problems.ts';

export interface FolderLock {
  release(): void;
}

/** Keeps the garbage collector from closing a lock, and so giving it back, while its owner has forgotten it. */
const heldLocks = new Set<DatabaseSync>();

/**
 * The folder's lock, or null when another program (or another part of this one) holds it.
 * The system takes it back when the process ends, so no stale lock is ever left.
 * Throws NotebookProblem (2) when the folder cannot be used.
 */
export function lockFolder(folder: string): FolderLock | null {
  prepareFolder(folder);
  let database: DatabaseSync | null = null;
  try {
    // A file of its own: a lock on the notebook itself would shut out its readers.
    database = new DatabaseSync(join(folder, 'watching.lock'), { timeout: 0 });
    database.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    database?.close();
    if (isBusy(error)) return null;
    throw folderProblem(folder, error);
  }
  const held = database;
  heldLocks.add(held);
  return {
    release() {
      if (heldLocks.delete(held)) held.close();
    },
  };
}
