// What a person has said so far while setting probes up; it lives in this page alone until all of it is kept at once.
import { signal } from '@preact/signals';
import { ask, tell } from '../client/store.ts';
import type { KeptProbes, Place, PortFormat, PortListing, ProbeCheck, Sensor, Settings } from '../client/types.ts';
import { kept, keptAt, recallProbes } from '../probes/kept.ts';
import { startListening, stopListening } from '../probes/listening.ts';
import { metresOf, metresShown, typedNumber } from '../words/amounts.ts';
import { say } from '../language/say.ts';

export const STEPS = ['board', 'lines', 'hand', 'boil', 'ice', 'done'] as const;
export type Step = (typeof STEPS)[number];

export interface SetupDraft {
  step: Step;
  path: string | null;
  /** The board's identity; null where nothing tells it from others. */
  device: string | null;
  baud: number | null;
  format: PortFormat | null;
  /** Names that a person gave, by channel; '' for none. */
  names: Record<string, string>;
  /** What a channel's numbers are, where the lines do not say it. */
  sensors: Record<string, Sensor>;
  checks: Record<string, Partial<Record<ProbeCheck['in'], ProbeCheck>>>;
  /** As typed, in the units shown. */
  altitude: string;
  pressure: string;
}

const EMPTY: SetupDraft = {
  step: 'board',
  path: null,
  device: null,
  baud: null,
  format: null,
  names: {},
  sensors: {},
  checks: {},
  altitude: '',
  pressure: '',
};

export const draft = signal<SetupDraft>(EMPTY);

export function change(part: Partial<SetupDraft>): void {
  draft.value = { ...draft.value, ...part };
}

/** Fills the place in that was told last, where nothing is typed yet. */
export async function recallPlace(settings: Settings): Promise<void> {
  const { place, probes } = (await ask({ probes_kept: true })) as KeptProbes;
  kept.value = probes;
  if (draft.value.altitude !== '' || place.altitude_m === undefined) return;
  change({ altitude: String(Math.round(metresShown(place.altitude_m, settings))) });
}

/** A board is chosen: it is listened to from now on, and how fast it speaks is found. */
export async function chooseBoard(board: Pick<PortListing, 'path' | 'identity' | 'known'>): Promise<void> {
  const format = board.known?.format ?? null;
  await startListening({ path: board.path, baud: board.known?.baud ?? 'find', ...(format === null ? {} : { format }) });
  change({ ...EMPTY, altitude: draft.value.altitude, step: 'lines', path: board.path, device: board.identity, format });
}

/** How its lines are read is confirmed: it is listened to in that way. */
export async function confirmFormat(
  format: PortFormat,
  baud: number | null,
  channels: readonly { channel: string; sensor: Sensor | null }[],
): Promise<void> {
  const { path, names } = draft.value;
  if (path === null) return;
  const sensors = Object.fromEntries(
    channels.flatMap(({ channel, sensor }) => (sensor === null ? [] : [[channel, sensor]])),
  );
  await startListening({ path, ...(baud === null ? {} : { baud }), format, sensors });
  const before = new Map(keptAt(path).map(({ channel, name }) => [channel, name]));
  const nameOf = (channel: string): string => names[channel] ?? before.get(channel) ?? '';
  change({
    format,
    baud,
    sensors,
    names: Object.fromEntries(channels.map(({ channel }) => [channel, nameOf(channel)])),
    step: 'hand',
  });
}

export function nameChannel(channel: string, name: string): void {
  change({ names: { ...draft.value.names, [channel]: name } });
}

/** What was typed of the place, in SI; a pressure is a barometer's at the pans. */
function placeOf({ altitude, pressure }: SetupDraft, settings: Settings): Place {
  const height = typedNumber(altitude);
  const typed = typedNumber(pressure);
  const hpa = typed === null ? null : settings.pressure === 'hpa' ? typed : typed * HPA_PER_INHG;
  return {
    ...(height === null ? {} : { altitude_m: metresOf(height, settings) }),
    ...(hpa === null ? {} : { pressure: { hpa, at: 'station' as const } }),
  };
}

/** Conventional inch of mercury (ISO 80000-4 neighbours; NIST SP 811 table B.8), hPa. */
const HPA_PER_INHG = 33.8639;

/** Asks for what the channel shows there; the sentence why not, or null when it is noted. */
export async function noteCheck(channel: string, where: ProbeCheck['in'], settings: Settings): Promise<string | null> {
  const { path, checks } = draft.value;
  if (path === null) return say('onboarding.no_board_chosen');
  try {
    const wish = { probe_check: { path, channel, in: where, place: placeOf(draft.value, settings) } };
    const check = (await ask(wish)) as ProbeCheck;
    change({ checks: { ...checks, [channel]: { ...checks[channel], [where]: check } } });
    return null;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

export const checksOf = ({ checks }: SetupDraft, channel: string): ProbeCheck[] => Object.values(checks[channel] ?? {});

/** Keeps everything at once; true when it is on disk. */
export async function keepAll(settings: Settings): Promise<boolean> {
  const now = draft.value;
  const { path, device, baud, format, names } = now;
  if (path === null) return false;
  const probes = Object.entries(names).map(([channel, name]) => ({
    path,
    device,
    channel,
    name,
    ...(now.sensors[channel] === undefined ? {} : { sensor: now.sensors[channel] }),
    checks: checksOf(now, channel),
  }));
  const isKept = await tell({ probes_keep: { baud, format, place: placeOf(now, settings), probes } });
  if (isKept) await recallProbes();
  if (isKept && device !== null) await tell({ device_keep: { identity: device, known: { baud, format } } });
  return isKept;
}

/** Nothing more of it is known here; the board is let go unless it is wanted on. */
export async function forgetDraft(letGo = true): Promise<void> {
  const { path } = draft.value;
  draft.value = EMPTY;
  if (path !== null && letGo) await stopListening(path);
}
