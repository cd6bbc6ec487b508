// What the page says reaches the host only from the page's own top frame, and in the shape that was agreed.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserWindow as ElectronWindow } from 'electron';
import { beforeEach, expect, test, vi } from 'vitest';
import { serveWindow } from '../../electron/bridge.ts';
import { createHost } from '../../src/host/create-host.ts';
import type { Host } from '../../src/host/host.ts';
import type { HostMessage } from '../../src/protocol/messages.ts';
import { BrowserWindow, ipcMain } from './electron-stand-in.ts';
import type { Speaker } from './electron-stand-in.ts';
import { now } from './tarn-hollow.ts';

vi.mock('electron', () => import('./electron-stand-in.ts'));

let window: BrowserWindow;
let listeners: Set<(message: HostMessage) => void>;
const host = {
  command: vi.fn(async (command: { ref: string }) => ({ kind: 'answered', ref: command.ref, ok: true })),
  importRecording: vi.fn(async (pieces: AsyncIterable<Uint8Array>) => ({ boil: `kept-${await textOf(pieces)}` })),
  openRecording: vi.fn(async (): Promise<{ boil: string }> => Promise.reject(new Error('The file is no recording.'))),
  subscribe: (listener: (message: HostMessage) => void) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
};

async function textOf(pieces: AsyncIterable<Uint8Array>): Promise<string> {
  let text = '';
  for await (const piece of pieces) text += new TextDecoder().decode(piece);
  return text;
}

const page = (): Speaker => ({ sender: window.webContents, senderFrame: window.webContents.mainFrame });
const say = (speaker: Speaker, channel: string, value?: unknown): unknown =>
  ipcMain.handlers.get(channel)?.(speaker, value);

beforeEach(() => {
  ipcMain.handlers.clear();
  listeners = new Set();
  host.command.mockClear();
  window = new BrowserWindow({ webPreferences: {} });
  serveWindow(window as unknown as ElectronWindow, host as unknown as Host);
});

test('these channels are served and no other', () => {
  expect([...ipcMain.handlers.keys()].sort()).toEqual(['panwarden:command', 'panwarden:hand', 'panwarden:listen']);
});

test('a command of the page reaches the host, and its answer comes back', async () => {
  expect(await say(page(), 'panwarden:command', { ref: 's1', end: true })).toEqual({
    kind: 'answered',
    ref: 's1',
    ok: true,
  });
  expect(host.command).toHaveBeenCalledWith({ ref: 's1', end: true });
});

test.each<[string, (ours: Speaker) => Speaker]>([
  ['a frame that is gone', (ours) => ({ ...ours, senderFrame: null })],
  [
    'a frame inside the page',
    (ours) => ({
      ...ours,
      senderFrame: { url: 'app://panwarden/x', origin: 'app://panwarden', parent: ours.senderFrame },
    }),
  ],
  ['another window', (ours) => ({ ...ours, sender: new BrowserWindow({ webPreferences: {} }).webContents })],
])('%s is refused on every channel', (_who, change) => {
  for (const channel of ipcMain.handlers.keys()) {
    expect(() => say(change(page()), channel, { ref: 's1', end: true }), channel).toThrow('Only the screen');
  }
  expect(host.command).not.toHaveBeenCalled();
});

test('a page that has gone elsewhere is refused', () => {
  window.webContents.mainFrame.origin = 'https://tarn-hollow.example';
  expect(() => say(page(), 'panwarden:command', { ref: 's1', end: true })).toThrow('Only the screen');
});

test.each([
  ['panwarden:command', undefined],
  ['panwarden:command', 'end'],
  ['panwarden:command', { end: true }],
  ['panwarden:command', { ref: 'x'.repeat(101), end: true }],
  ['panwarden:listen', 'twice'],
  ['panwarden:hand', { way: 'elsewhere', bytes: new Uint8Array() }],
  ['panwarden:hand', { way: 'import', bytes: '/etc/passwd' }],
  ['panwarden:hand', { way: 'import', bytes: new Uint8Array(), path: '/etc/passwd' }],
])('%s does not take %j', (channel, value) => {
  expect(() => say(page(), channel, value)).toThrow();
  expect(host.command).not.toHaveBeenCalled();
});

test('a page that is loaded again is told of each thing once', () => {
  say(page(), 'panwarden:listen');
  say(page(), 'panwarden:listen');
  expect(listeners.size).toBe(1);
  for (const hear of listeners) hear(now());
  expect(window.webContents.sent).toEqual([['panwarden:message', now()]]);
});

test('a recording that is handed over is imported or opened, and a bad one is said', async () => {
  const bytes = new TextEncoder().encode('tarn');
  expect(await say(page(), 'panwarden:hand', { way: 'import', bytes })).toEqual({ ok: true, boil: 'kept-tarn' });
  expect(await say(page(), 'panwarden:hand', { way: 'opened', bytes })).toEqual({
    ok: false,
    why: 'The file is no recording.',
  });
});

test('the real host answers through it, in its own sentences', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'panwarden-window-'));
  const realHost = await createHost({ folder });
  try {
    ipcMain.handlers.clear();
    serveWindow(window as unknown as ElectronWindow, realHost);
    say(page(), 'panwarden:listen');
    expect(window.webContents.sent.map(([, message]) => (message as HostMessage).kind)).toEqual(['hello', 'now']);
    const boils = await say(page(), 'panwarden:command', { ref: 's1', boils: true });
    expect(boils).toEqual({ kind: 'answered', ref: 's1', ok: true, data: [] });
    const refused = await say(page(), 'panwarden:command', { ref: 's2', settings: { temperature: 'K' } });
    expect(refused).toEqual({ kind: 'answered', ref: 's2', ok: false, why: expect.stringMatching(/temperature|C.*F/) });
    for (const way of ['import', 'opened']) {
      const bytes = new TextEncoder().encode('no recording\n');
      expect(await say(page(), 'panwarden:hand', { way, bytes })).toEqual({
        ok: false,
        why: expect.stringContaining('the file'),
      });
    }
  } finally {
    await realHost.close();
    rmSync(folder, { recursive: true });
  }
});
