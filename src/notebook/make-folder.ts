// Makes folders where they are not there yet.
import { mkdirSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';

/**
 * Makes a folder and those above it. Throws what the system says. One after the other: `recursive` of Node 24.21
 * never comes back where a parent exists but takes no folders (below /proc, say), and no signal reaches it there.
 */
export function makeFolder(folder: string): void {
  if (isFolder(folder)) return;
  const parent = dirname(resolve(folder));
  if (parent !== folder) makeFolder(parent);
  try {
    mkdirSync(folder);
  } catch (error) {
    // Another program may have made it in the same moment.
    if (!isFolder(folder)) throw error;
  }
}

/** Whether a folder of this path is there. */
export function isFolder(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
}
