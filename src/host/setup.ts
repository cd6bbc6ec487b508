// From what a person set up to what a boil begins with, and back to the ports that are to be opened.
import { isDeepStrictEqual } from 'node:util';
import type { Header } from '../core/boil/entries.ts';
import type { KeptPort } from '../ingest/port-keeper.ts';
import { setupSchema } from '../protocol/header-schema.ts';
import type { Setup } from '../protocol/header-schema.ts';
import type { PracticeWish, Settings } from '../protocol/messages.ts';
import type { BoardsOfBoil } from './boards-seen.ts';

const BAUD = 9600;

/** The header of a boil that begins at `started` (ISO 8601 with offset); its own settings of calls go before the program's. */
export function headerOf(setup: Setup | Header, started: string, settings: Settings): Header {
  const first = { recording: 'panwarden', version: 1, name: 'Boil', started };
  const { recording, version } = first;
  return {
    ...first,
    ...setup,
    recording,
    version,
    started,
    settings: { ...callSettingsOf(settings), ...setup.settings },
  } as Header;
}

/** The practice boil's header, the boil and its pots called as somebody wishes. */
export function practiceHeader(header: Header, names: PracticeWish['names']): Header {
  if (names === undefined) return header;
  const { boil, ...ofPans } = names;
  const pans = header.pans?.map((pan) => ({ ...pan, name: ofPans[pan.id as keyof typeof ofPans] ?? pan.name }));
  return { ...header, name: boil, pans } as Header;
}

/** Those of the settings that a boil's header carries: how early it calls, and how sure of a finish. */
export function callSettingsOf({ near_finish_lead_s, scorch_lead_s, low_level_lead_s, finish_probability }: Settings) {
  return { near_finish_lead_s, scorch_lead_s, low_level_lead_s, finish_probability };
}

/**
 * A port whose path the header does not say (a change left it out) is where the setup had it. `seen` says which board
 * was seen on a port's path in this boil, where nobody named one.
 */
export function portsToOpen(header: Header, setup: Setup | null, seen: BoardsOfBoil): KeptPort[] {
  return (header.ports ?? []).flatMap((port) => {
    const before = setup?.ports?.find(({ id }) => id === port.id);
    const path = port.path ?? before?.path;
    const format = port.format ?? before?.format;
    if (path === undefined) return [];
    // A port that was moved by hand is not the setup's board any more.
    const ofSetup = path === before?.path ? before.device : undefined;
    const last = seen[port.id];
    const device = port.device ?? ofSetup ?? (last?.path === path ? last.device : undefined);
    return [{ id: port.id, path, baud: port.baud ?? before?.baud ?? BAUD, format, device }];
  });
}

/** Whether two setups are the same as they would be kept. */
export function isSameSetup(one: Setup, other: Setup | null): boolean {
  // As the notebook keeps it: a field that is there but undefined is one that is not there.
  const kept = (setup: Setup | null): unknown => JSON.parse(JSON.stringify(setup));
  return isDeepStrictEqual(kept(one), kept(other));
}

/** The setup that the notebook kept, or null when there is none that holds together. */
export function keptSetup(kept: unknown): Setup | null {
  const parsed = setupSchema.safeParse(kept);
  return parsed.success ? parsed.data : null;
}
