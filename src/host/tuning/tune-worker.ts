// A worker thread that tunes one boil after the other, each read from the notebook by itself.
import { parentPort, workerData } from 'node:worker_threads';
import { openNotebook } from '../../notebook/open-notebook.ts';
import { tuneBoil } from './tune-boil.ts';
import type { BoilTuned, SettingsFile } from './tune-boil.ts';

export interface TuneWork {
  folder: string;
  files: readonly SettingsFile[];
}

/** What the thread answers to the id of a boil. */
export type TuneAnswer = ({ boil: string } & BoilTuned) | { boil: string; problem: string };

const { folder, files } = workerData as TuneWork;
const notebook = openNotebook(folder, { readOnly: true });

parentPort?.on('message', (boil: string) => parentPort?.postMessage(answerFor(boil)));

function answerFor(boil: string): TuneAnswer {
  try {
    const kept = {
      boil,
      header: notebook.header(boil),
      texts: notebook.entries(boil),
      noUse: notebook.page(boil).no_use ?? [],
    };
    return { boil, ...tuneBoil(kept, files) };
  } catch (error) {
    return { boil, problem: error instanceof Error ? error.message : String(error) };
  }
}
