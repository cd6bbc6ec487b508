// Which ports the machine lists, and which of them are listened to outside of a boil.
import { effect, signal } from '@preact/signals';
import { boardCalled } from '../../protocol/boards.ts';
import { ask, live, said, tell } from '../client/store.ts';
import { say } from '../language/say.ts';
import type { Now, PortListing, PortView, Wish } from '../client/types.ts';

export type Listened = Extract<Wish, { listen: unknown }>['listen'][number];

export const listed = signal<PortListing[] | null>(null);
export const listened = signal<Listened[]>([]);

/** Asks the machine again for its ports. */
export async function findPorts(): Promise<void> {
  try {
    listed.value = (await ask({ ports: true })) as PortListing[];
  } catch (error) {
    listed.value = [];
    said.value = { good: false, sentence: error instanceof Error ? error.message : String(error) };
  }
}

/**
 * After the page was loaded anew the host may listen on: the first word of it tells to what, so that it can be stopped.
 * A boil takes the ports over, and when it is over nothing is listened to. Gives the way to stop following.
 */
export function takeUpListening(): () => void {
  let isFirst = true;
  return effect(() => {
    const now = live.value;
    if (now === null) return;
    const isOutside = now.mode === 'idle' || now.ended;
    if (isFirst && isOutside) listened.value = heardPorts(now).map(({ id: path }) => ({ path }));
    else if (!isOutside && listened.peek().length > 0) listened.value = [];
    isFirst = false;
  });
}

/** The ports that are listened to outside of a boil: there a port goes by its path, and those of a boil that is over are none. */
export const heardPorts = ({ ports }: Pick<Now, 'ports'>): PortView[] => ports.filter(({ id, path }) => id === path);

async function listenTo(list: Listened[]): Promise<void> {
  if (await tell({ listen: list })) listened.value = list;
}

/** Listens to a port from now on, in every window; throws with the host’s sentence. */
export function startListening(port: Listened): Promise<void> {
  return listenTo([...listened.value.filter((each) => each.path !== port.path), port]);
}

/** Listens to a port no more; throws with the host’s sentence. */
export function stopListening(path: string): Promise<void> {
  return listenTo(listened.value.filter((each) => each.path !== path));
}

/** The board of a port of the running boil stands on this path: it is read there from now on. */
export const readAt = (port: string, path: string): void =>
  void tell(
    { port_use: { port, path } },
    say('probes.read_at', { port: boardCalled(live.value?.header ?? null, port), path }),
  );
