// Opens ports without a boil, so that a person sees which probe shows what; nothing of it is kept.
import type { PortFormat, ProbeSetup, Sensor } from '../core/boil/entries.ts';
import { channelName } from '../core/boil/cold-junction.ts';
import { advance, applyEntry, startBoil } from '../core/boil/fold.ts';
import type { BoilState } from '../core/boil/fold.ts';
import { boilView } from '../core/boil/view.ts';
import { BaudFinder } from '../ingest/baud-finder.ts';
import { openSerialPort } from '../ingest/open-port.ts';
import type { OpenPort } from '../ingest/open-port.ts';
import { serialSource } from '../ingest/serial-source.ts';
import type { Source, SourceItem } from '../ingest/source.ts';
import type { HeardPort, Now } from '../protocol/messages.ts';
import { BoilClock, isoWithOffset } from './clock.ts';
import type { MachineClock } from './clock.ts';
import { foldTools } from './fold-tools.ts';

const BAUD = 9600;
const LINES_SHOWN = 50;

export interface ListenPort {
  path: string;
  /** 9600 unless said; 'find' tries the usual ones. */
  baud?: number | 'find' | undefined;
  format?: PortFormat | undefined;
  /** What a channel's numbers are, where the line does not say it. */
  sensors?: Readonly<Record<string, Sensor>> | undefined;
}

export class Listening {
  readonly #clock: BoilClock;
  readonly #machine: MachineClock;
  readonly #changed: () => void;
  readonly #openPort: OpenPort;
  readonly #ports = new Map<string, Listened>();
  #state: BoilState;
  #closed = false;

  constructor(
    ports: readonly ListenPort[],
    machine: MachineClock,
    changed: () => void,
    openPort: OpenPort = openSerialPort,
  ) {
    this.#clock = new BoilClock(machine, 0);
    this.#machine = machine;
    this.#changed = changed;
    this.#openPort = openPort;
    this.#state = startBoil({
      recording: 'panwarden',
      version: 1,
      started: isoWithOffset(machine.wallMs()),
      ports: ports.map(({ path, format }) => ({ id: path, path, format })),
      probes: ports.flatMap(toldProbes),
    });
    for (const port of ports) this.#listenTo(port);
  }

  view(): Pick<Now, 'probes' | 'ports'> {
    const { probes, ports } = boilView(this.#state, this.#clock.now());
    // What is known of a probe a boil begins with; here nothing is.
    const bare = probes.map((probe) => ({ ...probe, correctionC: null }));
    return { probes: bare, ports: ports.map((port) => ({ ...port, why: namedOnce(port.why, port.id) })) };
  }

  /** What one of the ports sent; null when it is not listened to. */
  heard(path: string): HeardPort | null {
    const port = this.#ports.get(path);
    if (port === undefined) return null;
    const lost = this.view().ports.find(({ id }) => id === path)?.why ?? null;
    return { ...port.heard, why: lost ?? port.heard.why };
  }

  /** What is known of its channels now. */
  look(): { state: BoilState; t: number } {
    return { state: this.#state, t: this.#clock.now() };
  }

  async close(): Promise<void> {
    this.#closed = true;
    await Promise.all([...this.#ports.values()].flatMap(({ finder, source }) => [finder?.stop(), source?.stop()]));
  }

  #listenTo({ path, baud = BAUD, format }: ListenPort): void {
    const port: Listened = {
      heard: { path, baud: null, finding: 'looking', tried: [], lines: [], why: null },
      format,
      finder: null,
      source: null,
    };
    this.#ports.set(path, port);
    if (baud === 'find') this.#find(port);
    else this.#open(port, baud, 'given');
  }

  #find(port: Listened): void {
    const { heard, format } = port;
    const options = { path: heard.path, format, openPort: this.#openPort, timekeeper: this.#clock };
    const say = (why: string | null): void => {
      heard.why = namedOnce(why, heard.path);
      this.#changed();
    };
    port.finder = new BaudFinder(options, {
      tries: (baud) => {
        heard.tried = [...heard.tried, baud];
        say(null);
      },
      waits: say,
      found: (baud, isHeard) => {
        if (baud !== null) this.#open(port, baud, 'found');
        else {
          heard.finding = 'not-found';
          say(notFoundSentence(heard, isHeard));
        }
      },
    });
  }

  #open(port: Listened, baud: number, finding: HeardPort['finding']): void {
    if (this.#closed) return;
    const { heard, format } = port;
    heard.baud = baud;
    heard.finding = finding;
    const { path } = heard;
    port.source = serialSource({
      ports: [{ id: path, path, baud, format }],
      timekeeper: this.#clock,
      openPort: this.#openPort,
    });
    port.source.start({
      item: (item) => this.#take(port, item),
      notice: ({ sentence }) => {
        heard.why = namedOnce(sentence, path);
        this.#changed();
      },
    });
    if (finding === 'found') this.#changed();
  }

  /** Several ports bring their items by themselves: what comes a moment late is taken at the time that was reached. */
  #take({ heard }: Listened, item: SourceItem): void {
    if (item.kind === 'entry') {
      const { entry } = item;
      if ('line' in entry) {
        const line = { at: isoWithOffset(this.#machine.wallMs()), text: entry.line };
        heard.lines = [...heard.lines, line].slice(-LINES_SHOWN);
      } else if ('state' in entry && entry.state === 'open') heard.why = null;
      this.#state = applyEntry(this.#state, entry, foldTools);
    } else this.#state = advance(this.#state, item.t);
    this.#changed();
  }
}

/** Named as channels that nobody told of are, so that they are offered in the same way. */
const toldProbes = ({ path, sensors = {} }: ListenPort): ProbeSetup[] =>
  Object.entries(sensors).map(([channel, sensor]) => ({ id: channelName(path, channel), port: path, channel, sensor }));

interface Listened {
  heard: HeardPort;
  format: PortFormat | undefined;
  finder: BaudFinder | null;
  source: Source | null;
}

function notFoundSentence({ path, tried }: HeardPort, isHeard: boolean): string {
  return isHeard
    ? `Port ${path} sends data that cannot be read at ${tried.join(', ')} baud: look up the board's baud rate or the format of its lines, and give it by hand.`
    : `Nothing comes from port ${path} at any of the usual baud rates: check the board's power and program, and that this is its port.`;
}

/** Outside of a boil a port's id is its path, and a sentence that gives both would say the path twice. */
function namedOnce(why: string | null, path: string): string | null {
  return why === null ? null : why.replace(`Port ${path} (${path})`, `Port ${path}`);
}
