// Lets one program at a time write boils in a folder, by a lock that dies with the program however it stops.
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { z } from 'zod';
import { prepareFolder } from './database.ts';
import { folderProblem, isBusy } from './problems.ts';

export interface FolderLock {
  /** Leaves word beside the lock where this program's screen is. */
  tell(url: string): void;
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
  // A program that was killed has left its own.
  rmSync(watcherPath(folder), { force: true });
  return {
    tell(url) {
      try {
        // The address opens the screen: it is for this user alone.
        writeFileSync(watcherPath(folder), JSON.stringify({ pid: process.pid, url }), { mode: 0o600 });
      } catch {
        // Only a convenience is lost.
      }
    },
    release() {
      if (!heldLocks.delete(held)) return;
      rmSync(watcherPath(folder), { force: true });
      held.close();
    },
  };
}

/** What the program that holds the folder has said of itself; null when it has said nothing. */
export function watcherOf(folder: string): { pid: number; url: string } | null {
  try {
    return watcherSchema.parse(JSON.parse(readFileSync(watcherPath(folder), 'utf8')));
  } catch {
    return null;
  }
}

const watcherSchema = z.object({ pid: z.number(), url: z.string() });

function watcherPath(folder: string): string {
  return join(folder, 'watching.json');
}
