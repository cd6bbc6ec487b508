// One reading process as the program sees it: it opens a port, and is ended when it is stuck.
import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { programFile } from '../program/program-files.ts';
import type { OpenedPort, PortEvents } from './open-port.ts';
import type { FromReader, ToReader } from './reader-messages.ts';

/** What such a process runs. */
export const READER = fileURLToPath(programFile('./reader', import.meta.url));
/** The adapter was pulled, and the library reads nothing over and over: so much of a second's processor time, ms. */
const BUSY_MS = 200;
const BUSY_BEATS = 2;
/** A machine that is full of other work may keep a process waiting for seconds. */
const SILENT_MS = 20_000;
const CLOSE_WITHIN_MS = 2000;
const LOOK_EVERY_MS = 1000;

type State = 'idle' | 'opening' | 'open' | 'closing' | 'dead';

/** A process that runs reader.ts, however it was started. */
export interface ReaderChild {
  say(message: ToReader): void;
  /** Ends it at once, even where it never comes back from a read. */
  kill(): void;
}

/** Starts one; it is told what the process says, and, once, that it is gone. */
export type StartReader = (hear: (message: FromReader) => void, gone: () => void) => ReaderChild;

/** By Node. */
export const forkReader =
  (file = READER): StartReader =>
  (hear, gone) => {
    const child = fork(file, [], {
      serialization: 'advanced',
      execArgv: ['--max-old-space-size=64', '--no-warnings'],
      // The loader and the look of a test are for the program alone.
      env: { ...process.env, NODE_OPTIONS: '' },
      stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
      // In a group of its own, an interrupt from the keyboard is for the program alone, which then closes its ports.
      detached: process.platform !== 'win32',
    });
    child.unref();
    child.channel?.unref();
    child.on('message', (message) => hear(message as FromReader));
    child.on('error', gone);
    child.on('exit', gone);
    return {
      say: (message) => void (child.connected && child.send(message, () => undefined)),
      kill: () => void child.kill('SIGKILL'),
    };
  };

export class ReaderProcess {
  readonly #child: ReaderChild;
  readonly #timer: NodeJS.Timeout;
  #state: State = 'idle';
  #events: PortEvents | null = null;
  #answer: { opened: () => void; failed: (error: Error) => void } | null = null;
  #closed: () => void = () => undefined;
  #cameSinceBeat = false;
  #busyBeats = 0;
  #lastBeatMs = performance.now();

  constructor(start: StartReader = forkReader()) {
    this.#child = start(
      (message) => this.#hear(message),
      () => this.#die(),
    );
    this.#timer = setInterval(() => this.#look(), LOOK_EVERY_MS).unref();
  }

  /** It may open a port. */
  get isIdle(): boolean {
    return this.#state === 'idle';
  }

  get isDead(): boolean {
    return this.#state === 'dead';
  }

  /** Rejects with the library's own error when the port cannot be opened; the process is idle again then. */
  open(path: string, baud: number, events: PortEvents): Promise<OpenedPort> {
    this.#state = 'opening';
    this.#events = events;
    this.#busyBeats = 0;
    return new Promise((resolve, reject) => {
      this.#answer = {
        opened: () => resolve({ close: () => this.#close() }),
        failed: reject,
      };
      this.#child.say({ open: { path, baud } });
    });
  }

  /** Ends it at once; a port that was open is gone then. */
  kill(): void {
    this.#child.kill();
    this.#die();
  }

  #hear(message: FromReader): void {
    this.#lastBeatMs = performance.now();
    if (this.#state === 'dead') return;
    if ('bytes' in message) this.#take(message.bytes);
    else if ('beat' in message) this.#beat(message.beat);
    else if ('gone' in message) this.#gone();
    else if ('closed' in message) this.#closed();
    else this.#opened(message);
  }

  #opened(message: { opened: true } | { failed: string }): void {
    const answer = this.#answer;
    this.#answer = null;
    this.#state = 'opened' in message ? 'open' : 'idle';
    if ('opened' in message) answer?.opened();
    else answer?.failed(new Error(message.failed));
  }

  #take(bytes: Uint8Array): void {
    this.#cameSinceBeat = true;
    if (this.#state === 'open') this.#events?.bytes(bytes);
    // What else waits comes before the next piece.
    setImmediate(() => this.#child.say({ next: true }));
  }

  /** Bytes that come cost processor time; where none come, so much of it is a read that never ends. */
  #beat(cpuMs: number): void {
    const isBusy = this.#state !== 'idle' && !this.#cameSinceBeat && cpuMs > BUSY_MS;
    this.#cameSinceBeat = false;
    this.#busyBeats = isBusy ? this.#busyBeats + 1 : 0;
    if (this.#busyBeats >= BUSY_BEATS) this.kill();
  }

  #look(): void {
    if (performance.now() - this.#lastBeatMs > SILENT_MS) this.kill();
  }

  #gone(): void {
    if (this.#state !== 'open') return;
    this.#state = 'closing';
    this.#events?.gone();
  }

  /** A port that does not close in time is closed by the end of its process. */
  #close(): Promise<void> {
    if (this.#state === 'dead') return Promise.resolve();
    this.#state = 'closing';
    return new Promise((resolve) => {
      const timer = setTimeout(() => this.kill(), CLOSE_WITHIN_MS);
      this.#closed = () => {
        clearTimeout(timer);
        this.#events = null;
        if (this.#state !== 'dead') this.#state = 'idle';
        resolve();
      };
      this.#child.say({ close: true });
    });
  }

  #die(): void {
    if (this.#state === 'dead') return;
    const before = this.#state;
    this.#state = 'dead';
    clearInterval(this.#timer);
    this.#answer?.failed(new Error('the process that reads the port ended'));
    if (before === 'open') this.#events?.gone();
    this.#closed();
  }
}
