// Makes a dated copy of the notebook after each boil; a copy that fails is said, and stops nothing.
import { accessSync, constants, existsSync, mkdirSync, rmdirSync } from 'node:fs';
import { dirname, isAbsolute } from 'node:path';
import { Worker } from 'node:worker_threads';
import { usualBackupFolder } from '../notebook/backup.ts';
import { programFile } from '../program/program-files.ts';
import type { BackupWork } from './backup-worker.ts';

/** Copies of the notebook that are left in a folder. */
export const KEPT_COPIES = 10;

/** `chosen` is the person's own folder, empty where none is named. */
export function backupFolder(folder: string, chosen: string): string {
  return chosen.trim() === '' ? usualBackupFolder(folder) : chosen;
}

/**
 * Why no copy could go into the folder that a person names, in a sentence; null where one can, as far as can be seen now. A
 * folder that is not there is made at the first copy, where the one above it is there.
 */
export function folderRefusal(chosen: string): string | null {
  if (chosen.trim() === '') return null;
  if (!isAbsolute(chosen))
    return `Please name the whole way to the folder for copies: ${chosen} is only a part of one.`;
  if (existsSync(chosen) || existsSync(dirname(chosen)))
    return canHold(chosen) ? null : `No copy can be put into ${chosen}: please name a folder that can be written to.`;
  return `There is no folder ${dirname(chosen)} to put copies in: make it, or plug in the disk or stick that it is on.`;
}

/** Tried rather than looked up: under /proc, or on a stick that is locked, only the trial tells. */
function canHold(folder: string): boolean {
  try {
    if (existsSync(folder)) accessSync(`${folder}/`, constants.W_OK);
    else {
      mkdirSync(folder);
      rmdirSync(folder);
    }
    return true;
  } catch {
    return false;
  }
}

export class BackupKeeper {
  readonly #folder: string;
  readonly #chosen: () => string;
  readonly #say: (sentence: string) => void;
  #running: Promise<void> = Promise.resolve();
  /** The live boil that ended last, until something was kept on its page. */
  #endedLast: string | null = null;

  /** `chosen` tells the person's own folder for copies, empty where none is named. */
  constructor(folder: string, chosen: () => string, say: (sentence: string) => void) {
    this.#folder = folder;
    this.#chosen = chosen;
    this.#say = say;
  }

  /** A live boil is over: it is copied. */
  boilEnded(boil: string): void {
    this.#endedLast = boil;
    this.#copy();
  }

  /** What came of a boil was kept: copied once for each boil; what is changed later is in the copy after the next one. */
  pageKept(boil: string): void {
    if (boil !== this.#endedLast) return;
    this.#endedLast = null;
    this.#copy();
  }

  /** One after the other; never throws. */
  #copy(): void {
    const to = backupFolder(this.#folder, this.#chosen());
    this.#running = this.#running
      .then(() => copied({ folder: this.#folder, to, keep: KEPT_COPIES }))
      .catch((error: unknown) => {
        this.#say(`The boil is kept, but ${(error as Error).message}. Is the disk or stick there, and is there room?`);
      });
  }

  /** Resolves when the copies that were begun are made or have failed. */
  settled(): Promise<void> {
    return this.#running;
  }
}

function copied(work: BackupWork): Promise<void> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(programFile('./backup-worker', import.meta.url), { workerData: work });
    worker.once('message', () => resolve());
    worker.once('error', reject);
    worker.once('exit', () => reject(new Error('no copy of the notebook could be made')));
  });
}
