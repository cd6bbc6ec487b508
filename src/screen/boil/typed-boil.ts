// What a person typed into the form of a new boil, kept through a look away: the fields they touched alone, laid over what the host tells anew.
import type { Settings } from '../client/types.ts';
import { sessionSignal } from '../client/session-signal.ts';
import type { Channel } from '../probes/channels.ts';
import type { BoilDraft, PanDraft } from './boil-draft.ts';
import { boilDraftIn } from './draft-units.ts';

type PanField = Exclude<keyof PanDraft, 'before' | 'probe'>;

export interface TypedBoil {
  /** The form as it stood, without ports and probes: only what `touched`, `added` and `removed` name is taken from it. */
  draft: BoilDraft;
  units: Settings;
  name: boolean;
  altitude: boolean;
  /** Fields by the pan's id. */
  touched: Record<string, PanField[]>;
  added: string[];
  removed: string[];
  /** The channel that a person chose for a pan, by the pan's id; null for none. */
  probes: Record<string, Pick<Channel, 'path' | 'channel'> | null>;
}

/** Until the boil is started, or somebody clears it. */
export const typedBoil = sessionSignal<TypedBoil>('boil-typed');

const NOTHING: Omit<TypedBoil, 'draft' | 'units'> = {
  name: false,
  altitude: false,
  touched: {},
  added: [],
  removed: [],
  probes: {},
};

const bare = (draft: BoilDraft): BoilDraft => ({ ...draft, ports: [], probes: [] });

const isSame = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

function fieldsChanged(before: PanDraft, next: PanDraft): PanField[] {
  const fields = Object.keys(next) as (keyof PanDraft)[];
  return fields.filter((field): field is PanField => {
    return field !== 'before' && field !== 'probe' && !isSame(before[field], next[field]);
  });
}

/** What was typed so far, with what a person changed between two looks of the form; units are those shown. */
export function withTyped(typed: TypedBoil | null, before: BoilDraft, next: BoilDraft, units: Settings): TypedBoil {
  const so = typed ?? { ...NOTHING, draft: next, units };
  const idsOf = (draft: BoilDraft): string[] => draft.pans.map((pan) => pan.before.id);
  const [were, are] = [idsOf(before), idsOf(next)];
  const touched = { ...so.touched };
  for (const pan of next.pans) {
    const { id } = pan.before;
    const was = before.pans.find((one) => one.before.id === id);
    if (was !== undefined) touched[id] = [...new Set([...(touched[id] ?? []), ...fieldsChanged(was, pan)])];
  }
  const added = [...so.added, ...are.filter((id) => !were.includes(id))].filter((id) => are.includes(id));
  const gone = were.filter((id) => !are.includes(id));
  return {
    ...so,
    draft: bare(next),
    units,
    name: so.name || before.name !== next.name,
    altitude: so.altitude || before.altitude !== next.altitude,
    touched,
    added,
    removed: [...so.removed, ...gone.filter((id) => !so.added.includes(id))].filter((id) => !are.includes(id)),
  };
}

/** The same with the probe that a person chose for a pan. */
export function withChoice(
  typed: TypedBoil | null,
  draft: BoilDraft,
  units: Settings,
  [pan, channel]: [pan: string, channel: TypedBoil['probes'][string]],
): TypedBoil {
  const so = withTyped(typed, draft, draft, units);
  return { ...so, probes: { ...so.probes, [pan]: channel } };
}

const picked = (pan: PanDraft, fields: readonly PanField[]): Partial<PanDraft> =>
  Object.fromEntries(fields.map((field) => [field, pan[field]]));

/** What the host told, with what a person typed over it, in the units of `to`; probes are not chosen here. */
export function laidOver(fresh: BoilDraft, typed: TypedBoil, to: Settings): BoilDraft {
  const said = boilDraftIn(typed.draft, typed.units, to);
  const saidOf = (id: string): PanDraft | undefined => said.pans.find((pan) => pan.before.id === id);
  const ids = new Set(fresh.pans.map((pan) => pan.before.id));
  const stayed = fresh.pans
    .filter((pan) => !typed.removed.includes(pan.before.id))
    .map((pan) => {
      const over = saidOf(pan.before.id);
      return over === undefined ? pan : { ...pan, ...picked(over, typed.touched[pan.before.id] ?? []) };
    });
  const added = said.pans.filter(({ before: { id } }) => typed.added.includes(id) && !ids.has(id));
  const pans = [...stayed, ...added.map((pan) => ({ ...pan, probe: '' }))];
  return {
    ...fresh,
    ...(typed.name ? { name: said.name } : {}),
    ...(typed.altitude ? { altitude: said.altitude } : {}),
    pans: pans.length === 0 ? fresh.pans : pans,
  };
}
