// Starts the processes that read ports as the window's runtime allows it: by a fuse it cannot start itself as Node.
import { utilityProcess } from 'electron';
import type { FromReader } from '../src/ingest/reader-messages.ts';
import { ReaderPool } from '../src/ingest/reader-pool.ts';
import { READER, ReaderProcess, type StartReader } from '../src/ingest/reader-process.ts';

export const startReader =
  (file = READER): StartReader =>
  (hear, gone) => {
    const child = utilityProcess.fork(file, [], {
      serviceName: 'Panwarden port reader',
      stdio: 'ignore',
      execArgv: ['--max-old-space-size=64'],
    });
    let { pid } = child;
    let isEnded = false;
    const end = (): void => {
      // Its own kill() only asks, and a read that never ends does not listen.
      if (pid !== undefined) process.kill(pid, 'SIGKILL');
    };
    child.on('spawn', () => {
      ({ pid } = child);
      if (isEnded) end();
    });
    child.on('message', (message: FromReader) => hear(message));
    child.on('exit', () => {
      pid = undefined;
      gone();
    });
    return {
      say: (message) => child.postMessage(message),
      kill: () => {
        isEnded = true;
        end();
      },
    };
  };

/** Opens a port in a process of its own; only once the runtime is ready. */
export const openInReader = new ReaderPool(() => new ReaderProcess(startReader())).open;
