// The settings that are to be tried on past boils, as they stand in the form, and the patches that they come to.
import type { Settings } from '../client/types.ts';
import { type MessageKey, say } from '../language/say.ts';
import { SURE_OF_FINISH } from '../settings/sure-of-finish.tsx';
import { leadTime } from '../words/lead-words.ts';
import { BESIDE_THEM } from '../../protocol/tune-messages.ts';

/** Leads in s; null is "as it was in each boil". */
export interface TriedSettings {
  name: string;
  near_finish_lead_s: number | null;
  scorch_lead_s: number | null;
  low_level_lead_s: number | null;
  finish_probability: number | null;
}

export type TriedField = Exclude<keyof TriedSettings, 'name'>;

export interface FieldChoice {
  field: TriedField;
  label: MessageKey;
  options: readonly (readonly [number, () => string])[];
}

const minutes = (...all: number[]): (readonly [number, () => string])[] =>
  all.map((each) => [each * 60, () => say('leads.before', { time: leadTime(each * 60) })] as const);

export const TRIED: readonly FieldChoice[] = [
  { field: 'near_finish_lead_s', label: 'tune.tried.near_finish', options: minutes(3, 5, 10, 15, 20, 30) },
  { field: 'scorch_lead_s', label: 'tune.tried.scorch', options: minutes(1, 2, 4, 6, 10) },
  { field: 'low_level_lead_s', label: 'tune.tried.shallow', options: minutes(5, 10, 15, 20, 30) },
  {
    field: 'finish_probability',
    label: 'tune.tried.probability',
    options: SURE_OF_FINISH.map(
      (each) => [each, () => say('tune.likely', { percent: Math.round(100 * each) })] as const,
    ),
  },
];

/** Beyond so many side by side nobody compares. */
export const MOST_TRIED = 4;

const UNTOUCHED = {
  near_finish_lead_s: null,
  scorch_lead_s: null,
  low_level_lead_s: null,
  finish_probability: null,
};

/** As Settings are now: what it was in each boil stands beside them anyhow. */
export function firstTried(settings: Settings): TriedSettings[] {
  const { near_finish_lead_s, scorch_lead_s, low_level_lead_s, finish_probability } = settings;
  const now = { near_finish_lead_s, scorch_lead_s, low_level_lead_s, finish_probability };
  return [{ name: say('tune.name.now'), ...now }];
}

/** Changed, it is not as in Settings any more, unless somebody gave it a name. */
export function changedTried(one: TriedSettings, field: TriedField, value: number | null): TriedSettings {
  return { ...one, [field]: value, name: one.name === say('tune.name.now') ? say('tune.name.changed') : one.name };
}

/** One more to begin from: like the last, under a name that none has. */
export function anotherTried(tried: readonly TriedSettings[]): TriedSettings {
  const taken = new Set(tried.map(({ name }) => name));
  let n = 1;
  while (taken.has(say('tune.name.other', { n }))) n += 1;
  return { ...(tried.at(-1) ?? UNTOUCHED), name: say('tune.name.other', { n }) };
}

/** For the command: a merge patch over the header of each boil. */
export function patchOf({ name: _, ...fields }: TriedSettings): Record<string, unknown> {
  const chosen = Object.entries(fields).filter(([, value]) => value !== null);
  return chosen.length === 0 ? {} : { settings: Object.fromEntries(chosen) };
}

/** What cannot be run, in a sentence; null where it can. */
export function problemInTried(tried: readonly TriedSettings[], boils: number): string | null {
  if (boils === 0) return say('tune.choose_one');
  const names = tried.map(({ name }) => name.trim());
  if (names.some((name) => name === '')) return say('tune.problem.name');
  if (new Set(names).size < names.length) return say('tune.problem.same_name');
  const reserved = names.find((name) => BESIDE_THEM.includes(name.toLowerCase()));
  if (reserved !== undefined) return say('tune.problem.reserved', { name: reserved });
  const patches = tried.map((each) => JSON.stringify(patchOf(each)));
  const twin = patches.findIndex((patch, i) => patch === '{}' || patches.indexOf(patch) < i);
  if (twin < 0) return null;
  const like = patches[twin] === '{}' ? say('tune.as_was') : names[patches.indexOf(patches[twin] ?? '')];
  return say('tune.problem.twin', { name: names[twin] ?? '', other: like ?? '' });
}
