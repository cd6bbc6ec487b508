// What was kept of probes that somebody set up: their names and what their numbers are, found again by their board.
import { signal } from '@preact/signals';
import { isOnPort } from '../../protocol/probe-setup-messages.ts';
import { ask } from '../client/store.ts';
import type { KeptProbe, KeptProbes, Sensor } from '../client/types.ts';
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

/** The probes that were kept of the board on that path: by the board itself, else by the path. */
export function keptAt(path: string): KeptProbe[] {
  const device = deviceAt(path);
  return kept.value.filter((one) => isOnPort(one, { path, device }));
}

/** What the channels of the board on a path are, where the lines do not say it. */
export const sensorsAt = (path: string): Record<string, Sensor> =>
  Object.fromEntries(keptAt(path).flatMap(({ channel, sensor }) => (sensor === undefined ? [] : [[channel, sensor]])));
