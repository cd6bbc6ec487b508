// Keeps a boil's photos as files beside the database, each on disk before its row is; the caller brings the transaction.
import { createHash } from 'node:crypto';
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { DatabaseSync } from 'node:sqlite';
import type { Photo } from '../core/season/records.ts';
import { boilRow, type BoilRow } from './boil-table.ts';
import { NotebookProblem } from './contract.ts';
import { writeDurably } from './durable-file.ts';

/** The largest photo that is taken. */
const MOST_PHOTO_BYTES = 10 * 1024 * 1024;
const LONGEST_CAPTION = 1000;
const ENDINGS: Record<Photo['type'], string> = { 'image/jpeg': 'jpg', 'image/png': 'png', 'image/webp': 'webp' };

/** Where a notebook’s photos lie in its folder. */
export function photosFolder(folder: string): string {
  return join(folder, 'photos');
}

/** In the order in which they were added. */
export function photosOf(database: DatabaseSync, boil: string): Photo[] {
  return photoRows(database, boilRow(database, boil));
}

/** The same picture again is the same photo, with the new caption. `added` is ISO 8601. Throws NotebookProblem (2). */
export function addPhoto(
  database: DatabaseSync,
  folder: string,
  boil: string,
  { type, caption, added }: Pick<Photo, 'type' | 'caption' | 'added'>,
  bytes: Uint8Array,
): Photo {
  const row = boilRow(database, boil);
  if (!Object.hasOwn(ENDINGS, type)) throw new NotebookProblem(`a photo is JPEG, PNG or WebP, and this is ${type}`, 2);
  if (bytes.length === 0) throw new NotebookProblem('this photo is empty', 2);
  if (bytes.length > MOST_PHOTO_BYTES) {
    throw new NotebookProblem(`this photo has ${megabytes(bytes.length)} MB, and at most 10 are kept`, 2);
  }
  const photo = { id: contentId(bytes), type, bytes: bytes.length, added, caption: caption.slice(0, LONGEST_CAPTION) };
  writeDurably(photoPath(folder, row.id, photo), bytes);
  database
    .prepare(
      `INSERT INTO photo (boil, id, type, bytes, added, caption) VALUES (?, ?, ?, ?, ?, ?)
       ON CONFLICT (boil, id) DO UPDATE SET caption = excluded.caption`,
    )
    .run(row.number, photo.id, photo.type, photo.bytes, photo.added, photo.caption);
  return photo;
}

/** Throws NotebookProblem (2) when there is none, and (1) when its file cannot be read. */
export function readPhoto(
  database: DatabaseSync,
  folder: string,
  boil: string,
  id: string,
): { photo: Photo; bytes: Uint8Array } {
  const row = boilRow(database, boil);
  const photo = foundPhoto(database, row, id);
  const path = photoPath(folder, row.id, photo);
  try {
    return { photo, bytes: readFileSync(path) };
  } catch (error) {
    throw new NotebookProblem(`the photo ${path} cannot be read: ${(error as Error).message}`, 1);
  }
}

/** Forgets the row; gives the file that may go once that is on disk. */
export function dropPhoto(database: DatabaseSync, folder: string, boil: string, id: string): () => void {
  const row = boilRow(database, boil);
  const path = photoPath(folder, row.id, foundPhoto(database, row, id));
  database.prepare('DELETE FROM photo WHERE boil = ? AND id = ?').run(row.number, id);
  return () => rmSync(path, { force: true });
}

/** A sentence for each photo whose file is not there or not as it was kept. */
export function photoFaults(database: DatabaseSync, folder: string, boil: BoilRow): string[] {
  return photoRows(database, boil).flatMap((photo) => {
    const path = photoPath(folder, boil.id, photo);
    try {
      return contentId(readFileSync(path)) === photo.id
        ? []
        : [`Boil ${boil.id}: the photo ${path} is not as it was kept.`];
    } catch (error) {
      return [`Boil ${boil.id}: the photo ${path} cannot be read: ${(error as Error).message}.`];
    }
  });
}

function photoRows(database: DatabaseSync, boil: BoilRow): Photo[] {
  return database
    .prepare('SELECT id, type, bytes, added, caption FROM photo WHERE boil = ? ORDER BY number')
    .all(boil.number)
    .map((row) => ({ ...row }) as unknown as Photo);
}

function foundPhoto(database: DatabaseSync, boil: BoilRow, id: string): Photo {
  const photo = photoRows(database, boil).find((one) => one.id === id);
  if (photo === undefined) throw new NotebookProblem(`the boil "${boil.id}" has no photo "${id}"`, 2);
  return photo;
}

/** Both parts of the path are made by the notebook: letters, digits and hyphens. */
function photoPath(folder: string, boil: string, { id, type }: Pick<Photo, 'id' | 'type'>): string {
  return join(photosFolder(folder), boil, `${id}.${ENDINGS[type]}`);
}

function contentId(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex').slice(0, 16);
}

function megabytes(bytes: number): string {
  return (bytes / 1024 / 1024).toFixed(1);
}
