// The channels that can be given to a pan: those of the boil's probes, and those just heard on a port.
import { boardName } from '../../protocol/boards.ts';
import { putRight } from './kept.ts';
import { heardPorts } from './listening.ts';
import type { Now, Port, Probe, ProbeView, Sensor } from '../client/types.ts';

/** A channel by the path or id of its port; `celsius` is put right by what is known, null while it says nothing. */
export interface Channel {
  /** The probe's id where it has one already, else `path channel`. */
  key: string;
  port: string;
  /** Where its board is; its port's id where no path is told. */
  path: string;
  channel: string;
  celsius: number | null;
}

/**
 * What listening hears outside of a boil, where a port goes by its path. The probes of a boil that runs or is
 * over are none of it: their boards are not plugged in for the next boil, or were never real.
 */
export function heardProbes(now: Now): ProbeView[] {
  const paths = new Set(heardPorts(now).map((port) => port.id));
  return now.probes.filter((probe) => paths.has(probe.port));
}

function isOf(view: ProbeView, probe: Probe, ports: readonly Port[]): boolean {
  const path = ports.find((port) => port.id === probe.port)?.path;
  return view.id === probe.id || (view.channel === probe.channel && path !== undefined && view.port === path);
}

/** Every channel once; a probe of the boil before a bare channel of the same port. */
export function channelsOf(views: readonly ProbeView[], probes: readonly Probe[], ports: readonly Port[]): Channel[] {
  const channels = probes.map((probe): Channel => {
    const view = views.find((each) => isOf(each, probe, ports));
    const path = ports.find((port) => port.id === probe.port)?.path ?? probe.port;
    const { channel } = probe;
    const celsius = view === undefined ? null : putRight(view, { path, channel });
    return { key: probe.id, port: probe.port, path, channel, celsius };
  });
  for (const view of views) {
    const port = ports.find((each) => each.id === view.port || each.path === view.port);
    const isKnown = channels.some(
      (each) => each.channel === view.channel && (each.port === view.port || each.port === port?.id),
    );
    const { id: key, port: at, channel } = view;
    const path = port?.path ?? at;
    if (!isKnown) channels.push({ key, port: at, path, channel, celsius: putRight(view, { path, channel }) });
  }
  return channels;
}

/** The name, or with a number behind it, that no port has yet: sentences that are kept name a board by its port's id. */
export function freePortId(ports: readonly { id: string }[], name: string): string {
  const taken = new Set(ports.map((port) => port.id));
  for (let n = 1; ; n += 1) {
    const id = n === 1 ? name : `${name} ${n}`;
    if (!taken.has(id)) return id;
  }
}

/** Without the fields that nobody told. */
const given = <T extends object>(fields: T): Partial<T> =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Partial<T>;

/**
 * Ports and probes with this channel among them, and the id that the channel's probe has there. `told.name` is what
 * its board is known by.
 */
export function withChannel(
  ports: readonly Port[],
  probes: readonly Probe[],
  channel: Pick<Channel, 'key' | 'port' | 'channel'>,
  told: { name?: string; baud?: number | undefined; device?: string | undefined; sensor?: Sensor | undefined },
): { ports: Port[]; probes: Probe[]; probe: string } {
  const known = probes.find((probe) => probe.id === channel.key);
  if (known !== undefined) return { ports: [...ports], probes: [...probes], probe: known.id };
  const found = ports.find((port) => port.id === channel.port || port.path === channel.port);
  const port = found ?? {
    id: freePortId(ports, told.name ?? boardName(channel.port)),
    path: channel.port,
    ...given({ baud: told.baud, device: told.device }),
  };
  const same = probes.find((probe) => probe.port === port.id && probe.channel === channel.channel);
  const fresh = { id: `${port.id}/${channel.channel}`, port: port.id, channel: channel.channel };
  const probe = same ?? { ...fresh, ...given({ sensor: told.sensor }) };
  return {
    ports: found === undefined ? [...ports, port] : [...ports],
    probes: same === undefined ? [...probes, probe] : [...probes],
    probe: probe.id,
  };
}
