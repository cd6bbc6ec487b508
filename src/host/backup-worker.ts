// A thread that makes one copy of the notebook, so that watching never waits for it.
import { parentPort, workerData } from 'node:worker_threads';
import { openNotebook } from '../notebook/open-notebook.ts';

export interface BackupWork {
  folder: string;
  to: string;
  keep: number;
}

const { folder, to, keep } = workerData as BackupWork;
const notebook = openNotebook(folder, { readOnly: true });
try {
  parentPort?.postMessage(notebook.backup(to, keep));
} finally {
  notebook.close();
}
