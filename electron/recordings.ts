// Opens recordings that the system hands over, by a double click or the menu, and kept boils, as replays on the screen.
import { open } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { app, dialog } from 'electron';
import type { BrowserWindow } from 'electron';
import type { Host } from '../src/host/host.ts';
import { bringUp } from './attention.ts';
import { hostWords, say } from './spoken.ts';

/** Recordings end in .boil.jsonl; of that some systems look at the last part only. */
const RECORDING = /\.jsonl$/i;

/** The recording that a command line names last, as an absolute path from `folder`; null where it names none. */
export function recordingIn(words: readonly string[], folder: string): string | null {
  const named = words.filter((word) => RECORDING.test(word) && !word.startsWith('-')).at(-1);
  if (named === undefined) return null;
  // Desktops of Linux name a file by its address, which may be one on another machine.
  if (URL.parse(named)?.protocol !== 'file:') return resolve(folder, named);
  try {
    return fileURLToPath(named);
  } catch {
    return null;
  }
}

/** Shows replays in the one window, in front of everything else; a live boil goes on and calls meanwhile. */
export class Replays {
  readonly #window: BrowserWindow;
  readonly #host: Host;

  constructor(window: BrowserWindow, host: Host) {
    this.#window = window;
    this.#host = host;
  }

  /** Opens a recording without keeping it; what is wrong with it is said. */
  async open(path: string): Promise<void> {
    try {
      const file = await open(path);
      const opened = this.#host.openRecording(file.createReadStream(), basename(path));
      const { boil } = await opened.finally(() => file.close());
      app.addRecentDocument(path);
      await this.show(boil);
    } catch (error) {
      await this.#refuse(error as Error);
    }
  }

  /** Asks for a recording, and opens it. */
  async choose(): Promise<void> {
    const filters = [{ name: say('window.recordings'), extensions: ['jsonl'] }];
    const { filePaths } = await dialog.showOpenDialog(this.#window, { properties: ['openFile'], filters });
    for (const path of filePaths) await this.open(path);
  }

  /** Shows the replay of a boil: a kept one by its id, or the recording that was opened last. */
  async show(boil: string): Promise<void> {
    const answer = await this.#host.command({ ref: 'window', replay: { boil } });
    if (!answer.ok) return this.#refuse(new Error(answer.why));
    bringUp(this.#window);
    const { webContents } = this.#window;
    // A page that is just being loaded again stays where it was; the replay is open and one press away.
    await webContents.executeJavaScript("location.hash = '#/replay'").catch(() => undefined);
  }

  /** Not in a box that stops the program: readings come in meanwhile. */
  async #refuse(error: Error): Promise<void> {
    const detail = 'code' in error ? say('window.unreadable') : hostWords(error.message);
    bringUp(this.#window);
    await dialog.showMessageBox(this.#window, { type: 'error', message: say('window.no_replay'), detail });
  }
}
