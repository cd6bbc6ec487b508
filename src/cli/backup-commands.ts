// The commands `backup` and `restore`: a dated copy of the notebook, and the notebook of a copy.
import { basename } from 'node:path';
import { backupFolder, KEPT_COPIES } from '../host/backup-keeper.ts';
import { dataFolder } from '../host/data-folder.ts';
import type { Notebook } from '../notebook/contract.ts';
import { openNotebook } from '../notebook/open-notebook.ts';
import { restoreNotebook } from '../notebook/restore.ts';
import { keptSettings } from '../host/kept-settings.ts';
import { withFolder } from './folder-lock.ts';

/** May run while a boil is watched. */
export async function backup(options: { data?: string; to?: string }): Promise<void> {
  const folder = dataFolder(options.data);
  const notebook = openNotebook(folder, { readOnly: true });
  try {
    const path = notebook.backup(options.to ?? chosenFolder(notebook), KEPT_COPIES);
    process.stdout.write(`A copy of the notebook is in ${path}.\n`);
  } finally {
    notebook.close();
  }
}

/** A copy that fails is said on standard error, and stops nothing. */
export function copyAfterBoil(notebook: Notebook): void {
  try {
    notebook.backup(chosenFolder(notebook), KEPT_COPIES);
  } catch (error) {
    process.stderr.write(`The boil is over and kept, but ${(error as Error).message}.\n`);
  }
}

function chosenFolder(notebook: Notebook): string {
  const settings = keptSettings(notebook);
  return backupFolder(notebook.folder, settings.backup_folder);
}

/** Refused while a boil is watched: that program would go on writing into what was set aside. */
export async function restore(file: string, options: { data?: string }): Promise<void> {
  const folder = dataFolder(options.data);
  await withFolder(folder, 'A copy cannot be brought back', async () => {
    const aside = restoreNotebook(folder, file);
    const notebook = openNotebook(folder);
    const { length } = notebook.boils();
    notebook.close();
    const before = aside === null ? '' : ` The one before is set aside as ${basename(aside)}.`;
    process.stdout.write(
      `The notebook of ${file} is back in ${folder}, with ${length} ${length === 1 ? 'boil' : 'boils'}.${before}\n`,
    );
  });
}
