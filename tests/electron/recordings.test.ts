// Recordings and kept boils on their way to a replay: from a command line, a menu, a file that is none.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { BrowserWindow as ElectronWindow } from 'electron';
import { afterAll, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { keepMenu } from '../../electron/menu.ts';
import { recordingIn, Replays } from '../../electron/recordings.ts';
import { hearLanguage } from '../../electron/spoken.ts';
import { createHost } from '../../src/host/create-host.ts';
import type { Host } from '../../src/host/host.ts';
import { settingsSchema } from '../../src/protocol/messages.ts';
import type { HostMessage } from '../../src/protocol/messages.ts';
import { app, BrowserWindow, dialog, Menu } from './electron-stand-in.ts';
import type { MenuLine } from './electron-stand-in.ts';
import { now } from './tarn-hollow.ts';

vi.mock('electron', () => import('./electron-stand-in.ts'));

const RECORDING = resolve(import.meta.dirname, '../../fixtures/recordings/scorched.boil.jsonl');
const FOLDER = mkdtempSync(join(tmpdir(), 'panwarden-window-'));
let host: Host;
let window: BrowserWindow;
let replays: Replays;

beforeAll(async () => {
  host = await createHost({ folder: FOLDER });
});
afterAll(async () => {
  await host.close();
  rmSync(FOLDER, { recursive: true });
});
beforeEach(() => {
  window = new BrowserWindow({ webPreferences: {} });
  replays = new Replays(window as unknown as ElectronWindow, host);
  dialog.questions = [];
  app.recent = [];
});

test.each<[string, string[], string | null]>([
  ['a recording', ['old.boil.jsonl'], resolve('/sap/old.boil.jsonl')],
  ['the last of two', ['a.jsonl', '/other/B.JSONL'], resolve('/other/B.JSONL')],
  ['a switch that looks like one', ['--log=a.jsonl'], null],
  ['a recording by its address', ['file:///old%20sap/b.boil.jsonl'], '/old sap/b.boil.jsonl'],
  ['an address elsewhere', ['file://tarn/b.boil.jsonl'], null],
  ['another file', ['notes.txt', 'main.js'], null],
  ['nothing', [], null],
])('a command line with %s', (_what, words, expected) => {
  expect(recordingIn(words, '/sap')).toBe(expected);
});

test('a recording is replayed by the real host, and the window shows it', async () => {
  await replays.open(RECORDING);
  expect(dialog.questions).toEqual([]);
  expect([window.did, window.webContents.scripts]).toEqual([['show'], ["location.hash = '#/replay'"]]);
  expect(app.recent).toEqual([RECORDING]);
  const answer = await host.command({ ref: 'r', replay_strip: { points: 10 } });
  expect(answer).toMatchObject({ ok: true });
});

test.each([
  ['is gone', join(FOLDER, 'gone.boil.jsonl'), /could not be read/],
  ['is no recording', resolve(import.meta.dirname, '../../package.json'), /package\.json/],
])('a file that %s is said in a sentence, and nothing is shown', async (_what, path, sentence) => {
  await replays.open(path);
  expect(dialog.questions).toMatchObject([
    { message: 'This cannot be replayed.', detail: expect.stringMatching(sentence) },
  ]);
  expect([window.webContents.scripts, app.recent]).toEqual([[], []]);
});

const settingsIn = (language: string): HostMessage => ({
  kind: 'settings',
  settings: settingsSchema.parse({ language }),
});

const lineOf = (menu: readonly MenuLine[], label: string): MenuLine | undefined =>
  menu.flatMap(({ submenu = [] }) => submenu).find((line) => line.label === label);

async function menuAfter(hear: (message: HostMessage) => void, message: HostMessage): Promise<MenuLine[]> {
  Menu.shown = [];
  hear(message);
  await new Promise((resolved) => setImmediate(resolved));
  return Menu.shown;
}

test('the menu opens recordings and lists the boils that are over, anew when one has ended', async () => {
  const hear = keepMenu(host, replays);
  const first = await menuAfter(hear, now({ mode: 'idle', boil: null }));
  expect(lineOf(first, 'Recent boils')?.submenu).toEqual([{ label: 'None yet', enabled: false }]);
  expect(first.map(({ role, label }) => role ?? label)).toContain('viewMenu');
  dialog.chosen = [RECORDING];
  lineOf(first, 'Open a recording…')?.click?.();
  await expect.poll(() => app.recent).toEqual([RECORDING]);

  const pieces = async function* (): AsyncGenerator<string> {
    yield '{"recording":"panwarden","version":1,"name":"Salt & sap","started":"2027-04-18T07:30:00-07:00"}\n{"t":0,"run":"ended"}\n';
  };
  await host.importRecording(pieces(), 'it');
  expect(await menuAfter(hear, now({ mode: 'idle', boil: null }))).toEqual([]);
  const later = await menuAfter(hear, now({ ended: true }));
  const [line] = lineOf(later, 'Recent boils')?.submenu ?? [];
  expect(line?.label).toBe('2027-04-18  Salt && sap');
  window.webContents.scripts = [];
  line?.click?.();
  await expect.poll(() => window.webContents.scripts).toEqual(["location.hash = '#/replay'"]);
});

/** Every line of a menu that says something, those beneath it too. */
const wordsOf = (menu: readonly MenuLine[]): (string | undefined)[] =>
  menu.flatMap(({ label, role, submenu = [] }) => [...((label ?? role) ? [label] : []), ...wordsOf(submenu)]);

test('the menu speaks the language that is chosen, in every line', async () => {
  const hear = keepMenu(host, replays);
  await menuAfter(hear, now({ mode: 'idle', boil: null }));
  const english = wordsOf(Menu.shown);
  hearLanguage(settingsIn('fr'));
  const menu = await menuAfter(hear, settingsIn('fr'));
  expect(menu.map(({ label }) => label)).toEqual(['Fichier', 'Édition', 'Affichage', 'Fenêtre']);
  const french = wordsOf(menu);
  expect([french.length, french.includes(undefined)]).toEqual([english.length, false]);
  const same = french.filter((label) => english.includes(label));
  expect(same.filter((label) => !/^\d{4}-\d\d-\d\d /.test(label ?? ''))).toEqual([]);
  expect(await menuAfter(hear, settingsIn('fr'))).toEqual([]);
  await replays.open(join(FOLDER, 'gone.boil.jsonl'));
  expect(dialog.questions).toMatchObject([
    { message: 'La relecture est impossible.', detail: 'Le fichier n’a pas pu être lu. A-t-il été déplacé\u00a0?' },
  ]);
  hearLanguage(settingsIn('system'));
});

test('a page that is gone just then is no error of the program', async () => {
  window.webContents.isGone = true;
  await replays.open(RECORDING);
  expect([window.webContents.scripts, dialog.questions, app.recent]).toEqual([[], [], [RECORDING]]);
});

test('a boil that is not in the notebook any more is said', async () => {
  await replays.show('2020-01-01-gone');
  expect(dialog.questions).toMatchObject([{ detail: expect.stringContaining('2020-01-01-gone') }]);
});
