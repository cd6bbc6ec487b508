// Looks a board up in the system's list of ports by what it says of itself.
import { realpath } from 'node:fs/promises';
import { identityAmong, whereIs } from './device-identity.ts';
import type { SystemPort, Whereabouts } from './device-identity.ts';
import type { ListSystemPorts } from './list-ports.ts';

export class BoardFinder {
  readonly #list: ListSystemPorts;
  readonly #taken: () => readonly string[];

  /** `taken` gives the paths of all ports that are watched. */
  constructor(list: ListSystemPorts, taken: () => readonly string[]) {
    this.#list = list;
    this.#taken = taken;
  }

  /** Where the board is that was on `path`; `nowhere` where ports cannot be listed. Never rejects. */
  async find(device: string, path: string): Promise<Whereabouts> {
    const [ports, real] = await Promise.all([this.#ports(), realOf(path)]);
    const taken = this.#taken().filter((each) => each !== path);
    return whereIs(device, real, ports, taken);
  }

  /** What the board on a path says of itself; null for what is not listed. Never rejects. */
  async identityAt(path: string): Promise<string | null> {
    const [ports, real] = await Promise.all([this.#ports(), realOf(path)]);
    const port = ports.find((each) => each.path === real);
    return port === undefined ? null : identityAmong(port, ports);
  }

  async #ports(): Promise<SystemPort[]> {
    try {
      return await this.#list();
    } catch {
      return [];
    }
  }
}

/** A person may have chosen a link (by-id), and the system lists what it leads to. */
const realOf = (path: string): Promise<string> => realpath(path).catch(() => path);
