// Puts a notebook's files aside under a dated name, all of them together, and another notebook in their place; deletes nothing.
import { existsSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import { syncFolder } from './durable-file.ts';
import { stamp } from './whole-copy.ts';

/** SQLite's own files beside the database; commits may stand in the first alone. */
const BESIDE = ['-wal', '-shm'];

/** Where a notebook’s database lies in its folder. */
export function databasePath(folder: string): string {
  return join(folder, 'notebook.sqlite');
}

/** A notebook that is complete and waits to take the place of one that is set aside. */
export function waitingPath(folder: string): string {
  return join(folder, 'notebook.sqlite.waiting');
}

/** Takes the notebook's files away under a dated name with `word` in it; gives the new path, or null when none was there. */
export function setAside(folder: string, word: 'damaged' | 'replaced', now = new Date()): string | null {
  const path = databasePath(folder);
  const present = ['', ...BESIDE].filter((ending) => existsSync(`${path}${ending}`));
  if (present.length === 0) return null;
  const aside = freePath(folder, `notebook-${word}-${stamp(now)}`);
  for (const ending of present) renameSync(`${path}${ending}`, `${aside}${ending}`);
  syncFolder(folder);
  return aside;
}

/**
 * The notebook that waits takes the place, where it is free; also after a stop in the middle. Files of SQLite without
 * their database go aside first: they would be read into the new one.
 */
export function takePlace(folder: string): void {
  if (existsSync(databasePath(folder))) return;
  setAside(folder, 'damaged');
  if (!existsSync(waitingPath(folder))) return;
  renameSync(waitingPath(folder), databasePath(folder));
  syncFolder(folder);
}

function freePath(folder: string, name: string): string {
  let path = join(folder, `${name}.sqlite`);
  for (let count = 2; ['', ...BESIDE].some((ending) => existsSync(`${path}${ending}`)); count += 1) {
    path = join(folder, `${name}-${count}.sqlite`);
  }
  return path;
}
