// What a person has said so far while setting probes up; it lives in this page alone until all of it is kept at once.
import { signal } from '@preact/signals';
import { retyped, typedQuantities } from '../boil/draft-units.ts';
import { ask, tell } from '../client/store.ts';
import type { KeptProbes, Place, PortFormat, PortListing, ProbeCheck, Sensor, Settings } from '../client/types.ts';
import { kept, keptAt, recallProbes } from '../probes/kept.ts';
import { listened, startListening, stopListening } from '../probes/listening.ts';
import type { Listened } from '../probes/listening.ts';
import { hpaOf, metresOf, metresShown, typedNumber } from '../words/amounts.ts';
import { say } from '../language/say.ts';

export const STEPS = ['board', 'lines', 'hand', 'boil', 'ice', 'done'] as const;
export type Step = (typeof STEPS)[number];

export interface SetupDraft {
  step: Step;
  path: string | null;
  /** Where a board that the machine does not list was said to be; it stays there to be put right. */
  typed: string;
  /** How the board was listened to before it was chosen here; null where it was not, and is let go with the draft. */
  before: Listened | null;
  /** The board's identity; null where nothing tells it from others. */
  device: string | null;
  baud: number | null;
  format: PortFormat | null;
  /** Names that a person gave, by channel; '' for none. */
  names: Record<string, string>;
  /** What a channel's numbers are, where the lines do not say it. */
  sensors: Record<string, Sensor>;
  checks: Record<string, Partial<Record<ProbeCheck['in'], ProbeCheck>>>;
  place: PlaceTyped;
}

/** Height over the sea and pressure as they were typed, in the units of then; null before anybody did. */
export interface PlaceTyped {
  altitude: string;
  pressure: string;
  units: Settings | null;
}

const EMPTY: SetupDraft = {
  step: 'board',
  path: null,
  typed: '',
  before: null,
  device: null,
  baud: null,
  format: null,
  names: {},
  sensors: {},
  checks: {},
  place: { altitude: '', pressure: '', units: null },
};

export const draft = signal<SetupDraft>(EMPTY);

/** Whether a step has what it is for: one that was passed over has not. */
export function isStepDone(step: Step, { format, names, checks }: SetupDraft): boolean {
  const isChecked = (where: ProbeCheck['in']): boolean => Object.values(checks).some((one) => one[where] !== undefined);
  switch (step) {
    case 'board':
    case 'lines':
      // A path that was typed is no board yet: its lines are.
      return format !== null && Object.keys(names).length > 0;
    case 'hand':
      return Object.values(names).some((name) => name.trim() !== '');
    case 'boil':
      return isChecked('boiling');
    case 'ice':
      return isChecked('ice');
    case 'done':
      return false;
  }
}

/** A name that was given to more than one probe; null for none. */
export function nameTwice(names: SetupDraft['names']): string | null {
  const all = Object.values(names).flatMap((name) => (name.trim() === '' ? [] : [name.trim().toLocaleLowerCase()]));
  const twice = all.find((name, place) => all.indexOf(name) !== place);
  return Object.values(names).find((name) => name.trim().toLocaleLowerCase() === twice) ?? null;
}

/** Changes a part of the draft. */
export function change(part: Partial<SetupDraft>): void {
  draft.value = { ...draft.value, ...part };
}

/** Fills the place in that was told last, where nothing is typed yet. */
export async function recallPlace(settings: Settings): Promise<void> {
  const { place, probes } = (await ask({ probes_kept: true })) as KeptProbes;
  kept.value = probes;
  if (draft.value.place.altitude !== '' || place.altitude_m === undefined) return;
  changePlace({ altitude: String(Math.round(metresShown(place.altitude_m, settings))) }, settings);
}

/** What was typed of the place, in the units that are shown now. */
export function placeTyped({ place }: SetupDraft, settings: Settings): PlaceTyped {
  const { altitude, pressure, units } = place;
  if (units === null) return { ...place, units: settings };
  return {
    altitude: retyped(altitude, typedQuantities.height, units, settings),
    pressure: retyped(pressure, typedQuantities.pressure, units, settings),
    units: settings,
  };
}

