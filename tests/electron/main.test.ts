// How the window starts, comes back and lets go, told to a stand-in in the order in which Electron would see it.
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { HostMessage } from '../../src/protocol/messages.ts';
import { now } from './tarn-hollow.ts';

const SOURCES = join(import.meta.dirname, '../../electron');
const FOLDER = mkdtempSync(join(tmpdir(), 'panwarden-window-'));
afterAll(() => rmSync(FOLDER, { recursive: true }));

const host = {
  listeners: new Set<(message: HostMessage) => void>(),
  command: vi.fn(),
  phones: { servedBy: vi.fn(async () => undefined) },
  close: vi.fn(async () => undefined),
  subscribe(listener: (message: HostMessage) => void) {
    host.listeners.add(listener);
    return () => host.listeners.delete(listener);
  },
  says(message: HostMessage) {
    for (const hear of host.listeners) hear(message);
  },
};
const createHost = vi.fn(async (_options: unknown): Promise<unknown> => host);

const settle = (): Promise<void> => new Promise((resolved) => void setImmediate(resolved));

/** The program is loaded, but Electron is not ready yet. */
async function loaded(hasLock = true) {
  vi.resetModules();
  const electron = await import('./electron-stand-in.ts');
  electron.app.hasLock = hasLock;
  vi.doMock('electron', () => electron);
  vi.doMock('../../src/host/host.ts', () => ({ createHost }));
  await import('../../electron/main.ts');
  return electron;
}

async function opened() {
  const electron = await loaded();
  electron.app.becomeReady();
  await settle();
  const window = electron.BrowserWindow.opened[0];
  if (window === undefined) throw new Error('no window was opened');
  return { ...electron, window };
}

beforeEach(() => {
  host.listeners.clear();
  host.close.mockClear();
  createHost.mockClear();
  vi.stubEnv('PANWARDEN_DATA', FOLDER);
});
afterEach(() => {
  vi.unstubAllEnvs();
  vi.useRealTimers();
});

