// `start` without a desktop window: says why, prints the address, serves the screen, and ends cleanly.
import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { electronRuntime, hasDisplay } from '../../src/cli/open-screen.ts';
import { dataFolder } from '../../src/host/data-folder.ts';
import { copy, ownFolder } from './program.ts';

const own = ownFolder();
afterAll(() => own.remove());
const START = fileURLToPath(new URL('../../src/cli/start.ts', import.meta.url));
const PROJECT = fileURLToPath(new URL('../..', import.meta.url));

test.skipIf(electronRuntime(PROJECT) !== null)('it says why there is no window, and serves the screen', async () => {
  const { DISPLAY: _x, WAYLAND_DISPLAY: _w, ...env } = process.env;
  const program = spawn(process.execPath, [START, '--data', own.path('data')], {
    env,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = new Promise((resolve) => program.once('close', resolve));
  const lines: string[] = [];
  for await (const line of createInterface({ input: program.stdout })) {
    lines.push(line);
    const address = /http:\/\/127\.0\.0\.1:\d+\//.exec(line)?.[0];
    if (address === undefined) continue;
    expect(await (await fetch(address)).text()).toContain('<div id="screen">');
    program.kill('SIGTERM');
  }
  expect(lines[0]).toMatch(/no desktop window.*npx install-electron/);
  expect(await ended).toBe(0);
});

test('a Node that is too old is said in a sentence, with the way to the right one', () => {
  const old = 'data:text/javascript,Object.defineProperty(process.versions,"node",{value:"20.20.2"})';
  const { status, stderr } = spawnSync(process.execPath, ['--import', old, copy.main, 'boils'], { encoding: 'utf8' });
  expect([status, stderr]).toEqual([
    1,
    'Panwarden runs on Node 24 or newer, and this is 20.20.2: where it was installed, "npx panwarden" uses the one that came along.\n',
  ]);
});

test('the runtime of Electron is there only when its program is', () => {
  const put = (name: string, text: string): void => {
    mkdirSync(dirname(own.path(name)), { recursive: true });
    writeFileSync(own.path(name), text);
  };
  expect(electronRuntime(own.folder)).toBe(null);
  put('node_modules/electron/path.txt', 'electron');
  expect(electronRuntime(own.folder)).toBe(null);
  put('node_modules/electron/dist/electron', '');
  expect(electronRuntime(own.folder)).toBe(join(own.folder, 'node_modules/electron/dist/electron'));
});

test.skipIf(process.platform !== 'linux')('a display is one of X or Wayland; an empty name is none', () => {
  expect(hasDisplay({ DISPLAY: ':0' })).toBe(true);
  expect(hasDisplay({ WAYLAND_DISPLAY: 'wayland-0' })).toBe(true);
  expect(hasDisplay({ DISPLAY: '' })).toBe(false);
});

test('the data folder is the option, else the environment, else the place of the system', () => {
  expect(dataFolder('/one', { PANWARDEN_DATA: '/two' })).toBe('/one');
  expect(dataFolder(undefined, { PANWARDEN_DATA: '/two' })).toBe('/two');
  if (process.platform !== 'linux') return;
  expect(dataFolder(undefined, { XDG_DATA_HOME: '/data' })).toBe('/data/panwarden');
  expect(dataFolder(undefined, { XDG_DATA_HOME: 'relative' })).toMatch(/\.local\/share\/panwarden$/);
});
