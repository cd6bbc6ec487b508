// Tells one board from another by what it says of itself, never by what its port is called today.

/** What the system knows of a port; USB fields are missing for bare ports of the machine. */
export interface SystemPort {
  path: string;
  manufacturer?: string | undefined;
  serialNumber?: string | undefined;
  /** On Linux the by-id name. */
  pnpId?: string | undefined;
  vendorId?: string | undefined;
  productId?: string | undefined;
  /** The socket that it is in. */
  locationId?: string | undefined;
}

/** The strongest first: serial number, by-id name, then vendor, product and socket. Empty for a bare port. */
function identitiesOf({ serialNumber, pnpId, vendorId, productId, locationId }: SystemPort): string[] {
  const kind = `${vendorId ?? ''}:${productId ?? ''}`.toLowerCase();
  return [
    serialNumber ? `serial/${kind}/${serialNumber}` : '',
    pnpId ? `by-id/${kind}/${pnpId}` : '',
    vendorId && productId && locationId ? `usb/${kind}/${locationId}` : '',
  ].filter((identity) => identity !== '');
}

/** The strongest identity that no other of the ports has too; null where there is none. */
export function identityAmong(port: SystemPort, all: readonly SystemPort[]): string | null {
  const others = new Set(all.filter(({ path }) => path !== port.path).flatMap(identitiesOf));
  return identitiesOf(port).find((identity) => !others.has(identity)) ?? null;
}

/** Other ports whose board gives the same strongest identity: cheap boards share one serial number. */
export function alikeOf(port: SystemPort, all: readonly SystemPort[]): string[] {
  const [strongest] = identitiesOf(port);
  if (strongest === undefined) return [];
  return all
    .filter(({ path }) => path !== port.path)
    .flatMap((other) => (identitiesOf(other)[0] === strongest ? [other.path] : []));
}

/** Where a board is now. */
export type Whereabouts =
  | { kind: 'here' }
  | { kind: 'moved'; path: string }
  /** A board of the same make is there, and it may be another. */
  | { kind: 'perhaps'; path: string }
  /** Several give this identity, and none is on the path that it had. */
  | { kind: 'alike'; paths: string[] }
  /** On its path is another board, and it is nowhere. */
  | { kind: 'other-board' }
  | { kind: 'nowhere' };

/**
 * Looks for the board that was on `path`; `taken` are the paths of other ports that are watched. A path that the
 * system does not list (a link, a pseudo terminal) counts as `nowhere`: it may be opened all the same.
 */
export function whereIs(
  device: string,
  path: string,
  ports: readonly SystemPort[],
  taken: readonly string[],
): Whereabouts {
  const having = ports.filter((port) => identitiesOf(port).includes(device));
  if (having.some((port) => port.path === path)) return { kind: 'here' };
  const free = having.filter((port) => !taken.includes(port.path));
  if (free.length > 1) return { kind: 'alike', paths: free.map((port) => port.path) };
  if (free[0] !== undefined) return { kind: 'moved', path: free[0].path };
  const kind = kindOf(device);
  const sameMake = ports.filter(
    (port) => !taken.includes(port.path) && kind !== ':' && identitiesOf(port).some((other) => kindOf(other) === kind),
  );
  if (sameMake.length === 1 && sameMake[0] !== undefined) return { kind: 'perhaps', path: sameMake[0].path };
  const onPath = ports.find((port) => port.path === path);
  return onPath !== undefined && identitiesOf(onPath).length > 0 ? { kind: 'other-board' } : { kind: 'nowhere' };
}

const kindOf = (identity: string): string => identity.split('/')[1] ?? ':';
