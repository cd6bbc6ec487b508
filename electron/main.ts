// The desktop window around the host: starts both, brings the page back when it fails, asks before pans are left alone.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { app, BrowserWindow, dialog, Menu, powerMonitor, protocol, session } from 'electron';
import { dataFolder } from '../src/host/data-folder.ts';
import { createHost } from '../src/host/host.ts';
import { systemPower } from '../src/host/power.ts';
import type { Power } from '../src/host/power.ts';
import { PROGRAM_FOLDER } from '../src/program/program-files.ts';
import { servePhones } from '../src/web/phone/phone-server.ts';
import { Attention, notify } from './attention.ts';
import { serveWindow } from './bridge.ts';
import { guardContents, guardSession } from './guard.ts';
import { mayReload, SAFE_PREFERENCES, SCREEN_ORIGIN } from './rules.ts';

const folder = dataFolder(undefined);
const attention = new Attention();

/** Loads the page again when it crashed or hangs, while the second channel speaks for it. */
function bringBack({ webContents }: BrowserWindow): void {
  const reloads: number[] = [];
  webContents.on('unresponsive', () => webContents.forcefullyCrashRenderer());
  webContents.on('did-finish-load', () => (attention.pageIsDown = false));
  webContents.on('render-process-gone', (_event, { reason }) => {
    if (reason === 'clean-exit') return;
    attention.pageIsDown = true;
    if (mayReload(reloads, performance.now())) webContents.reload();
    else notify('The screen does not come back', 'Pans are still watched. End the program and start it again soon.');
  });
}

/** Asked without blocking: readings must come in while the question stands there. */
async function askBeforeClosing(window: BrowserWindow): Promise<void> {
  const { response } = await dialog.showMessageBox(window, {
    message: 'Pans are being watched. If that stops, somebody must stand by them.',
    detail: 'Without the window alarms come as notifications. A boil that is not ended goes on at the next start.',
    buttons: ['Go back', 'Keep watching without the window', 'Stop watching'],
    cancelId: 0,
  });
  if (response === 1) window.hide();
  if (response === 2) window.destroy();
}

/** Where the system tells nothing itself, Electron still knows battery or mains, and the page how much is left. */
async function readPower(): Promise<Power> {
  const { onBatteryPower: onBattery } = powerMonitor;
  return (await systemPower()) ?? { onBattery, percent: null, secondsLeft: null };
}

async function start(): Promise<void> {
  // Chromium's own files stay apart from the notebook, and each notebook has at most one window.
  mkdirSync(join(folder, 'window'), { recursive: true });
  app.setPath('userData', join(folder, 'window'));
  if (!app.requestSingleInstanceLock()) return app.quit();
  await app.whenReady();
  // Electron's own menu would open remote pages.
  Menu.setApplicationMenu(Menu.buildFromTemplate([{ role: 'fileMenu' }, { role: 'editMenu' }, { role: 'viewMenu' }]));
  const tellOtherwise = (sentence: string): void => attention.tell(sentence);
  const host = await createHost({ folder, pagesSound: true, tellOtherwise, readPower });
  const screen = join(PROGRAM_FOLDER, 'dist/screen');
  guardSession(session.defaultSession, screen, host);
  const preload = join(import.meta.dirname, 'preload.cjs');
  const window = new BrowserWindow({ width: 1366, height: 768, webPreferences: { ...SAFE_PREFERENCES, preload } });
  serveWindow(window, host);
  bringBack(window);
  const stopHearing = host.subscribe((message) => attention.hear(message, () => window.show()));
  window.on('closed', stopHearing);
  window.on('close', (event) => {
    if (!attention.watching) return;
    event.preventDefault();
    void askBeforeClosing(window);
  });
  app.on('second-instance', () => window.show());
  app.on('activate', () => window.show());
  app.on('will-quit', (event) => {
    event.preventDefault();
    void host.close().finally(() => app.exit());
  });
  powerMonitor.on('shutdown', () => window.destroy());
  await window.loadURL(`${SCREEN_ORIGIN}/index.html`);
  const phones = { folder: screen, nowMs: () => performance.now() };
  await host.phones.servedBy((where) => servePhones(host, phones, where));
}

app.enableSandbox();
protocol.registerSchemesAsPrivileged([
  { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } },
]);
app.on('web-contents-created', (_event, contents) => guardContents(contents));
start().catch((error: Error) => {
  dialog.showErrorBox('Panwarden cannot start', error.message);
  app.exit(1);
});
