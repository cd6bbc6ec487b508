// Runs the program itself on a data folder of its own, for tests that go through the real page.
import { spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

export const PROJECT = resolve(fileURLToPath(new URL('../..', import.meta.url)));
const START_MS = 60_000;

export interface Program {
  url: string;
  stop(): Promise<void>;
}

/** Starts `panwarden …` and resolves when it serves its screen; rejects with what it said when it does not. */
export async function startProgram(command: string[]): Promise<Program> {
  const data = await mkdtemp(join(tmpdir(), 'tarn-hollow-'));
  const child = spawn(process.execPath, ['src/cli/main.ts', ...command, '--data', data], {
    cwd: PROJECT,
    env: { ...process.env, DISPLAY: '', WAYLAND_DISPLAY: '' },
  });
  const closed = new Promise<void>((done) => child.once('close', () => done()));
  const url = await new Promise<string>((found, failed) => {
    let said = '';
    const hear = (chunk: Buffer): void => {
      said += chunk.toString();
      const address = /http:\/\/127\.0\.0\.1:\d+\/#token=[\w-]+/.exec(said)?.[0];
      if (address !== undefined) found(address);
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.once('close', () => failed(new Error(`The program ended before it served: ${said}`)));
    setTimeout(() => failed(new Error(`The program did not serve in time: ${said}`)), START_MS).unref();
  });
  return {
    url,
    async stop() {
      child.kill('SIGTERM');
      await closed;
      await rm(data, { recursive: true, force: true });
    },
  };
}
