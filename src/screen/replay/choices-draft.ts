// Other choices for a past boil as they stand in the form, and the merge patch over its header that they come to.
import { celsiusFromDifference, differenceFromCelsius } from '../../core/quantities/units.ts';
import { boilDraft, problemInDraft, setupOf } from '../boil/boil-draft.ts';
import type { BoilDraft, PanDraft } from '../boil/boil-draft.ts';
import type { Header, SapKind, Settings, Setup } from '../client/types.ts';
import { typedNumber } from '../words/amounts.ts';
import { say } from '../language/say.ts';

export interface ChoicesDraft {
  boil: BoilDraft;
  /** By the id of each probe, what is added to its number, as typed. */
  offsets: Record<string, string>;
}

const offsetText = (celsius: number, settings: Settings): string =>
  String(Number(differenceFromCelsius(celsius, settings.temperature).toFixed(2)));

/** The choices of a boil as they stand in the form, in the units shown. */
export function choicesDraft(header: Header, settings: Settings, kinds: readonly SapKind[]): ChoicesDraft {
  const offsets = (header.probes ?? []).map(({ id, offset_c }) => [id, offsetText(offset_c ?? 0, settings)]);
  return { boil: boilDraft(header, settings, kinds), offsets: Object.fromEntries(offsets) as Record<string, string> };
}

/** The draft with one pan’s choices changed. */
export function withPan(draft: ChoicesDraft, pan: PanDraft): ChoicesDraft {
  const pans = draft.boil.pans.map((each) => (each.before.id === pan.before.id ? pan : each));
  return { ...draft, boil: { ...draft.boil, pans } };
}

/** Beyond so many degrees of any unit it is no error of a probe. */
const MOST_OFFSET = 100;

/** The first thing that is wrong, in a sentence that names the field; null where the choices can be tried. */
export function problemInChoices(draft: ChoicesDraft, settings: Settings): string | null {
  const bad = Object.entries(draft.offsets).find(([, typed]) => {
    const value = typedNumber(typed);
    return typed.trim() !== '' && (value === null || Math.abs(value) > MOST_OFFSET);
  });
  if (bad !== undefined) return say('replay.choice.no_degrees', { probe: bad[0], typed: bad[1] });
  return problemInDraft(draft.boil, settings);
}

/** A probe whose offset was not touched stays as it was written. */
function probesOf(draft: ChoicesDraft, header: Header, settings: Settings): Setup['probes'] {
  return (header.probes ?? []).map((probe) => {
    const typed = draft.offsets[probe.id] ?? '';
    if (typed.trim() === offsetText(probe.offset_c ?? 0, settings)) return probe;
    return { ...probe, offset_c: celsiusFromDifference(typedNumber(typed) ?? 0, settings.temperature) };
  });
}

/**
 * The merge patch over `header`; null where nothing is another. Lists are whole, and only those that changed are in it,
 * so that a list that changes in the middle of the boil goes its own way where nobody chose otherwise.
 */
export function patchOf(
  draft: ChoicesDraft,
  header: Header,
  settings: Settings,
  kinds: readonly SapKind[],
): Record<string, unknown> | null {
  const untouched = setupOf(boilDraft(header, settings, kinds), settings, kinds);
  const chosen = setupOf(draft.boil, settings, kinds);
  const probes = probesOf(draft, header, settings);
  const isOther = (one: unknown, other: unknown): boolean => JSON.stringify(one) !== JSON.stringify(other);
  const patch = {
    ...(isOther(chosen.pans, untouched.pans) ? { pans: pansOf(chosen, untouched, header) } : {}),
    ...(isOther(probes, header.probes ?? []) ? { probes } : {}),
    ...(isOther(chosen.site, untouched.site) ? { site: { altitude_m: chosen.site?.altitude_m ?? null } } : {}),
  };
  return Object.keys(patch).length === 0 ? null : patch;
}

/** A pan that nobody touched stays to the letter as it was. */
function pansOf(chosen: Setup, untouched: Setup, header: Header): Setup['pans'] {
  return (chosen.pans ?? []).map((pan, i) => {
    const before = header.pans?.[i];
    return before !== undefined && JSON.stringify(pan) === JSON.stringify(untouched.pans?.[i]) ? before : pan;
  });
}
