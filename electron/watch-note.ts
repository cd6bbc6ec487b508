// The small sign of the desktop's bar or dock while pans are watched: that they are, how many, and what calls.
import { join } from 'node:path';
import { app, Menu, nativeImage, Tray } from 'electron';
import type { HostMessage, Now } from '../src/protocol/messages.ts';
import { hostWords, say } from './spoken.ts';

const PICTURE = join(import.meta.dirname, 'watching.png');

/** The bar of a Mac shows a picture as high as it is. */
const MAC_HEIGHT = 18;

function calling({ alarms }: Now): string[] {
  return alarms
    .filter(({ condition, answered }) => condition === 'active' && !answered)
    .map(({ title }) => hostWords(title));
}

function sentence(now: Now): string {
  const count = now.header?.pans?.length ?? 0;
  const watched = say(now.mode === 'practice' ? 'window.watches_practice' : 'window.watches', { count });
  return [watched, ...calling(now)].join('. ');
}

/** Desktops without such a bar show nothing; the program does not rest on it. */
export class WatchNote {
  readonly #show: () => void;
  #tray: Tray | null = null;
  #said: string | null = null;

  /** `show` brings the window to the front. */
  constructor(show: () => void) {
    this.#show = show;
  }

  hear(message: HostMessage): void {
    if (message.kind !== 'now' || message.view !== 'live') return;
    const isWatching = message.mode !== 'idle' && !message.ended;
    const said = isWatching ? sentence(message) : null;
    if (said === this.#said) return;
    this.#said = said;
    app.setBadgeCount(isWatching ? calling(message).length : 0);
    if (said === null) this.#remove();
    else this.#put(said);
  }

  #put(said: string): void {
    if (this.#tray === null) {
      const picture = nativeImage.createFromPath(PICTURE);
      this.#tray = new Tray(process.platform === 'darwin' ? picture.resize({ height: MAC_HEIGHT }) : picture);
      this.#tray.on('click', this.#show);
    }
    // Some bars of Linux open nothing but a menu.
    this.#tray.setContextMenu(Menu.buildFromTemplate([{ label: say('window.show_pans'), click: this.#show }]));
    this.#tray.setToolTip(said);
  }

  #remove(): void {
    this.#tray?.destroy();
    this.#tray = null;
  }
}
