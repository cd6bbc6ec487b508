// The desktop window around the host: starts both, and ties what the system tells to what does something about it.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { app, BrowserWindow, dialog, powerMonitor, protocol, session } from 'electron';
import { dataFolder } from '../src/host/data-folder.ts';
import { createHost } from '../src/host/create-host.ts';
import { systemPower } from '../src/host/power.ts';
import type { Power } from '../src/host/power.ts';
import { systemPorts } from '../src/ingest/list-ports.ts';
import type { Tongue } from '../src/language/tongue.ts';
import { PROGRAM_FOLDER } from '../src/program/program-files.ts';
import { servePhones } from '../src/web/phone/phone-server.ts';
import { Attention, bringUp, notify } from './attention.ts';
import { bringBack } from './bring-back.ts';
import { serveWindow } from './bridge.ts';
import { askBeforeClosing } from './closing.ts';
import { guardContents, guardSession } from './guard.ts';
import { keepMenu } from './menu.ts';
import { openInReader } from './readers.ts';
import { recordingIn, Replays } from './recordings.ts';
import { startAgain, wasStartedAgain } from './restart.ts';
import { SAFE_PREFERENCES, SCREEN_ORIGIN } from './rules.ts';
import { hearLanguage, hostWords, say, spoken } from './spoken.ts';
import { WatchNote } from './watch-note.ts';

const folder = dataFolder(undefined);
const attention = new Attention();
/** A double click may start the program: its recording waits until the screen is there. */
let asked = recordingIn(process.argv.slice(1), process.cwd());
let open = (path: string): void => void (asked = path);

/** Where the system tells nothing itself, Electron still knows battery or mains, and the page how much is left. */
async function readPower(): Promise<Power> {
  const { onBatteryPower: onBattery } = powerMonitor;
  return (await systemPower()) ?? { onBattery, percent: null, secondsLeft: null };
}

async function start(): Promise<void> {
  // Whoever starts it so has read that it helps; it takes away what holds the page.
  if (app.commandLine.hasSwitch('no-sandbox')) throw new Error(say('window.not_shut_in'));
  // Chromium's own files stay apart from the notebook, and each notebook has at most one window.
  mkdirSync(join(folder, 'window'), { recursive: true });
  app.setPath('userData', join(folder, 'window'));
  if (!app.requestSingleInstanceLock()) return app.quit();
  await app.whenReady();
  const tellOtherwise = (sentence: (tongue: Tongue) => string): void => attention.tell(sentence(spoken()));
  const ports = { list: systemPorts, openPort: openInReader };
  const host = await createHost({ folder, pagesSound: true, tellOtherwise, readPower, ports });
  process.on('uncaughtException', startAgain);
  const screen = join(PROGRAM_FOLDER, 'dist/screen');
  guardSession(session.defaultSession, screen, host);
  const window = new BrowserWindow({
    width: 1366,
    height: 768,
    name: 'pans',
    windowStatePersistence: true,
    webPreferences: { ...SAFE_PREFERENCES, preload: join(import.meta.dirname, 'preload.cjs') },
  });
  const show = (): void => bringUp(window);
  serveWindow(window, host);
  bringBack(window, attention);
  askBeforeClosing(window, attention);
  const replays = new Replays(window, host);
  const note = new WatchNote(show);
  const changeMenu = keepMenu(host, replays);
  const stopHearing = host.subscribe((message) => {
    hearLanguage(message);
    attention.hear(message, show);
    note.hear(message);
    changeMenu(message);
  });
  window.on('closed', stopHearing);
  app.on('second-instance', (_event, words, where) => {
    show();
    const recording = recordingIn(words.slice(1), where);
    if (recording !== null) open(recording);
  });
  app.on('activate', show);
  app.on('will-quit', (event) => {
    event.preventDefault();
    void host.close().finally(() => app.exit());
  });
  powerMonitor.on('shutdown', () => window.destroy());
  powerMonitor.on('resume', () => attention.slept());
  await window.loadURL(`${SCREEN_ORIGIN}/index.html`);
  if (wasStartedAgain(process.argv)) notify(say('window.started_again'), say('window.started_again.todo'));
  open = (path) => void replays.open(path);
  if (asked !== null) open(asked);
  const phones = { folder: screen, nowMs: () => performance.now() };
  await host.phones.servedBy((where) => servePhones(host, phones, where));
}

app.enableSandbox();
// Without it Windows shows no notifications of ours.
app.setAppUserModelId('local.panwarden.desktop');
protocol.registerSchemesAsPrivileged([
  { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } },
]);
app.on('web-contents-created', (_event, contents) => guardContents(contents));
// A Mac hands over a file so, also before the program is ready.
app.on('open-file', (event, path) => {
  event.preventDefault();
  open(path);
});
start().catch((error: Error) => {
  dialog.showErrorBox(say('window.no_start'), hostWords(error.message));
  app.exit(1);
});
