// What was kept of probes that somebody set up: their names and what their numbers are, found again by their board.
import { signal } from '@preact/signals';
import { boardName } from '../../protocol/boards.ts';
import { isOnPort } from '../../protocol/probe-setup-messages.ts';
import { ask } from '../client/store.ts';
import type { KeptProbe, KeptProbes, Now, Sensor } from '../client/types.ts';
import { say } from '../language/say.ts';
import { listed } from './listening.ts';

export const kept = signal<readonly KeptProbe[]>([]);

/** Asks the host what is kept; what was known before stays when it cannot be had. */
export async function recallProbes(): Promise<void> {
  try {
    kept.value = ((await ask({ probes_kept: true })) as KeptProbes).probes;
  } catch {
    // The connection's own band says it.
  }
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

/** Where the board of a port is; its id where no path is told. */
export const pathOf = ({ ports }: Now, id: string): string => ports.find((port) => port.id === id)?.path ?? id;

/** What the channels of the board on a path are, where the lines do not say it. */
export const sensorsAt = (path: string): Record<string, Sensor> =>
  Object.fromEntries(keptAt(path).flatMap(({ channel, sensor }) => (sensor === undefined ? [] : [[channel, sensor]])));
