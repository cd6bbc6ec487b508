// Starting again after an error: three times in ten minutes, then it is said; and the boil that ran goes on in the window.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeEach, expect, test, vi } from 'vitest';
import { startAgain, wasStartedAgain, wordsToStartAgain } from '../../electron/restart.ts';
import type { HostMessage } from '../../src/protocol/messages.ts';
import { panwarden, Program } from '../cli/program.ts';
import { app, dialog, shell } from './electron-stand-in.ts';

vi.mock('electron', () => import('./electron-stand-in.ts'));

const FOLDER = mkdtempSync(join(tmpdir(), 'panwarden-window-'));
const ARGV = process.argv;
afterAll(() => rmSync(FOLDER, { recursive: true }));
beforeEach(() => {
  app.again = [];
  app.exits = [];
  dialog.errors = [];
});
afterEach(() => {
  process.argv = ARGV;
  vi.unstubAllEnvs();
});

test('it starts again three times within ten minutes and no more', () => {
  let words: string[] | null = ['old.boil.jsonl'];
  expect(wasStartedAgain(words)).toBe(false);
  for (const nowMs of [1000, 2000, 3000]) words = wordsToStartAgain(words ?? [], nowMs);
  expect(words).toEqual(['old.boil.jsonl', '--started-again=1000,2000,3000']);
  expect(wasStartedAgain(words ?? [])).toBe(true);
  expect(wordsToStartAgain(words ?? [], 4000)).toBeNull();
  expect(wordsToStartAgain(words ?? [], 601_500)).toEqual(['old.boil.jsonl', '--started-again=2000,3000,601500']);
});

test('an error that comes again and again ends it, with a sentence that sends somebody to the pans', () => {
  const write = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
  process.argv = ['panwarden', `--started-again=${[1, 2, 3].map((ago) => Date.now() - ago).join(',')}`];
  startAgain(new Error('a fault of ours'));
  write.mockRestore();
  expect([app.again, app.exits]).toEqual([[], [1]]);
  expect(shell.beeps).toBe(1);
  expect(dialog.errors).toEqual([expect.stringMatching(/Stand by the pans.*a fault of ours/)]);
});

test('the boil that ran when the program was killed goes on in the window, as the same boil with a gap', async () => {
  const setup = join(FOLDER, 'setup.json');
  const probes = [{ id: 'A/1', port: 'A', channel: 'T1' }];
  const ports = [{ id: 'A', path: join(FOLDER, 'no-port') }];
  writeFileSync(setup, JSON.stringify({ name: 'Run', ports, probes, pans: [{ id: 'p1', probe: 'A/1' }] }));
  const data = join(FOLDER, 'data');
  const before = new Program('watch', '--data', data, '--setup', setup, '--json');
  const { boil } = await before.line(({ kind }) => kind === 'watching');
  await before.line(({ kind }) => kind === 'kept');
  before.process.kill('SIGKILL');
  await before.ended;

  vi.resetModules();
  vi.stubEnv('PANWARDEN_DATA', data);
  const electron = await import('./electron-stand-in.ts');
  vi.doMock('electron', () => electron);
  const listening = process.listeners('uncaughtException');
  await import('../../electron/main.ts');
  electron.app.becomeReady();
  await vi.waitFor(() => expect(electron.BrowserWindow.opened[0]?.addresses).toHaveLength(1), { timeout: 10_000 });
  const { webContents } = electron.BrowserWindow.opened[0]!;
  electron.ipcMain.handlers.get('panwarden:listen')?.({ sender: webContents, senderFrame: webContents.mainFrame });
  const messages = webContents.sent.map(([, message]) => message as HostMessage);
  expect(messages.find(({ kind }) => kind === 'now')).toMatchObject({ boil, mode: 'live', ended: false });
  expect([...electron.powerSaveBlocker.running.values()]).toEqual(['prevent-display-sleep']);
  expect(electron.Tray.put[0]?.tip).toContain('watches 1 pan');
  electron.app.emit('will-quit', { preventDefault: vi.fn() });
  await vi.waitFor(() => expect(electron.app.exits).toEqual([undefined]), { timeout: 10_000 });
  for (const one of process.listeners('uncaughtException').filter((one) => !listening.includes(one)))
    process.off('uncaughtException', one);

  const out = join(FOLDER, 'out.boil.jsonl');
  expect(panwarden('export', 'latest', '--data', data, '--to', out).status).toBe(0);
  expect(readFileSync(out, 'utf8')).toMatch(/"run":"gap"/);
});
