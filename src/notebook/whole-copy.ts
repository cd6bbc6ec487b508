// Copies all that a database has committed into one new file, which is there whole or not at all.
import { renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import type { DatabaseSync } from 'node:sqlite';
import { syncFile, syncFolder } from './durable-file.ts';

/** Whoever writes meanwhile is not held up. Throws what the system says. */
export function wholeCopy(database: DatabaseSync, path: string): void {
  const unfinished = `${path}.unfinished`;
  try {
    // A copy that was stopped may have left one.
    rmSync(unfinished, { force: true });
    database.prepare('VACUUM INTO ?').run(unfinished);
    syncFile(unfinished);
    renameSync(unfinished, path);
  } catch (error) {
    rmSync(unfinished, { force: true });
    throw error;
  }
  syncFolder(dirname(path));
}

/** A moment as it stands in file names, on the clock there: 2027-04-18T073000. */
export function stamp(now: Date): string {
  const two = (part: number) => String(part).padStart(2, '0');
  const day = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  return `${day}T${two(now.getHours())}${two(now.getMinutes())}${two(now.getSeconds())}`;
}