test('sandbox, scheme and lock are set before Electron is ready', async () => {
  const { early, app, protocol, BrowserWindow } = await loaded();
  expect([...early].sort()).toEqual(['lock', 'path', 'sandbox', 'scheme']);
  expect(early.indexOf('path')).toBeLessThan(early.indexOf('lock'));
  expect(protocol.schemes).toEqual([
    { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
  expect(app.paths).toEqual({ userData: join(FOLDER, 'window') });
  expect(BrowserWindow.opened).toEqual([]);
  expect(createHost).not.toHaveBeenCalled();
});

test('the window shows the screen with safe preferences and the preload', async () => {
  const { window, session, Menu } = await opened();
  const { SAFE_PREFERENCES } = await import('../../electron/rules.ts');
  expect(createHost).toHaveBeenCalledWith(expect.objectContaining({ folder: FOLDER, pagesSound: true }));
  expect(host.phones.servedBy).toHaveBeenCalled();
  expect(window.options.webPreferences).toEqual({ ...SAFE_PREFERENCES, preload: join(SOURCES, 'preload.cjs') });
  expect(window.addresses).toEqual(['app://panwarden/index.html']);
  expect([...session.defaultSession.schemes.keys()]).toEqual(['app']);
  expect(window.webContents.openHandler?.({})).toEqual({ action: 'deny' });
  expect(Menu.shown).toEqual([{ role: 'fileMenu' }, { role: 'editMenu' }, { role: 'viewMenu' }]);
});

test('what nobody answered or could hear is notified, with a beep', async () => {
  const { Notification, shell } = await opened();
  const [options] = createHost.mock.lastCall as [{ tellOtherwise(sentence: string): void }];
  options.tellOtherwise('Panwarden: Back pot: About to burn.');
  expect(Notification.shown.at(-1)?.options).toMatchObject({ body: 'Panwarden: Back pot: About to burn.' });
  expect(shell.beeps).toBe(1);
});

test('where the system names no battery, Electron tells whether there are mains', async () => {
  vi.doMock('../../src/host/power.ts', () => ({ systemPower: async () => null }));
  const { powerMonitor } = await opened();
  const [options] = createHost.mock.lastCall as [{ readPower(): Promise<unknown> }];
  powerMonitor.onBatteryPower = true;
  expect(await options.readPower()).toEqual({ onBattery: true, percent: null, secondsLeft: null });
  vi.doUnmock('../../src/host/power.ts');
});

test('a second copy ends at once and the first comes to the front', async () => {
  const second = await loaded(false);
  second.app.becomeReady();
  await settle();
  expect([second.app.quits, second.BrowserWindow.opened, createHost.mock.calls]).toEqual([1, [], []]);
  const first = await opened();
  first.app.emit('second-instance');
  expect(first.window.did).toEqual(['show']);
});

test('a host that cannot start is said in its own words', async () => {
  createHost.mockRejectedValueOnce(new Error('Another program watches this folder.'));
  const { app, dialog, BrowserWindow } = await loaded();
  app.becomeReady();
  await settle();
  expect(dialog.errors).toEqual(['Panwarden cannot start: Another program watches this folder.']);
  expect(app.exits).toEqual([1]);
  expect(BrowserWindow.opened).toEqual([]);
});

test('a data folder that cannot be made is said before anything is opened', async () => {
  writeFileSync(join(FOLDER, 'taken'), '');
  vi.stubEnv('PANWARDEN_DATA', join(FOLDER, 'taken'));
  const { app, dialog } = await loaded();
  await settle();
  expect(dialog.errors).toEqual([expect.stringContaining(join(FOLDER, 'taken', 'window'))]);
  expect(app.exits).toEqual([1]);
});

test('a page that crashes is loaded again three times a minute, then it is said', async () => {
  vi.useFakeTimers({ toFake: ['performance'] });
  const { window, Notification } = await opened();
  const crash = (): boolean => window.webContents.emit('render-process-gone', {}, { reason: 'crashed' });
  for (let count = 0; count < 4; count += 1) crash();
  expect(window.webContents.reloads).toBe(3);
  expect(Notification.shown.map(({ options }) => options.title)).toEqual(['The screen does not come back']);
  vi.advanceTimersByTime(60_000);
  crash();
  expect(window.webContents.reloads).toBe(4);
});

test('a page that hangs is ended, so that it can be loaded again; one that closes is left alone', async () => {
  const { window } = await opened();
  window.webContents.emit('unresponsive');
  expect(window.webContents.crashes).toBe(1);
  window.webContents.emit('render-process-gone', {}, { reason: 'clean-exit' });
  expect(window.webContents.reloads).toBe(0);
});

test('middle alarms use the second channel from a crash until the page is back', async () => {
  const { window, Notification } = await opened();
  const { alarm } = await import('./tarn-hollow.ts');
  const notRecording = (since: number) =>
    now({ alarms: [alarm({ priority: 'medium', pan: null, title: 'Not written down', since })] });
  host.says(notRecording(1));
  window.webContents.emit('render-process-gone', {}, { reason: 'oom' });
  host.says(notRecording(1));
  window.webContents.emit('did-finish-load');
  host.says(notRecording(2));
  expect(Notification.shown.map(({ options }) => options.title)).toEqual(['Not written down']);
});

test.each([
  ['goes back', 0, []],
  ['keeps watching', 1, ['hide']],
  ['stops', 2, ['destroy']],
])('closing while pans are watched asks: who presses button %s', async (_who, button, did) => {
  const { window, dialog } = await opened();
  host.says(now());
  dialog.response = button;
  const preventDefault = vi.fn();
  window.emit('close', { preventDefault });
  await settle();
  expect(preventDefault).toHaveBeenCalledTimes(1);
  expect(dialog.questions).toEqual([expect.objectContaining({ buttons: expect.any(Array), cancelId: 0 })]);
  expect(window.did).toEqual(did);
});

test('closing while nothing is watched does not ask', async () => {
  const { window, dialog } = await opened();
  host.says(now({ mode: 'idle', boil: null }));
  const preventDefault = vi.fn();
  window.emit('close', { preventDefault });
  expect([preventDefault.mock.calls, dialog.questions]).toEqual([[], []]);
});

test('the host is closed before the program ends, and is not heard once the window is gone', async () => {
  const { app, window } = await opened();
  window.emit('closed');
  expect(host.listeners.size).toBe(0);
  const preventDefault = vi.fn();
  app.emit('will-quit', { preventDefault });
  expect([preventDefault.mock.calls.length, host.close.mock.calls.length, app.exits]).toEqual([1, 1, []]);
  await settle();
  expect(app.exits).toEqual([undefined]);
});

test('a system that shuts down is not held up by a question', async () => {
  const { window, powerMonitor } = await opened();
  host.says(now());
  powerMonitor.emit('shutdown');
  expect(window.did).toEqual(['destroy']);
});

test('nothing in the window opens another program, and it stays short', () => {
  const sources = readdirSync(SOURCES).filter((name) => /\.(ts|cjs)$/.test(name));
  const texts = sources.map((name) => readFileSync(join(SOURCES, name), 'utf8'));
  expect(sources).toContain('preload.cjs');
  expect(texts.join('\n')).not.toMatch(/openExternal|loadFile|nodeIntegration: true|--no-sandbox/);
  expect(texts.join('').split('\n').length).toBeLessThan(340);
});
