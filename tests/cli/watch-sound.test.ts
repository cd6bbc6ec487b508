// What `watch` without a screen does for an ear: a real terminal's bell rings, and without a terminal it says that nothing can sound.
import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { ownFolder } from './program.ts';

const MAIN = fileURLToPath(new URL('../../src/cli/main.ts', import.meta.url));
const BELL = '\u0007';

let own: ReturnType<typeof ownFolder>;
let running: ChildProcess;
let said: string;

beforeEach(() => {
  own = ownFolder();
  said = '';
});
afterEach(async () => {
  if (running.exitCode === null) {
    const ended = new Promise((resolve) => running.once('close', resolve));
    running.kill('SIGTERM');
    await ended;
  }
  own.remove();
});

/** A pan whose board is not there: a high call at once. */
function options(...more: string[]): string[] {
  const setup = own.write('setup.json', {
    ports: [{ id: 'A', path: own.path('none') }],
    probes: [{ id: 'A/1', port: 'A', channel: 'T1' }],
    pans: [{ id: 'p1', name: 'Back pot', probe: 'A/1' }],
  });
  return [MAIN, 'watch', '--data', own.path('data'), '--setup', setup, ...more];
}

function start(program: string, given: string[]): void {
  running = spawn(program, given, { stdio: ['ignore', 'pipe', 'pipe'] });
  running.stdout?.on('data', (chunk: Buffer) => (said += chunk.toString()));
  running.stderr?.on('data', (chunk: Buffer) => (said += chunk.toString()));
}

const until = (text: string): Promise<void> => vi.waitFor(() => expect(said).toContain(text), { timeout: 30_000 });

test('on a terminal a call rings its bell', async () => {
  // socat gives the program a terminal of its own and hands on what it writes there; the terminal hangs up with it.
  start('socat', ['-U', '-', `EXEC:${[process.execPath, ...options()].join(' ')},pty,setsid,ctty`]);
  await until('RAISED  port-lost');
  await until(BELL);
  expect(said).not.toContain('Nothing here can sound');
});

test('without a terminal no bell is written into the file, and it is said that nothing can sound', async () => {
  start(process.execPath, options());
  await until('Nothing here can sound');
  await until('RAISED  port-lost');
  expect(said).not.toContain(BELL);
});

test('with JSON lines the program that reads them is left to sound', async () => {
  start(process.execPath, options('--json'));
  await until('"alarm":"port-lost","event":"raised"');
  expect(said).not.toMatch(/Nothing here can sound|\u0007/);
});
