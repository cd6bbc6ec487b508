// How a command ends when it cannot do its work: one sentence on standard error, and the exit code that belongs to it.
import { readFile } from 'node:fs/promises';

/** 2 for bad input or a bad option, 1 for anything else. */
export class CommandProblem extends Error {
  readonly code: 1 | 2;
  constructor(sentence: string, code: 1 | 2) {
    super(sentence);
    this.name = 'CommandProblem';
    this.code = code;
  }
}

/** The exit code that a thrown error stands for; problems of notebook and codec carry their own. */
export function exitCodeOf(error: unknown): 1 | 2 {
  const code = (error as { code?: unknown } | null)?.code;
  return code === 2 ? 2 : 1;
}

/** What the system says of a file, in words. */
export function fileTrouble(path: string, error: unknown): CommandProblem {
  const words: Record<string, string> = {
    ENOENT: 'there is no such file',
    EISDIR: 'it is a folder',
    ENOTDIR: 'a part of its path is no folder',
    EACCES: 'it may not be read or written by you',
    EPERM: 'it may not be read or written by you',
    ENOSPC: 'the disk is full',
    EROFS: 'the disk can only be read',
  };
  const { code, message } = error as NodeJS.ErrnoException;
  return new CommandProblem(`${path}: ${words[code ?? ''] ?? message}.`, 2);
}

/** The whole text of a file; throws a CommandProblem (2) that names it when it cannot be read. */
export async function textOf(file: string): Promise<string> {
  try {
    return await readFile(file, 'utf8');
  } catch (error) {
    throw fileTrouble(file, error);
  }
}
