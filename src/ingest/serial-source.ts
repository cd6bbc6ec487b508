// The live source: the lines of one or more serial ports, each stamped with boil time as it comes.
import type { Entry } from '../core/boil/entries.ts';
import type { MovedPort } from '../protocol/probe-messages.ts';
import { BoardFinder } from './board-finder.ts';
import { systemPorts, type ListSystemPorts } from './list-ports.ts';
import { openSerialPort, type OpenPort } from './open-port.ts';
import { PortKeeper, type KeptPort } from './port-keeper.ts';
import type { Source, SourceListener, Timekeeper } from './source.ts';

/** How often time is said to have passed when nothing comes, ms: a silent probe is called within a second of its due. */
const idleEveryMs = 250;

export interface SerialSourceOptions {
  ports: KeptPort[];
  timekeeper: Timekeeper;
  /** The real ports unless said. */
  openPort?: OpenPort | undefined;
  /** Where boards are looked for by what they say of themselves; the system's list, unless ports are stood in for. */
  list?: ListSystemPorts | undefined;
  /** A board may be on another port and a person is to be asked; null when that is over. */
  asks?: ((port: string, moved: MovedPort | null) => void) | undefined;
  /** What the board of a port says of itself turned out when it was opened. */
  learnt?: ((port: string, device: string) => void) | undefined;
}

/**
 * Opens every port, reopens it whenever it is gone, and never ends by itself.
 * Entries are `open`, `lost` with a sentence of why, and lines; a port that cannot be opened gives one `lost`.
 */
export function serialSource(options: SerialSourceOptions): Source {
  return new SerialSource(options);
}

class SerialSource implements Source {
  readonly #options: SerialSourceOptions;
  readonly #timekeeper: Timekeeper;
  readonly #finder: BoardFinder | null;
  #listener: SourceListener | null = null;
  #keepers: PortKeeper[] = [];
  #callOff: () => void = () => undefined;
  #lastT = 0;
  #cameSinceIdle = false;

  constructor(options: SerialSourceOptions) {
    this.#options = options;
    this.#timekeeper = options.timekeeper;
    const list = options.list ?? (options.openPort === undefined ? systemPorts : null);
    const taken = (): string[] => this.#keepers.map(({ path }) => path);
    this.#finder = list === null ? null : new BoardFinder(list, taken);
  }

  start(listener: SourceListener): void {
    this.#listener = listener;
    for (const port of this.#options.ports) this.#keepers.push(this.#keeper(port));
    this.#waitForIdle();
  }

  async stop(): Promise<void> {
    this.#listener = null;
    this.#callOff();
    await Promise.all(this.#keepers.map((keeper) => keeper.stop()));
  }

  #keeper(port: KeptPort): PortKeeper {
    const { id } = port;
    const openPort = this.#options.openPort ?? openSerialPort;
    return new PortKeeper(
      port,
      { openPort, timekeeper: this.#timekeeper, finder: this.#finder },
      {
        opened: () => this.#entry({ t: this.#now(), port: id, state: 'open' }),
        lost: (why) => this.#entry({ t: this.#now(), port: id, state: 'lost', why }),
        line: (line) => this.#entry({ t: this.#now(), port: id, line }),
        notice: (sentence, untilOpen = false) => this.#listener?.notice({ port: id, sentence, untilOpen }),
        asks: (moved) => this.#options.asks?.(id, moved),
        learnt: (device) => this.#options.learnt?.(id, device),
      },
    );
  }

  #now(): number {
    this.#lastT = Math.max(this.#lastT, this.#timekeeper.now());
    return this.#lastT;
  }

  #entry(entry: Entry): void {
    this.#cameSinceIdle = true;
    this.#listener?.item({ kind: 'entry', entry });
  }

  #waitForIdle(): void {
    this.#callOff = this.#timekeeper.after(idleEveryMs, () => {
      this.#idle();
      if (this.#listener !== null) this.#waitForIdle();
    });
  }

  /** Says the millisecond before now: a line may still come within this one, and nothing may come at an idle's t. */
  #idle(): void {
    const t = this.#timekeeper.now() - 1;
    if (!this.#cameSinceIdle && t >= this.#lastT) {
      this.#lastT = t;
      this.#listener?.item({ kind: 'idle', t });
    }
    this.#cameSinceIdle = false;
  }
}
