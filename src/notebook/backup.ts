// Makes dated, whole copies of the notebook in another folder, and keeps only the newest of them there.
import { copyFileSync, existsSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import type { DatabaseSync } from 'node:sqlite';
import { makeFolder } from './make-folder.ts';
import { syncFile } from './durable-file.ts';
import { photosFolder } from './photos.ts';
import { stamp, wholeCopy } from './whole-copy.ts';

const NAME = /^panwarden-\d{4}-\d\d-\d\dT\d{6}(?:-\d+)?\.sqlite$/u;
const UNFINISHED = /^panwarden-.*\.sqlite\.unfinished(?:-journal)?$/u;

/** Where copies go when nobody names a folder. */
export function usualBackupFolder(folder: string): string {
  return join(folder, 'backups');
}

/** The copies in a folder, newest first; none where there is no folder. */
export function backupsIn(folder: string): string[] {
  if (!existsSync(folder)) return [];
  const names = readdirSync(folder).filter((name) => NAME.test(name));
  return names.toSorted(byAge).map((name) => join(folder, name));
}

/**
 * Copies everything that is committed, and the photos that are not there yet, into `to`; whoever writes meanwhile is
 * not held up. `now` dates the copy. Only the newest `keep` copies stay. Returns the copy's path; throws what the
 * system says.
 */
export function backUp(database: DatabaseSync, folder: string, to: string, keep: number, now: Date): string {
  makeFolder(to);
  for (const name of readdirSync(to)) if (UNFINISHED.test(name)) rmSync(join(to, name));
  copyPhotos(photosFolder(folder), photosFolder(to));
  const path = freePath(to, now);
  wholeCopy(database, path);
  for (const old of backupsIn(to).slice(keep)) if (old !== path) rmSync(old);
  return path;
}

/** Photos never change under their names: those that are there need no second copy. */
export function copyPhotos(from: string, to: string): void {
  if (!existsSync(from)) return;
  for (const entry of readdirSync(from, { recursive: true, withFileTypes: true })) {
    const path = join(entry.parentPath, entry.name);
    const copy = join(to, relative(from, path));
    if (!entry.isFile() || entry.name.endsWith('.unfinished') || existsSync(copy)) continue;
    makeFolder(dirname(copy));
    copyFileSync(path, `${copy}.unfinished`);
    syncFile(`${copy}.unfinished`);
    renameSync(`${copy}.unfinished`, copy);
  }
}

function freePath(folder: string, now: Date): string {
  const name = `panwarden-${stamp(now)}`;
  let path = join(folder, `${name}.sqlite`);
  for (let count = 2; existsSync(path); count += 1) path = join(folder, `${name}-${count}.sqlite`);
  return path;
}

/** Newest first: by the date in the name, then by the number behind it. */
function byAge(a: string, b: string): number {
  return new Intl.Collator('en', { numeric: true }).compare(b.replace('.sqlite', ''), a.replace('.sqlite', ''));
}
