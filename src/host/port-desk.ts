// Answers for ports and boards: which there are, what they send without a boil, and what was kept of a board.
import { BoardFinder } from '../ingest/board-finder.ts';
import { listPorts, systemPorts } from '../ingest/list-ports.ts';
import type { ListSystemPorts } from '../ingest/list-ports.ts';
import type { OpenPort } from '../ingest/open-port.ts';
import type { Notebook } from '../notebook/contract.ts';
import type { KnownDevice, MovedPort, ProbeCommand } from '../protocol/probe-messages.ts';
import type { MachineClock } from './clock.ts';
import { Listening } from './listening.ts';
import type { ListenPort } from './listening.ts';
import { done, refused } from './outcome.ts';
import type { Outcome } from './outcome.ts';
import type { BoilRun } from './boil-run.ts';

const DEVICES_KEY = 'devices';

export interface PortDeskOptions {
  notebook: Notebook;
  machine: MachineClock;
  /** The boil that runs, or null. */
  running(): BoilRun | null;
  /** Tells whoever watches; at once where it cannot wait. */
  changed(urgent: boolean): void;
  /** The system's own list unless said. */
  list?: ListSystemPorts | undefined;
  /** By Node's own processes unless said. */
  openPort?: OpenPort | undefined;
}

export class PortDesk {
  readonly #options: PortDeskOptions;
  readonly #list: ListSystemPorts;
  readonly #moved = new Map<string, MovedPort>();
  #listening: Listening | null = null;
  /** Resolves when what was asked to be listened to last is. */
  #asked: Promise<unknown> = Promise.resolve();

  constructor(options: PortDeskOptions) {
    this.#options = options;
    this.#list = options.list ?? systemPorts;
  }

  /** What is listened to outside of a boil. */
  get listening(): Listening | null {
    return this.#listening;
  }

  async do(command: ProbeCommand): Promise<Outcome> {
    if ('ports' in command) return this.#ports();
    if ('listen' in command) return this.#listen(command.listen);
    if ('heard_port' in command) return this.#heard(command.heard_port.path);
    if ('device_known' in command) return { ok: true, data: this.knownDevice(command.device_known.identity) };
    if ('device_keep' in command) {
      this.keepDevice(command.device_keep.identity, command.device_keep.known as KnownDevice | null);
      return done;
    }
    if ('ports_moved' in command) return { ok: true, data: [...this.#moved.values()] };
    return this.#use(command.port_use);
  }

  /** What a person confirmed of the board with this identity; null when nothing was kept. */
  knownDevice(identity: string): KnownDevice | null {
    return this.#devices()[identity] ?? null;
  }

  /** Keeps it in the notebook in place of what was kept; null forgets it. */
  keepDevice(identity: string, known: KnownDevice | null): void {
    const { [identity]: _, ...others } = this.#devices();
    this.#options.notebook.keepSetting(DEVICES_KEY, known === null ? others : { ...others, [identity]: known });
  }

  /** The board of a port may be elsewhere, and a person is to be asked; null when there is nothing to ask any more. */
  asks(port: string, moved: MovedPort | null): void {
    if (moved === null) this.#moved.delete(port);
    else this.#moved.set(port, moved);
    this.#options.changed(false);
  }

  /** Gives the ports back that are listened to; a new boil asks nothing of an old one's boards. */
  async letGo(): Promise<void> {
    const listening = this.#listening;
    this.#listening = null;
    this.#moved.clear();
    await listening?.close();
  }

  #devices(): Record<string, KnownDevice> {
    return (this.#options.notebook.setting(DEVICES_KEY) ?? {}) as Record<string, KnownDevice>;
  }

  async #ports(): Promise<Outcome> {
    const { ports, why } = await listPorts(this.#list);
    if (why !== null) return refused(why);
    const devices = this.#devices();
    return {
      ok: true,
      data: ports.map((port) => ({ ...port, known: port.identity === null ? null : (devices[port.identity] ?? null) })),
    };
  }

  /** One after the other: of two at once the second would not know of the first's ports, and nobody would close them. */
  #listen(ports: readonly ListenPort[]): Promise<Outcome> {
    const listening = this.#asked.then(() => this.#listenTo(ports));
    this.#asked = listening.catch(() => undefined);
    return listening;
  }

  async #listenTo(ports: readonly ListenPort[]): Promise<Outcome> {
    const before = this.#listening;
    this.#listening = null;
    await before?.close();
    // Before the answer: who asked to stop must not see the probes of the port that was given back.
    this.#options.changed(true);
    if (ports.length === 0) return done;
    if (this.#options.running() !== null) return refused('A boil is running, and its ports are open already.');
    this.#listening = new Listening(
      ports,
      this.#options.machine,
      () => this.#options.changed(false),
      this.#options.openPort,
    );
    return done;
  }

  #heard(path: string): Outcome {
    const heard = this.#listening?.heard(path) ?? null;
    return heard === null ? refused(`Nobody listens to ${path}.`) : { ok: true, data: heard };
  }

  async #use({ port, path }: { port: string; path: string }): Promise<Outcome> {
    const run = this.#options.running();
    if (run === null) return refused('No boil is running.');
    const ports = run.header.ports ?? [];
    if (!ports.some(({ id }) => id === port)) return refused(`There is no port ${port} in this boil.`);
    // The board that a person chose is the port's board from now on, whatever it was known by before.
    const chosen = await new BoardFinder(this.#list, () => []).identityAt(path);
    const changed = ports.map(({ device, ...each }) => {
      const own = each.id === port ? (chosen ?? undefined) : device;
      return { ...each, ...(each.id === port ? { path } : {}), ...(own === undefined ? {} : { device: own }) };
    });
    this.asks(port, null);
    return run.set({ ports: changed });
  }
}
