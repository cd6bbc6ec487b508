// Brings the page back when it crashed, hangs or lost its sound, while the second channel speaks for it.
import { app } from 'electron';
import type { BrowserWindow } from 'electron';
import { notify } from './attention.ts';
import type { Attention } from './attention.ts';
import { mayReload } from './rules.ts';
import { say } from './spoken.ts';

/** Chromium plays all sound in a process of its own, which it names so. */
const AUDIO_SERVICE = 'audio.mojom.AudioService';

/** Loads the page again, at most three times a minute, for as long as the window is there. */
export function bringBack({ webContents }: BrowserWindow, attention: Attention): void {
  const reloads: number[] = [];
  function again({ reason }: { reason: string }): void {
    if (reason === 'clean-exit') return;
    attention.pageIsDown = true;
    if (mayReload(reloads, performance.now())) webContents.reload();
    else notify(say('window.no_screen'), say('window.no_screen.todo'));
  }
  webContents.on('unresponsive', () => webContents.forcefullyCrashRenderer());
  webContents.on('did-finish-load', () => (attention.pageIsDown = false));
  webContents.on('render-process-gone', (_event, gone) => again(gone));
  // A page whose sound was playing there does not get it back by itself.
  app.on('child-process-gone', (_event, gone) => gone.serviceName === AUDIO_SERVICE && again(gone));
}
