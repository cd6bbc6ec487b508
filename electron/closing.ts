// Asks before pans are left alone: the window may go, and the watching stays.
import { dialog } from 'electron';
import type { BrowserWindow } from 'electron';
import type { Attention } from './attention.ts';
import { say } from './spoken.ts';

/** Asked without blocking: readings must come in while the question stands there. */
async function ask(window: BrowserWindow): Promise<void> {
  const { response } = await dialog.showMessageBox(window, {
    message: say('window.close.question'),
    detail: say('window.close.detail'),
    buttons: [say('window.close.back'), say('window.close.keep'), say('window.close.stop')],
    cancelId: 0,
  });
  if (response === 1) window.hide();
  if (response === 2) window.destroy();
}

/** Holds the window while pans are watched, and asks once at a time. */
export function askBeforeClosing(window: BrowserWindow, attention: Attention): void {
  let isAsking = false;
  window.on('close', (event) => {
    if (!attention.watching) return;
    event.preventDefault();
    if (isAsking) return;
    isAsking = true;
    // A question that cannot be shown is none that was answered: the pans stay watched.
    void ask(window)
      .catch(() => undefined)
      .finally(() => (isAsking = false));
  });
}