/** Changes a part of the place, as it is typed in the units that are shown now. */
export function changePlace(part: Partial<Omit<PlaceTyped, 'units'>>, settings: Settings): void {
  change({ place: { ...placeTyped(draft.value, settings), ...part } });
}

/** A board is chosen: it is listened to from now on, and how fast it speaks is found. */
export async function chooseBoard(board: Pick<PortListing, 'path' | 'identity' | 'known'>): Promise<void> {
  const format = board.known?.format ?? null;
  const earlier = draft.value;
  const before =
    earlier.path === board.path ? earlier.before : (listened.value.find(({ path }) => path === board.path) ?? null);
  await startListening({ path: board.path, baud: board.known?.baud ?? 'find', ...(format === null ? {} : { format }) });
  change({
    ...EMPTY,
    typed: earlier.typed,
    place: draft.value.place,
    step: 'lines',
    path: board.path,
    before,
    device: board.identity,
    format,
  });
}

/** A step back. From its lines that is to no board: the one that was chosen is let go, and what was typed can be put right. */
export async function stepBack(): Promise<void> {
  const left = draft.value;
  const step = STEPS[STEPS.indexOf(left.step) - 1] ?? 'board';
  if (step !== 'board') return change({ step });
  draft.value = { ...EMPTY, typed: left.typed, place: left.place };
  await letGo(left);
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
  // This page may not have asked yet what was kept, and nobody names a probe twice.
  await recallProbes();
  // It was left meanwhile, and nothing more of it is to be known here.
  if (draft.value.path !== path) return;
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

/** What the person calls the probe of a channel; '' leaves it out. */
export function nameChannel(channel: string, name: string): void {
  change({ names: { ...draft.value.names, [channel]: name } });
}

/** What was typed of the place, in SI; a pressure is a barometer's at the pans. */
function placeOf(now: SetupDraft, settings: Settings): Place {
  const { altitude, pressure } = placeTyped(now, settings);
  const height = typedNumber(altitude);
  const typed = typedNumber(pressure);
  return {
    ...(height === null ? {} : { altitude_m: metresOf(height, settings) }),
    ...(typed === null ? {} : { pressure: { hpa: hpaOf(typed, settings), at: 'station' as const } }),
  };
}

/** Asks for what the channel shows there; the sentence why not, or null when it is noted. */
export async function noteCheck(channel: string, where: ProbeCheck['in'], settings: Settings): Promise<string | null> {
  const { path, checks } = draft.value;
  if (path === null) return say('onboarding.no_board_chosen');
  try {
    const wish = { probe_check: { path, channel, in: where, place: placeOf(draft.value, settings) } };
    const check = (await ask(wish)) as ProbeCheck;
    if (draft.value.path !== path) return null;
    change({ checks: { ...checks, [channel]: { ...checks[channel], [where]: check } } });
    return null;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

/** What was checked of a channel so far. */
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

/** A board goes on as it was before it was chosen here: listened to, or not. */
async function letGo({ path, before }: SetupDraft): Promise<void> {
  if (path === null) return;
  await (before === null ? stopListening(path) : startListening(before));
}

/** While nobody is at it no board is waited for that was not listened to before; what was said so far stays in this page. */
export const pauseSetup = (): Promise<void> => letGo(draft.value);

/** Somebody comes back to it: the board that was chosen is listened to again, in the way that was confirmed. */
export async function resumeSetup(): Promise<void> {
  const { path, before, baud, format, sensors } = draft.value;
  const isHeard = listened.value.some((each) => each.path === path);
  if (path === null || (isHeard && before === null)) return;
  await startListening({ path, baud: baud ?? 'find', ...(format === null ? {} : { format }), sensors });
}

/** Nothing more of it is known here; the board goes on as before unless it is wanted on. */
export async function forgetDraft(isLeft = true): Promise<void> {
  const left = draft.value;
  draft.value = EMPTY;
  if (isLeft) await letGo(left);
}
