// Keeps one serial port open for ever: opens it, hands its lines on, and tries again whenever it is gone.
import type { PortFormat } from '../core/boil/entries.ts';
import { LegibilityWatch, type Illegible } from './legibility-watch.ts';
import { LineSplitter } from './line-splitter.ts';
import type { OpenedPort, OpenPort } from './open-port.ts';
import { lostTrouble, openingTrouble, type Trouble } from './port-trouble.ts';
import type { Timekeeper } from './source.ts';

export interface KeptPort {
  id: string;
  path: string;
  baud: number;
  format?: PortFormat | undefined;
}

export interface KeeperListener {
  opened(): void;
  /** `why` is a whole sentence; comes once for one loss, also for a port that could not be opened at first. */
  lost(why: string): void;
  line(text: string): void;
  notice(sentence: string): void;
}

const shortestPauseMs = 250;
const longestPauseMs = 5000;

export class PortKeeper {
  #port: KeptPort;
  #openPort: OpenPort;
  #timekeeper: Timekeeper;
  #listener: KeeperListener;
  #stopped = false;
  /** Ends what the loop waits for now. */
  #wake: () => void = () => undefined;
  #isLost = false;
  #said: Trouble | null = null;
  #ended: Promise<void>;

  constructor(port: KeptPort, openPort: OpenPort, timekeeper: Timekeeper, listener: KeeperListener) {
    this.#port = port;
    this.#openPort = openPort;
    this.#timekeeper = timekeeper;
    this.#listener = listener;
    this.#ended = this.#keep();
  }

  /** Resolves when the port is closed and nothing more will come. */
  stop(): Promise<void> {
    this.#stopped = true;
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
    try {
      opened = await this.#openPort(this.#port.path, this.#port.baud, { bytes: this.#reader(), gone });
    } catch (error) {
      this.#lose(openingTrouble(this.#port, error));
      return false;
    }
    if (!this.#stopped) {
      this.#isLost = false;
      this.#said = null;
      // Before anything is said: the listener may stop this port from within what it hears.
      this.#wake = gone;
      this.#listener.opened();
      await untilGone;
    }
    await opened.close();
    this.#lose(lostTrouble(this.#port));
    return true;
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
      this.#listener.notice(trouble.sentence);
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
