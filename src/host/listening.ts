// Opens ports without a boil, so that a person sees which probe shows what; nothing of it is kept.
import { advance, applyEntry, startBoil } from '../core/boil/fold.ts';
import type { BoilState } from '../core/boil/fold.ts';
import { boilView } from '../core/boil/view.ts';
import { serialSource } from '../ingest/serial-source.ts';
import type { Source } from '../ingest/source.ts';
import type { Now } from '../protocol/messages.ts';
import { BoilClock, isoWithOffset } from './clock.ts';
import type { MachineClock } from './clock.ts';
import { foldTools } from './fold-tools.ts';

const BAUD = 9600;

export interface ListenPort {
  path: string;
  baud?: number | undefined;
}

export class Listening {
  readonly #clock: BoilClock;
  readonly #source: Source;
  #state: BoilState;

  constructor(ports: readonly ListenPort[], machine: MachineClock, changed: () => void) {
    this.#clock = new BoilClock(machine, 0);
    this.#state = startBoil({
      recording: 'panwarden',
      version: 1,
      started: isoWithOffset(machine.wallMs()),
      ports: ports.map(({ path, baud }) => ({ id: path, path, baud })),
    });
    this.#source = serialSource({
      ports: ports.map(({ path, baud }) => ({ id: path, path, baud: baud ?? BAUD })),
      timekeeper: this.#clock,
    });
    this.#source.start({
      item: (item) => {
        this.#state =
          item.kind === 'entry' ? applyEntry(this.#state, item.entry, foldTools) : advance(this.#state, item.t);
        changed();
      },
      notice: changed,
    });
  }

  view(): Pick<Now, 'probes' | 'ports'> {
    const { probes, ports } = boilView(this.#state, this.#clock.now());
    return { probes, ports: ports.map((port) => ({ ...port, why: namedOnce(port.why, port.id) })) };
  }

  close(): Promise<void> {
    return this.#source.stop();
  }
}

/** Outside of a boil a port's id is its path, and a sentence that gives both would say the path twice. */
function namedOnce(why: string | null, path: string): string | null {
  return why === null ? null : why.replace(`Port ${path} (${path})`, `Port ${path}`);
}
