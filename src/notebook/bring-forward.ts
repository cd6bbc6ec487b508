// Gives a database the newest tables, step by step, with a whole copy of an older notebook put beside it first.
import { dirname, join } from 'node:path';
import type { DatabaseSync } from 'node:sqlite';
import { APPLICATION_ID, MIGRATIONS, NOTEBOOK_VERSION } from './schema.ts';
import { stamp, wholeCopy } from './whole-copy.ts';

/** Copies an older notebook, then brings it forward. Throws what the system says; then it is as it was. */
export function bringForwardSafely(database: DatabaseSync, path: string): void {
  const version = pragma(database, 'user_version');
  if (version >= NOTEBOOK_VERSION) return;
  if (version > 0) {
    wholeCopy(database, join(dirname(path), `notebook-of-version-${version}-${stamp(new Date())}.sqlite`));
  }
  bringForward(database);
}

/** All steps are one transaction: a stop in the middle leaves the notebook as it was. */
export function bringForward(database: DatabaseSync): void {
  database.exec('BEGIN IMMEDIATE');
  try {
    // Another program may have done it between our look and our lock.
    for (let version = pragma(database, 'user_version'); version < NOTEBOOK_VERSION; version += 1) {
      database.exec(MIGRATIONS[version] ?? '');
    }
    database.exec(`PRAGMA application_id = ${APPLICATION_ID}`);
    database.exec(`PRAGMA user_version = ${NOTEBOOK_VERSION}`);
    database.exec('COMMIT');
  } catch (error) {
    if (database.isTransaction) database.exec('ROLLBACK');
    throw error;
  }
}

/** A number that SQLite keeps in the file’s head. */
export function pragma(database: DatabaseSync, name: 'user_version' | 'application_id'): number {
  return Number(database.prepare(`PRAGMA ${name}`).get()?.[name]);
}
