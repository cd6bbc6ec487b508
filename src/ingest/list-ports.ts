// Lists the serial ports that the system knows, for choosing one; a path may always be typed instead.
import { SerialPort } from 'serialport';
import type { PortListing } from '../protocol/probe-messages.ts';
import { alikeOf, identityAmong } from './device-identity.ts';
import type { SystemPort } from './device-identity.ts';

export type { SystemPort };

export interface ListedPorts {
  ports: PortListing[];
  /** One sentence when they could not be listed; null when they were. */
  why: string | null;
}

export type ListSystemPorts = () => Promise<SystemPort[]>;

/** Rejects on Linux without udev. */
export const systemPorts: ListSystemPorts = () => SerialPort.list();

/**
 * Boards that tell their maker or serial number first, the machine's own sockets last. Never throws:
 * Linux without udev cannot list. Pseudo terminals and links are never in the list, and open all the same.
 * What is known of a board is for the host to fill in.
 */
export async function listPorts(list: ListSystemPorts = systemPorts): Promise<ListedPorts> {
  try {
    const found = await list();
    const ports = found.map((port) => listing(port, found));
    return { ports: ports.sort((a, b) => bareness(a) - bareness(b) || (a.path < b.path ? -1 : 1)), why: null };
  } catch (error) {
    const cause = error instanceof Error ? error.message : String(error);
    return {
      ports: [],
      why: `The serial ports cannot be listed on this system (${cause}): type the port's path instead.`,
    };
  }
}

function listing(port: SystemPort, all: readonly SystemPort[]): PortListing {
  const identity = identityAmong(port, all);
  const alike = alikeOf(port, all);
  return {
    path: port.path,
    maker: port.manufacturer ?? null,
    serialNumber: port.serialNumber ?? null,
    identity,
    own: isOwn(port),
    alike,
    note: alike.length === 0 ? null : alikeSentence(alike, identity),
    known: null,
  };
}

function alikeSentence(alike: readonly string[], identity: string | null): string {
  const those = alike.join(' and ');
  const cure =
    identity === null
      ? 'nothing tells them apart but the port, so warm one probe in the hand to see which is which after each start'
      : 'they are told apart by the socket that each is plugged into, so leave each in its own';
  return `This board and the one at ${those} give the same serial number: ${cure}.`;
}

/** Boards that tell of themselves, then those that tell nothing but that they are there, then the machine's own sockets. */
const bareness = ({ own, maker, serialNumber }: PortListing): number =>
  own ? 2 : maker === null && serialNumber === null ? 1 : 0;

/** Windows names the firmware's table of the machine's own devices in their id (from memory), and invents a maker. */
const isOfFirmware = (pnpId: string | undefined): boolean => pnpId?.toUpperCase().startsWith('ACPI') ?? false;

/** A board on USB always tells its vendor, and where udev runs its by-id name. */
function isOwn({ manufacturer, serialNumber, pnpId, vendorId, productId }: SystemPort): boolean {
  if (isOfFirmware(pnpId)) return true;
  return [manufacturer, serialNumber, pnpId, vendorId, productId].every((told) => told === undefined || told === '');
}
