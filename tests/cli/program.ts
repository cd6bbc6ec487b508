// Runs the program itself for the tests: a command to its end, or one that lives on and is spoken to.
import { spawn, spawnSync } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { createInterface } from 'node:readline';
import { text } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';

/** Which copy of the program is run; the test of a package puts in its own. */
export const copy = { main: fileURLToPath(new URL('../../src/cli/main.ts', import.meta.url)) };
const LONGEST_MS = 30_000;

export type Line = Record<string, unknown>;

const linesOf = (stdout: string): Line[] =>
  stdout
    .trimEnd()
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as Line);

/** Runs a command to its end. */
export function panwarden(...options: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [copy.main, ...options], {
    encoding: 'utf8',
    timeout: LONGEST_MS,
    killSignal: 'SIGKILL',
    maxBuffer: 100_000_000,
  });
  return { status, stdout, stderr, lines: () => linesOf(stdout) };
}

/** The same for tests that run beside each other. */
export async function ranPanwarden(...options: string[]) {
  const started = spawn(process.execPath, [copy.main, ...options], { timeout: LONGEST_MS, killSignal: 'SIGKILL' });
  const ended = new Promise<number | null>((resolve) => started.once('close', resolve));
  const [stdout, stderr] = await Promise.all([text(started.stdout), text(started.stderr)]);
  return { status: await ended, stdout, stderr, lines: () => linesOf(stdout) };
}

/** A command that goes on; its JSON lines can be waited for. */
export class Program {
  readonly lines: Line[] = [];
  /** The same as they were printed. */
  readonly texts: string[] = [];
  stderr = '';
  readonly process: ChildProcess;
  readonly ended: Promise<number | null>;
  #waiting: (() => void)[] = [];

  constructor(...options: string[]) {
    this.process = spawn(process.execPath, [copy.main, ...options], { stdio: ['pipe', 'pipe', 'pipe'] });
    const { stdout, stderr } = this.process;
    if (stdout === null || stderr === null) throw new Error('no pipes');
    createInterface({ input: stdout }).on('line', (line) => {
      this.texts.push(line);
      this.lines.push(JSON.parse(line) as Line);
      this.#look();
    });
    stderr.on('data', (chunk: Buffer) => {
      this.stderr += chunk.toString();
      this.#look();
    });
    this.ended = new Promise((resolve) => this.process.once('close', (code) => resolve(code)));
    void this.ended.then(() => this.#look());
  }

  say(value: unknown): void {
    this.process.stdin?.write(`${typeof value === 'string' ? value : JSON.stringify(value)}\n`);
  }

  /** The first line, from the `from`th on, that fits. */
  async line(fits: (line: Line) => boolean, from = 0): Promise<Line> {
    await this.until(() => this.lines.slice(from).some(fits));
    return this.lines.slice(from).find(fits) ?? {};
  }

  /** Looks again whenever the program says something; fails when it has ended or says nothing for too long. */
  async until(isSo: () => boolean): Promise<void> {
    while (!isSo()) {
      if (this.process.exitCode !== null) throw new Error(`the program ended: ${this.stderr}`);
      let timer: NodeJS.Timeout | undefined;
      await new Promise<void>((resolve, reject) => {
        this.#waiting.push(resolve);
        timer = setTimeout(
          () => reject(new Error(`waited in vain; it said ${JSON.stringify(this.lines.slice(-5))} ${this.stderr}`)),
          LONGEST_MS,
        );
      });
      clearTimeout(timer);
    }
  }

  async kill(signal: NodeJS.Signals): Promise<number | null> {
    this.process.kill(signal);
    return this.ended;
  }

  #look(): void {
    const waiting = this.#waiting;
    this.#waiting = [];
    for (const resolve of waiting) resolve();
  }
}

/** A folder of its own, taken away at the end. */
export function ownFolder() {
  const folder = mkdtempSync(join(tmpdir(), 'panwarden-'));
  return {
    folder,
    path: (name: string) => join(folder, name),
    write(name: string, value: unknown): string {
      const path = join(folder, name);
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(path, typeof value === 'string' ? value : JSON.stringify(value));
      return path;
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
