// How the window starts, comes back and lets go, told to a stand-in in the order in which Electron would see it.
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeEach, expect, test, vi } from 'vitest';
import { ALARM_WORDS } from '../../src/core/alarms/words.ts';
import { settingsSchema } from '../../src/protocol/messages.ts';
import type { HostMessage } from '../../src/protocol/messages.ts';
import { now } from './tarn-hollow.ts';

const SOURCES = join(import.meta.dirname, '../../electron');
const FOLDER = mkdtempSync(join(tmpdir(), 'panwarden-window-'));
afterAll(() => rmSync(FOLDER, { recursive: true }));

const host = {
  listeners: new Set<(message: HostMessage) => void>(),
  command: vi.fn(async (command: { ref: string }): Promise<unknown> => ({
    kind: 'answered',
    ref: command.ref,
    ok: true,
    data: [],
  })),
  openRecording: vi.fn(async (_pieces: unknown, name: string) => ({ boil: `opened ${name}`, leftOut: 0 })),
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
async function loaded(hasLock = true, switches: string[] = []) {
  vi.resetModules();
  const electron = await import('./electron-stand-in.ts');
  electron.app.hasLock = hasLock;
  electron.app.switches = new Set(switches);
  vi.doMock('electron', () => electron);
  vi.doMock('../../src/host/create-host.ts', () => ({ createHost }));
  await import('../../electron/main.ts');
  return electron;
}

async function opened(words: string[] = []) {
  process.argv = [...ARGV.slice(0, 1), ...words];
  const electron = await loaded();
  electron.app.becomeReady();
  await settle();
  const window = electron.BrowserWindow.opened[0];
  if (window === undefined) throw new Error('no window was opened');
  return { ...electron, window };
}

for (const name of ['old.boil.jsonl', 'next.boil.jsonl', 'mac.jsonl', 'early.boil.jsonl'])
  writeFileSync(join(FOLDER, name), '');
const ARGV = process.argv;
const STOPPERS = process.listeners('uncaughtException');

beforeEach(() => {
  host.command.mockClear();
  host.openRecording.mockClear();
  host.listeners.clear();
  host.close.mockClear();
  createHost.mockClear();
  vi.stubEnv('PANWARDEN_DATA', FOLDER);
});
afterEach(() => {
  vi.unstubAllEnvs();
  vi.useRealTimers();
  process.argv = ARGV;
  const ours = process.listeners('uncaughtException').filter((one) => !STOPPERS.includes(one));
  for (const one of ours) process.off('uncaughtException', one);
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
  const { window, session } = await opened();
  const { SAFE_PREFERENCES } = await import('../../electron/rules.ts');
  expect(createHost).toHaveBeenCalledWith(expect.objectContaining({ folder: FOLDER, pagesSound: true }));
  expect(host.phones.servedBy).toHaveBeenCalled();
  expect(window.options.webPreferences).toEqual({ ...SAFE_PREFERENCES, preload: join(SOURCES, 'preload.cjs') });
  expect(window.addresses).toEqual(['app://panwarden/index.html']);
  expect([...session.defaultSession.schemes.keys()]).toEqual(['app']);
  expect(window.webContents.openHandler?.({})).toEqual({ action: 'deny' });
});

test('what nobody answered or could hear is notified, with a beep', async () => {
  const { Notification, shell } = await opened();
  const [options] = createHost.mock.lastCall as [{ tellOtherwise(sentence: () => string): void }];
  options.tellOtherwise(() => 'Panwarden: Back pot: About to burn.');
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
  first.app.emit('second-instance', {}, ['panwarden'], FOLDER);
  expect(first.window.did).toEqual(['show']);
  first.window.small = true;
  first.app.emit('second-instance', {}, ['panwarden'], FOLDER);
  expect(first.window.did).toEqual(['show', 'restore', 'show']);
});

test('a start that would not shut the page in is refused', async () => {
  const { app, dialog, BrowserWindow } = await loaded(true, ['no-sandbox']);
  app.becomeReady();
  await settle();
  expect(dialog.errors).toEqual([expect.stringMatching(/cannot start: The page would not be shut in/)]);
  expect([app.exits, BrowserWindow.opened, createHost.mock.calls]).toEqual([[1], [], []]);
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

test('a page whose sound ended with the sound of Chromium is loaded again, and other helpers are left alone', async () => {
  const { app, window } = await opened();
  const gone = (serviceName: string, reason: string) =>
    app.emit('child-process-gone', {}, { type: 'Utility', serviceName, reason });
  gone('network.mojom.NetworkService', 'crashed');
  gone('audio.mojom.AudioService', 'clean-exit');
  expect(window.webContents.reloads).toBe(0);
  gone('audio.mojom.AudioService', 'crashed');
  expect(window.webContents.reloads).toBe(1);
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

test('left alone, the window speaks the language of the system; chosen, that of the settings', async () => {
  const { app, window, dialog, Notification, powerMonitor, Tray } = await opened();
  app.locale = 'fr-CA';
  host.says(now());
  window.emit('close', { preventDefault: vi.fn() });
  await settle();
  expect(dialog.questions).toEqual([
    expect.objectContaining({ buttons: ['Revenir', 'Surveiller sans la fenêtre', 'Cesser de surveiller'] }),
  ]);
  expect(Tray.put[0]?.tip).toBe('Panwarden surveille 1 casserole');
  const { alarm } = await import('./tarn-hollow.ts');
  host.says(now({ alarms: [alarm({ ...ALARM_WORDS['scorch-risk'], why: 'burns in about 2 min at this heat' })] }));
  expect(Tray.put[0]?.tip).toBe('Panwarden surveille 1 casserole. Sur le point de brûler');
  expect(Notification.shown.at(-1)?.options).toMatchObject({
    title: 'Back pot\u00a0: Sur le point de brûler',
    body: expect.stringMatching(/^brûle dans environ 2\u00a0min à ce feu\. \p{Lu}/u),
  });
  powerMonitor.emit('resume');
  expect(Notification.shown.at(-1)?.options.title).toBe('Cet ordinateur s’est mis en veille');
  host.says({ kind: 'settings', settings: settingsSchema.parse({ language: 'en' }) });
  powerMonitor.emit('resume');
  expect(Notification.shown.at(-1)?.options.title).toBe('This machine slept');
});

test('who presses close again while it asks is not asked twice', async () => {
  const { window, dialog } = await opened();
  host.says(now());
  for (let count = 0; count < 2; count += 1) window.emit('close', { preventDefault: vi.fn() });
  await settle();
  expect(dialog.questions).toHaveLength(1);
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

test('after a sleep of the machine it is said, and the machine is kept awake anew', async () => {
  const { powerMonitor, powerSaveBlocker, Notification, shell } = await opened();
  host.says(now({ mode: 'idle', boil: null }));
  powerMonitor.emit('resume');
  expect(Notification.shown).toEqual([]);
  host.says(now());
  const [before] = powerSaveBlocker.running.keys();
  powerSaveBlocker.works = false;
  powerMonitor.emit('resume');
  expect([before, powerSaveBlocker.stopped, powerSaveBlocker.running.size]).toEqual([7, [7], 1]);
  const titles = Notification.shown.map(({ options }) => options.title);
  expect(titles).toEqual(['This machine may fall asleep', 'This machine slept']);
  expect(shell.beeps).toBe(1);
});

test('the window comes back where it was and as large as it was', async () => {
  const { window } = await opened();
  expect(window.options).toMatchObject({ name: 'pans', windowStatePersistence: true, width: 1366, height: 768 });
});

test('a recording that is opened by a double click is replayed: at the start, while it runs, and on a Mac', async () => {
  const [old, next, mac] = ['old.boil.jsonl', 'next.boil.jsonl', 'mac.jsonl'].map((name) => join(FOLDER, name));
  const { app, window } = await opened([old!]);
  await vi.waitFor(() => expect(window.webContents.scripts).toEqual(["location.hash = '#/replay'"]));
  expect(host.openRecording).toHaveBeenCalledWith(expect.anything(), 'old.boil.jsonl');
  expect(host.command).toHaveBeenCalledWith({ ref: 'window', replay: { boil: 'opened old.boil.jsonl' } });
  app.emit('second-instance', {}, ['panwarden', 'next.boil.jsonl'], FOLDER);
  await vi.waitFor(() => expect(app.recent).toEqual([old, next]));
  const preventDefault = vi.fn();
  app.emit('open-file', { preventDefault }, mac);
  await vi.waitFor(() => expect(app.recent).toEqual([old, next, mac]));
  expect(preventDefault).toHaveBeenCalledTimes(1);
});

test('a recording that a Mac hands over before the screen is there waits for it', async () => {
  const electron = await loaded();
  electron.app.emit('open-file', { preventDefault: vi.fn() }, join(FOLDER, 'early.boil.jsonl'));
  expect(host.openRecording).not.toHaveBeenCalled();
  electron.app.becomeReady();
  await vi.waitFor(() => expect(electron.app.recent).toEqual([join(FOLDER, 'early.boil.jsonl')]));
});

test('an error that nobody caught starts the program again, which then says so', async () => {
  const { app } = await opened(['--data']);
  const stop = process.listeners('uncaughtException').find((one) => !STOPPERS.includes(one));
  const stderr = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
  stop?.(new Error('a fault of ours'), 'uncaughtException');
  expect(stderr).toHaveBeenCalledWith(expect.stringContaining('a fault of ours'));
  stderr.mockRestore();
  expect(app.exits).toEqual([1]);
  expect(app.again).toEqual([{ args: ['--data', expect.stringMatching(/^--started-again=\d+$/)] }]);
  const { Notification } = await opened(app.again[0]!.args);
  expect(Notification.shown.map(({ options }) => options.title)).toEqual(['Panwarden had to start again']);
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
  expect(texts.join('\n')).not.toMatch(/openExternal|loadFile|nodeIntegration: true/);
  expect(texts.join('').split('\n').length).toBeLessThan(800);
});
