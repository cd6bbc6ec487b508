// Opens a host on a data folder: takes the folder's lock, and sets a damaged notebook aside.
import { NotebookProblem } from '../notebook/contract.ts';
import { DamagedNotebook, lockFolder, watcherOf } from '../notebook/open-notebook.ts';
import type { FolderLock } from '../notebook/open-notebook.ts';
import { openForWatching, rescued } from '../notebook/rescue.ts';
import { Host } from './host.ts';
import type { HostOptions } from './host.ts';

/**
 * Takes the folder for this program and goes on with the boil that was running in it. Throws NotebookProblem (2)
 * when another program watches there, when the folder cannot be used, or when a boil of another setup runs.
 */
export async function createHost(options: HostOptions): Promise<Host> {
  const lock = lockFolder(options.folder);
  if (lock === null) {
    throw new NotebookProblem(
      `another program watches a boil in ${options.folder}${addressOf(options.folder)}: use that one, close it first, or name another folder with --data`,
      2,
    );
  }
  try {
    if (options.notebook !== undefined) return new Host(options, lock, options.notebook);
    return hostOf(options, lock, openForWatching(options.folder));
  } catch (error) {
    lock.release();
    throw error;
  }
}

/** Damage can show only when the boil that was running is read: then too the notebook is set aside. */
function hostOf(options: HostOptions, lock: FolderLock, { notebook, told }: ReturnType<typeof openForWatching>): Host {
  try {
    const host = new Host(options, lock, notebook);
    for (const sentence of told) host.say(sentence);
    return host;
  } catch (error) {
    notebook.close();
    if (!(error instanceof DamagedNotebook) || told.length > 0) throw error;
    return hostOf(options, lock, rescued(options.folder, error.what));
  }
}

/** Where the other program's screen is, as far as it has said so. */
function addressOf(folder: string): string {
  const url = watcherOf(folder)?.url;
  return url === undefined ? '' : `, and its screen is at ${url}`;
}
