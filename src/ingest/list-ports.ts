// Lists the serial ports that the system knows, for choosing one; a path may always be typed instead.
import { SerialPort } from 'serialport';
import type { PortListing } from '../protocol/messages.ts';

export interface ListedPorts {
  ports: PortListing[];
  /** One sentence when they could not be listed; null when they were. */
  why: string | null;
}

interface SystemPort {
  path: string;
  manufacturer?: string | undefined;
  serialNumber?: string | undefined;
}

/**
 * Boards that tell their maker or serial number first, bare ports of the machine after them. Never throws:
 * Linux without udev cannot list. Pseudo terminals and links are never in the list, and open all the same.
 */
export async function listPorts(list: () => Promise<SystemPort[]> = () => SerialPort.list()): Promise<ListedPorts> {
  try {
    const ports = (await list()).map(listing);
    return { ports: ports.sort((a, b) => bareness(a) - bareness(b) || (a.path < b.path ? -1 : 1)), why: null };
  } catch (error) {
    const cause = error instanceof Error ? error.message : String(error);
    return {
      ports: [],
      why: `The serial ports cannot be listed on this system (${cause}): type the port's path instead.`,
    };
  }
}

const listing = ({ path, manufacturer, serialNumber }: SystemPort): PortListing => ({
  path,
  maker: manufacturer ?? null,
  serialNumber: serialNumber ?? null,
});

const bareness = (port: PortListing): number => (port.maker === null && port.serialNumber === null ? 1 : 0);
