// Carries commands from the page to the host and the host's messages back; the one place where a speaker is checked.
import { Readable } from 'node:stream';
import { ipcMain } from 'electron';
import type { BrowserWindow } from 'electron';
import { z } from 'zod';
import type { Host } from '../src/host/host.ts';
import { maySpeak } from './rules.ts';

/** Only the outside: the host checks every command against `commandSchema` and says in a sentence what is wrong. */
const commandEnvelope = z.looseObject({ ref: z.string().max(100) });
const handedSchema = z.strictObject({ way: z.enum(['import', 'opened']), bytes: z.instanceof(Uint8Array) });

/** Serves the page of the one window, for as long as the program runs. */
export function serveWindow({ webContents }: BrowserWindow, host: Host): void {
  function handle<T>(channel: string, schema: z.ZodType<T>, act: (value: T) => unknown): void {
    ipcMain.handle(channel, (event, value: unknown) => {
      // At once, not after an await: a frame that has moved on meanwhile would no longer tell who spoke.
      const isOurs = event.sender === webContents && maySpeak(event.senderFrame, webContents.mainFrame);
      if (!isOurs) throw new Error('Only the screen of this program may speak here.');
      return act(schema.parse(value));
    });
  }

  let unsubscribe = (): void => undefined;
  handle('panwarden:listen', z.undefined(), () => {
    // A page that was loaded again is told everything from the start.
    unsubscribe();
    unsubscribe = host.subscribe(
      (message) => webContents.isDestroyed() || webContents.send('panwarden:message', message),
    );
  });
  handle('panwarden:command', commandEnvelope, (command) => host.command(command));
  handle('panwarden:hand', handedSchema, ({ way, bytes }) => {
    const given = [Readable.from([bytes]), 'the file'] as const;
    return (way === 'import' ? host.importRecording(...given) : host.openRecording(...given)).then(
      ({ boil }) => ({ ok: true, boil }),
      (error: Error) => ({ ok: false, why: error.message }),
    );
  });
}
