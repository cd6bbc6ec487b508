// A pair of pseudo terminals that stands in for a board, and a feeder that writes lines into its far end.
import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { existsSync, watch, writeFileSync } from 'node:fs';
import { basename, dirname } from 'node:path';

export interface Board {
  /** What the program opens. */
  path: string;
  feed(line: string): void;
  pull(): Promise<void>;
}

/** Resolves once both ends are there. */
export async function plugIn(path: string): Promise<Board> {
  const far = `${path}-far`;
  const socat = spawn('socat', [`pty,raw,echo=0,link=${path}`, `pty,raw,echo=0,link=${far}`], { stdio: 'ignore' });
  await Promise.all([appears(path), appears(far)]);
  return { path, feed: (line) => writeFileSync(far, `${line}\n`), pull: () => gone(socat) };
}

function appears(path: string): Promise<void> {
  return new Promise((resolve) => {
    const look = (): void => {
      if (!existsSync(path)) return;
      watcher.close();
      resolve();
    };
    const watcher = watch(dirname(path), (_event, name) => name === basename(path) && look());
    look();
  });
}

function gone(process: ChildProcess): Promise<void> {
  return new Promise((resolve) => {
    process.once('close', () => resolve());
    process.kill('SIGTERM');
  });
}
