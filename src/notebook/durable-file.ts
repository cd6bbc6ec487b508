// Writes a file so that it is there, whole, after a power cut, or not there at all.
import { closeSync, fsyncSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';
import { makeFolder } from './make-folder.ts';

/** Under another name first; in its place only when all of it is on disk. Makes the folder. Throws what the system says. */
export function writeDurably(path: string, bytes: Uint8Array): void {
  makeFolder(dirname(path));
  const unfinished = `${path}.unfinished`;
  try {
    const file = openSync(unfinished, 'w');
    try {
      for (let written = 0; written < bytes.length;) written += writeSync(file, bytes, written);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(unfinished, path);
  } catch (error) {
    rmSync(unfinished, { force: true });
    throw error;
  }
  syncFolder(dirname(path));
}

/** What other code has written into the file is on disk when this returns. */
export function syncFile(path: string): void {
  // Opened for writing, as Windows asks for that before it syncs.
  const file = openSync(path, 'r+');
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** A file's name is on disk only when its folder is. Windows has no such call and needs none. */
export function syncFolder(folder: string): void {
  if (process.platform === 'win32') return;
  const opened = openSync(folder, 'r');
  try {
    fsyncSync(opened);
  } finally {
    closeSync(opened);
  }
}
