// The machine's own serial sockets behind a door: nothing that tells of itself is plugged in there.
import type { JSX } from 'preact';
import type { PortListing } from '../client/types.ts';
import { say } from '../language/say.ts';

/** Boards that tell of themselves, and the machine's own sockets; one that `isWanted` stands with the boards. */
export function partPorts(
  list: readonly PortListing[],
  isWanted: (path: string) => boolean = () => false,
): { boards: PortListing[]; own: PortListing[] } {
  const isBehind = (port: PortListing): boolean => port.own && !isWanted(port.path);
  return { boards: list.filter((port) => !isBehind(port)), own: list.filter(isBehind) };
}

interface OwnPortsProps {
  ports: readonly PortListing[];
  row: (port: PortListing) => JSX.Element;
}

/** Nothing where the machine has none. */
export function OwnPorts({ ports, row }: OwnPortsProps): JSX.Element | null {
  if (ports.length === 0) return null;
  return (
    <details class="finder">
      <summary>{say('probes.own_ports', { count: ports.length })}</summary>
      <p class="hint">{say('probes.own_ports.text')}</p>
      <ul>{ports.map(row)}</ul>
    </details>
  );
}
