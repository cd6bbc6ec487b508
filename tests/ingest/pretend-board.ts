// A board on a cable for tests: a pseudo terminal made by socat that can be fed, pulled and plugged in again.
import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { until } from './until.ts';

export interface PretendBoard {
  /** The path that a program opens, there only while the board is plugged in: a link, as by-id names are. */
  readonly path: string;
  /** Under the name that it had, unless another is said. */
  plugIn(name?: string): Promise<void>;
  /** The cable is pulled: the port is gone in the middle of whatever it did. */
  pull(): Promise<void>;
  /** Resolves when the system has taken all of it. */
  send(bytes: string | Uint8Array): Promise<void>;
  /** Pulls the cable and clears up. */
  remove(): Promise<void>;
}

/** Fails with a sentence where socat is not installed. */
export function pretendBoard(): PretendBoard {
  if (spawnSync('socat', ['-V']).error) {
    throw new Error('These tests need socat for pseudo terminals: install it, on Debian with "apt-get install socat".');
  }
  const folder = mkdtempSync(join(tmpdir(), 'pretend-board-'));
  let path = join(folder, 'port');
  let socat: ChildProcess | null = null;

  const pull = async (): Promise<void> => {
    const running = socat;
    socat = null;
    if (running === null) return;
    const exited = new Promise((resolve) => running.once('exit', resolve));
    running.kill('SIGKILL');
    await exited;
    // A killed socat leaves its link behind; udev does not.
    rmSync(path, { force: true });
  };

  return {
    get path() {
      return path;
    },
    pull,
    async plugIn(name) {
      if (name !== undefined) path = join(folder, name);
      const started = spawn('socat', ['-,ignoreeof', `pty,raw,echo=0,link=${path}`], {
        stdio: ['pipe', 'ignore', 'ignore'],
      });
      // What was still to be sent when the cable was pulled is lost, as on a real one.
      started.stdin.on('error', () => undefined);
      socat = started;
      await until('socat to make the pseudo terminal', () => existsSync(path));
    },
    async send(bytes) {
      const stdin = socat?.stdin;
      if (!stdin) throw new Error('the pretend board is not plugged in');
      await new Promise<void>((resolve) => stdin.write(bytes, 'latin1', () => resolve()));
    },
    async remove() {
      await pull();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
