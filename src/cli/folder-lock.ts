// Takes a data folder for the length of a command, unless a program watches a boil there.
import { lockFolder } from '../notebook/open-notebook.ts';
import { CommandProblem } from './failure.ts';

/** `what` begins the sentence that refuses. Throws CommandProblem (2) when the folder is taken. */
export async function withFolder(folder: string, what: string, work: () => Promise<void>): Promise<void> {
  const lock = lockFolder(folder);
  if (lock === null)
    throw new CommandProblem(`${what} while a boil is watched in ${folder}: stop that program first.`, 2);
  try {
    await work();
  } finally {
    lock.release();
  }
}
