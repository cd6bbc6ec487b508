// How long the event loop of this thread is held up by one turn, and what it and its readers hold: memory, descriptors.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

const LOOK_EVERY_MS = 10;

/** The longest turn of this thread's loop so far, in its own processor time, ms; what else the machine does is not counted. */
export function watchTurns(): () => { turnMs: number } {
  let turnMs = 0;
  let before = process.threadCpuUsage();
  const timer = setInterval(() => {
    const { user, system } = process.threadCpuUsage(before);
    turnMs = Math.max(turnMs, (user + system) / 1000);
    before = process.threadCpuUsage();
  }, LOOK_EVERY_MS);
  return () => {
    clearInterval(timer);
    return { turnMs };
  };
}

/** What this process holds on to, bytes: what nobody holds is collected first. */
export function heldBytes(): number {
  setFlagsFromString('--expose-gc');
  (runInNewContext('gc') as () => void)();
  const { heapUsed, external } = process.memoryUsage();
  return heapUsed + external;
}

const descriptorsOf = (pid: number | 'self'): number =>
  existsSync(`/proc/${pid}/fd`) ? readdirSync(`/proc/${pid}/fd`).length : 0;

/** Of this process. */
export const descriptors = (): number => descriptorsOf('self');

/** Of each process that reads a port for this one, by its id. Linux only. */
export function readerDescriptors(): Map<number, number> {
  const pids = readdirSync('/proc/self/task').flatMap((thread) =>
    readFileSync(`/proc/self/task/${thread}/children`, 'utf8').split(' ').filter(Boolean).map(Number),
  );
  const isReader = (pid: number): boolean => readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes('reader.ts');
  return new Map(pids.filter(isReader).map((pid) => [pid, descriptorsOf(pid)]));
}
