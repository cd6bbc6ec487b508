// Keeps one serial port open for ever: opens it, hands its lines on, and tries again whenever it is gone.
import type { PortFormat } from '../core/boil/entries.ts';
import type { MovedPort } from '../protocol/probe-messages.ts';
import type { BoardFinder } from './board-finder.ts';
import { LegibilityWatch, type Illegible } from './legibility-watch.ts';
import { LineSplitter } from './line-splitter.ts';
import type { OpenedPort, OpenPort } from './open-port.ts';
import {
  lostTrouble,
  movedSentence,
  openingTrouble,
  perhapsSentence,
  whereTrouble,
  type Trouble,
} from './port-trouble.ts';
import type { Timekeeper } from './source.ts';

export interface KeptPort {
  id: string;
  path: string;
  baud: number;
  format?: PortFormat | undefined;
  /** What the board says of itself (device-identity.ts); learnt when the port opens where it is not given. */
  device?: string | undefined;
}

export interface KeeperListener {
  opened(): void;
  /** `why` is a whole sentence; comes once for one loss, also for a port that could not be opened at first. */
  lost(why: string): void;
  line(text: string): void;
  /** `untilOpen`: it is over as soon as the port is open. */
  notice(sentence: string, untilOpen?: boolean): void;
  /** The board may be on another port; null when there is nothing to ask any more. */
  asks?(moved: MovedPort | null): void;
  /** What the board on the port's path says of itself, where nobody had said it. */
  learnt?(device: string): void;
}

export interface KeeperTools {
  openPort: OpenPort;
  timekeeper: Timekeeper;
  /** null where boards cannot be looked for. */
  finder: BoardFinder | null;
}

const shortestPauseMs = 250;
const longestPauseMs = 5000;

export class PortKeeper {
  #port: KeptPort;
  #openPort: OpenPort;
  #timekeeper: Timekeeper;
  #finder: BoardFinder | null;
  #listener: KeeperListener;
  #asked: MovedPort | null = null;
  #stopped = false;
  /** Ends what the loop waits for now. */
  #wake: () => void = () => undefined;
  #isLost = false;
  #said: Trouble | null = null;
  #ended: Promise<void>;

  constructor(port: KeptPort, { openPort, timekeeper, finder }: KeeperTools, listener: KeeperListener) {
    this.#port = { ...port };
    this.#openPort = openPort;
    this.#timekeeper = timekeeper;
    this.#finder = finder;
    this.#listener = listener;
    this.#ended = this.#keep();
  }

  /** Where the board is now, as far as is known. */
  get path(): string {
    return this.#port.path;
  }

  /** Resolves when the port is closed and nothing more will come. */
  stop(): Promise<void> {
    this.#stopped = true;
    this.#ask(null);
    this.#wake();
    return this.#ended;
  }

  async #keep(): Promise<void> {
    for (let pauseMs = shortestPauseMs; !this.#stopped; pauseMs = Math.min(longestPauseMs, pauseMs * 2)) {
      if (await this.#oneOpening()) pauseMs = shortestPauseMs;
      if (!this.#stopped) await this.#pause(pauseMs);
    }
  }

  /** True when the port was open for a while. */
  async #oneOpening(): Promise<boolean> {
    let gone: () => void = () => undefined;
    const untilGone = new Promise<void>((resolve) => (gone = resolve));
    let opened: OpenedPort;
    if (!(await this.#isToOpen()) || this.#stopped) return false;
    try {
      opened = await this.#openPort(this.#port.path, this.#port.baud, { bytes: this.#reader(), gone });
    } catch (error) {
      this.#lose(await openingTrouble(this.#port, error));
      return false;
    }
    if (!this.#stopped) {
      this.#isLost = false;
      this.#said = null;
      // Before anything is said: the listener may stop this port from within what it hears.
      this.#wake = gone;
      this.#listener.opened();
      this.#learnDevice();
      await untilGone;
    }
    await opened.close();
    this.#lose(lostTrouble(this.#port));
    return true;
  }

  /** Looks for the board first, where it is known what it says of itself: its path may be another one's by now. */
  async #isToOpen(): Promise<boolean> {
    const { device } = this.#port;
    if (device === undefined || this.#finder === null) return true;
    const place = await this.#finder.find(device, this.#port.path);
    if (this.#stopped) return false;
    if (place.kind === 'moved') {
      this.#listener.notice(movedSentence(this.#port, place.path));
      this.#port.path = place.path;
    }
    this.#ask(place.kind === 'perhaps' ? place.path : null);
    const trouble = whereTrouble(this.#port, place);
    if (trouble !== null) this.#lose(trouble);
    return trouble === null;
  }

  #ask(to: string | null): void {
    if (to === (this.#asked?.to ?? null)) return;
    const { id, path } = this.#port;
    this.#asked = to === null ? null : { port: id, from: path, to, sentence: perhapsSentence(this.#port, to) };
    this.#listener.asks?.(this.#asked);
  }

  /** So that a board that comes back under another path is found again, though nobody said what it is. */
  #learnDevice(): void {
    if (this.#port.device !== undefined || this.#finder === null) return;
    const { path } = this.#port;
    void this.#finder.identityAt(path).then((identity) => {
      if (identity === null || path !== this.#port.path || this.#stopped) return;
      this.#port.device = identity;
      this.#listener.learnt?.(identity);
    });
  }

  /** Lines and notices go straight on: there is no queue here to overflow, the system's own buffer holds the rest. */
  #reader(): (bytes: Uint8Array) => void {
    const splitter = new LineSplitter();
    const watch = new LegibilityWatch(this.#port.format);
    let overlongSaid = false;
    return (bytes) => {
      if (this.#stopped) return;
      const lines = splitter.push(bytes);
      for (const line of lines) this.#listener.line(line);
      if (splitter.overlong > 0 && !overlongSaid) {
        overlongSaid = true;
        this.#say('sends unreadable data, more than 4096 bytes without a line end: check the baud rate and the board.');
      }
      const illegible = watch.take(bytes, lines, this.#timekeeper.now());
      if (illegible !== null) this.#sayIllegible(illegible);
    };
  }

  #lose(trouble: Trouble): void {
    if (this.#stopped) return;
    // A port that was pulled is then not there: that is the same news, said already.
    const isNews =
      this.#said?.kind !== trouble.kind && !(this.#said?.kind === 'unplugged' && trouble.kind === 'missing');
    if (isNews) {
      this.#said = trouble;
      this.#listener.notice(trouble.sentence, true);
    }
    if (!this.#isLost) this.#listener.lost(trouble.sentence);
    this.#isLost = true;
  }

  #sayIllegible(illegible: Illegible): void {
    if (illegible.kind === 'wrong-baud') {
      this.#say(`is open; data arrives but cannot be read: check the baud rate (it is ${this.#port.baud}).`);
    } else {
      const why = illegible.reason === null ? '' : ` (${illegible.reason})`;
      this.#say(`sends text, but no readings are found in it${why}: check the format of its lines.`);
    }
  }

  #say(words: string): void {
    this.#listener.notice(`Port ${this.#port.id} (${this.#port.path}) ${words}`);
  }

  #pause(milliseconds: number): Promise<void> {
    return new Promise((resolve) => {
      const callOff = this.#timekeeper.after(milliseconds, resolve);
      this.#wake = () => {
        callOff();
        resolve();
      };
    });
  }
}
