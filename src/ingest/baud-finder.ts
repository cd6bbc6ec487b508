// Finds how fast a board speaks: tries the usual baud rates, one opening each, until one gives lines that can be read.
import type { PortFormat } from '../core/boil/entries.ts';
import { isPrintable } from './formats/value.ts';
import { LineSplitter } from './line-splitter.ts';
import type { OpenedPort, OpenPort } from './open-port.ts';
import { openingTrouble } from './port-trouble.ts';
import { readLine } from './read-line.ts';
import type { Timekeeper } from './source.ts';

/** Common practice: boards' examples speak at 9600 or 115200; the others in order of how often they are met. */
export const USUAL_BAUDS: readonly number[] = [9600, 115200, 57600, 38400, 19200, 4800, 2400, 1200];

/** Opening resets many boards, which then start for up to 3 s before their first line. */
const PATIENCE_MS = 5000;
const HELD_PAUSE_MS = 1000;
/** One line may be readable by chance where the rates are multiples of each other. */
const LINES_WANTED = 2;
/** So many bytes that are no text tell a wrong rate before the time is over. */
const GARBAGE_BYTES = 32;

export interface BaudFinderListener {
  tries(baud: number): void;
  /** The port cannot be opened now, in a sentence; it is tried again. */
  waits(why: string): void;
  /** null when none of them gave readable lines; `heard` tells whether anything came at all. */
  found(baud: number | null, heard: boolean): void;
}

export interface BaudFinderOptions {
  path: string;
  format?: PortFormat | undefined;
  openPort: OpenPort;
  timekeeper: Timekeeper;
  bauds?: readonly number[] | undefined;
}

export class BaudFinder {
  readonly #options: BaudFinderOptions;
  readonly #listener: BaudFinderListener;
  readonly #ended: Promise<void>;
  #stopped = false;
  #heard = false;
  #wake: () => void = () => undefined;

  constructor(options: BaudFinderOptions, listener: BaudFinderListener) {
    this.#options = options;
    this.#listener = listener;
    this.#ended = this.#find();
  }

  /** Resolves when the port is free again; nothing is said after that. */
  stop(): Promise<void> {
    this.#stopped = true;
    this.#wake();
    return this.#ended;
  }

  async #find(): Promise<void> {
    for (const baud of this.#options.bauds ?? USUAL_BAUDS) {
      if (this.#stopped) return;
      this.#listener.tries(baud);
      if (await this.#isReadable(baud)) {
        if (!this.#stopped) this.#listener.found(baud, true);
        return;
      }
    }
    if (!this.#stopped) this.#listener.found(null, this.#heard);
  }

  async #isReadable(baud: number): Promise<boolean> {
    const { path, openPort, timekeeper } = this.#options;
    while (!this.#stopped) {
      const trial = new BaudTrial(this.#options.format);
      let decide: () => void = () => undefined;
      const decided = new Promise<void>((resolve) => (decide = resolve));
      let opened: OpenedPort;
      try {
        opened = await openPort(path, baud, {
          bytes: (chunk) => {
            this.#heard = true;
            if (trial.take(chunk) !== 'open') decide();
          },
          gone: decide,
        });
      } catch (error) {
        const { sentence } = await openingTrouble({ id: path, path }, error);
        if (this.#stopped) return false;
        this.#listener.waits(sentence);
        await this.#pause(HELD_PAUSE_MS);
        continue;
      }
      this.#wake = decide;
      const callOff = timekeeper.after(PATIENCE_MS, decide);
      if (!this.#stopped) await decided;
      callOff();
      await opened.close();
      return trial.verdict === 'readable';
    }
    return false;
  }

  #pause(milliseconds: number): Promise<void> {
    return new Promise((resolve) => {
      const callOff = this.#options.timekeeper.after(milliseconds, resolve);
      this.#wake = () => {
        callOff();
        resolve();
      };
    });
  }
}

/** What the bytes of one opening say of its rate. */
class BaudTrial {
  readonly #splitter = new LineSplitter();
  readonly #format: PortFormat | undefined;
  #bytes = 0;
  #garbage = 0;
  #lines = 0;
  verdict: 'open' | 'readable' | 'garbage' = 'open';

  constructor(format: PortFormat | undefined) {
    this.#format = format;
  }

  take(chunk: Uint8Array): BaudTrial['verdict'] {
    this.#bytes += chunk.length;
    for (const byte of chunk) if (!isText(byte)) this.#garbage += 1;
    for (const line of this.#splitter.push(chunk)) if (this.#isReadable(line)) this.#lines += 1;
    if (this.#lines >= LINES_WANTED) this.verdict = 'readable';
    else if (this.#bytes >= GARBAGE_BYTES && this.#garbage > this.#bytes / 5) this.verdict = 'garbage';
    return this.verdict;
  }

  #isReadable(line: string): boolean {
    return Buffer.from(line, 'latin1').every(isText) && readLine(line, this.#format).readings.length > 0;
  }
}

const isText = (byte: number): boolean => isPrintable(byte) || byte === 0x0a || byte === 0x0d || byte === 0x09;
