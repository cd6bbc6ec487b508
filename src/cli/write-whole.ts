// Writes files so that each is there whole or not at all.
import { createWriteStream } from 'node:fs';
import { rename, rm, stat } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { NewFile } from '../host/export/new-file.ts';
import { fileTrouble } from './failure.ts';

/** Files of these names are replaced only when all of the new ones are there. Throws CommandProblem. */
export async function writeWhole(files: readonly NewFile[]): Promise<void> {
  const written = files.map((file) => ({ ...file, unfinished: `${file.path}.${process.pid}.unfinished` }));
  for (const { path } of files) await refuseFolder(path);
  try {
    for (const { path, pieces, unfinished } of written) {
      await pipeline(Readable.from(pieces), createWriteStream(unfinished, { flush: true })).catch((error: unknown) => {
        throw troubleWith(path, error);
      });
    }
    for (const { path, unfinished } of written) {
      await rename(unfinished, path).catch((error: unknown) => {
        throw troubleWith(path, error);
      });
    }
  } finally {
    for (const { unfinished } of written) await rm(unfinished, { force: true });
  }
}

/** Found before anything is replaced, for the second of two files must not fail behind the first. */
async function refuseFolder(path: string): Promise<void> {
  const found = await stat(path).catch(() => null);
  if (found?.isDirectory() === true) throw fileTrouble(path, { code: 'EISDIR' });
}

function troubleWith(path: string, error: unknown): unknown {
  return (error as NodeJS.ErrnoException).syscall === undefined ? error : fileTrouble(path, error);
}
