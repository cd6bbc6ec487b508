// What was kept of probes that somebody set up: their names and what their numbers are, found again by their board.
import { effect, signal } from '@preact/signals';
import { boardName } from '../../protocol/boards.ts';
import { isOnPort } from '../../protocol/probe-setup-messages.ts';
import { about, ask } from '../client/store.ts';
import type { Header, KeptProbe, KeptProbes, KnownProbe, Now, ProbeView, Sensor } from '../client/types.ts';
import { say } from '../language/say.ts';
import { listed } from './listening.ts';

export const kept = signal<readonly KeptProbe[]>([]);
/** What the next boil would know of them, and the names that boils had for them. */
export const known = signal<readonly KnownProbe[]>([]);

/** Asks the host what is kept; what was known before stays when it cannot be had. */
export async function recallProbes(): Promise<void> {
  try {
    kept.value = ((await ask({ probes_kept: true })) as KeptProbes).probes;
    known.value = (await ask({ probes_known: true })) as KnownProbe[];
  } catch {
    // The connection's own band says it.
  }
}

/** Names that were given are wanted in every view: they are asked for as soon as there is a host. */
export function recallOnceConnected(): void {
  const stop = effect(() => {
    if (about.value === null) return;
    void recallProbes();
    queueMicrotask(() => stop());
  });
}

/** The identity of the board that stands on a path now; undefined where nothing tells it from others. */
export const deviceAt = (path: string): string | undefined =>
  listed.value?.find((port) => port.path === path)?.identity ?? undefined;

/** What the board that stands on a path is known by. */
export const boardNameAt = (path: string): string =>
  boardName(
    path,
    listed.value?.find((port) => port.path === path),
  );

/** The probes that were kept of the board on that path: by the board itself, else by the path. */
export function keptAt(path: string): KeptProbe[] {
  const device = deviceAt(path);
  return kept.value.filter((one) => isOnPort(one, { path, device }));
}

/** "Back pot (T1)": a channel of the board on a path with the name that somebody gave it; bare where nobody did. */
export function calledProbe({ path, channel }: { path: string; channel: string }): string {
  const name = keptAt(path).find((one) => one.channel === channel)?.name ?? '';
  return name === '' ? channel : say('probes.named', { name, channel });
}

/** As calledProbe, of a probe by the id that boils have for it; null where nobody gave it a name. */
export function calledById(id: string, header: Header | null = null): string | null {
  const own = header?.probes?.find((one) => one.id === id);
  const port = header?.ports?.find((one) => one.id === own?.port);
  const at = own === undefined ? known.value.find((one) => one.id === id) : { ...port, channel: own.channel };
  const on = { path: at?.path, device: at?.device ?? undefined };
  const name = kept.value.find((one) => one.channel === at?.channel && isOnPort(one, on))?.name ?? '';
  return at === undefined || name === '' ? null : say('probes.named', { name, channel: at.channel });
}

/**
 * What a channel shows, put right by what is known of it, °C: as the boil has it that it is in, else as the next boil
 * would; null while it shows nothing.
 */
export function putRight(
  { celsius, correctionC }: Pick<ProbeView, 'celsius' | 'correctionC'>,
  { path, channel }: { path: string; channel: string },
): number | null {
  if (celsius === null) return null;
  const device = deviceAt(path);
  const own = known.value.find(
    (one) => one.channel === channel && isOnPort(one, { path, device: device ?? undefined }),
  );
  return celsius + (correctionC ?? -(own?.tooHighC ?? 0));
}

/** Where the board of a port is; its id where no path is told. */
export const pathOf = ({ ports }: Now, id: string): string => ports.find((port) => port.id === id)?.path ?? id;

/** What the channels of the board on a path are, where the lines do not say it. */
export const sensorsAt = (path: string): Record<string, Sensor> =>
  Object.fromEntries(keptAt(path).flatMap(({ channel, sensor }) => (sensor === undefined ? [] : [[channel, sensor]])));
