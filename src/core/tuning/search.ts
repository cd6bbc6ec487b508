// Which settings a search tries, and which of them it proposes: for each field the value that cost least, with what it gains and costs in words.
import type { BoilSettings } from '../boil/entries.ts';
import type { Cost } from './cost.ts';

export const SEARCHED = [
  'near_finish_lead_s',
  'scorch_lead_s',
  'finish_probability',
] as const satisfies readonly (keyof BoilSettings)[];
export type Searched = (typeof SEARCHED)[number];
export type SearchedSettings = Record<Searched, number>;

/** What is tried of each, beside what holds now: only what Settings offers, so that it can be set back by hand. */
const TRIED: Record<Searched, readonly number[]> = {
  near_finish_lead_s: [300, 600, 900, 1200, 1800],
  scorch_lead_s: [60, 120, 240, 360, 600],
  finish_probability: [0.2, 0.35, 0.5, 0.65, 0.8],
};

/** Which part of a cost a field moves: each alarm has its own setting, so several fields are tried in one run. */
const MOVES: Record<Searched, keyof Cost> = {
  near_finish_lead_s: 'nearFinish',
  scorch_lead_s: 'scorch',
  finish_probability: 'finish',
};

/** One run: these settings over what holds now, and which fields it tries. */
export interface Trial {
  name: string;
  settings: Partial<SearchedSettings>;
  tries: Searched[];
}

/** As few runs as try every value: fields of different alarms move together. */
export function trialsOf(fields: readonly Searched[], now: SearchedSettings): Trial[] {
  const values = (field: Searched): number[] => TRIED[field].filter((value) => value !== now[field]);
  const rounds = Math.max(0, ...fields.map((field) => values(field).length));
  return Array.from({ length: rounds }, (_, round) => {
    const tries = fields.filter((field) => round < values(field).length);
    return trial(Object.fromEntries(tries.map((field) => [field, values(field)[round]!])), tries);
  });
}

const trial = (settings: Partial<SearchedSettings>, tries: Searched[]): Trial => ({
  name: tries.map((field) => valueWords(field, settings[field]!)).join(', '),
  settings,
  tries,
});

/** As it is named to a person. */
function valueWords(field: Searched, value: number): string {
  if (field === 'near_finish_lead_s') return `${minutes(value)} before the finish`;
  if (field === 'scorch_lead_s') return `${minutes(value)} before burning`;
  return `finish called at ${Math.round(value * 100)} % likely`;
}

const minutes = (seconds: number): string => `${Number((seconds / 60).toFixed(1))} min`;

/** What a run did over all boils whose truth is known. */
export interface Outcome {
  cost: Cost;
  /** Medians over the boils; null where not known. */
  near_finish_lead_s: number | null;
  finish_brix: number | null;
  scorch_lead_s: number | null;
  falseCalls: number;
  alarms: number;
}

export interface Proposal {
  settings: Partial<SearchedSettings>;
  gains: string[];
  costs: string[];
}

/** Fewer known truths than these are chance (judgement). */
const LEAST_TRUTHS = 3;
/** A field is changed only where that saves so much, as a share of what it costs now (judgement: less is chance). */
const TELLING_SHARE = 0.1;

/**
 * `base` is what holds now; each trial stands beside what came of it; `truths` are the boils with a known truth.
 * A sentence where nothing can be proposed.
 */
export function propose(
  base: Outcome,
  trials: readonly { trial: Trial; outcome: Outcome }[],
  truths: number,
): Proposal | { why: string } {
  if (truths < LEAST_TRUTHS) return { why: tooFew(truths) };
  const fields = [...new Set(trials.flatMap(({ trial: { tries } }) => tries))];
  const chosen = fields.flatMap((field) => bestOf(field, base, trials) ?? []);
  if (chosen.length === 0) return { why: 'Nothing that was tried does clearly better than what holds now.' };
  return {
    settings: Object.fromEntries(chosen.map(({ field, value }) => [field, value])),
    gains: chosen.map(
      ({ field, value, outcome }) => `${capital(valueWords(field, value))}: ${gainWords(field, base, outcome)}.`,
    ),
    costs: chosen.flatMap(({ field, value, outcome }) => costWords(field, value, base, outcome)),
  };
}

const tooFew = (truths: number): string =>
  `${truths === 0 ? 'No boil was' : truths === 1 ? 'Only one boil was' : `Only ${truths} boils were`} measured near the finish, and ${LEAST_TRUTHS} are needed: read an instrument in the pan near its finish, and note it.`;

interface Chosen {
  field: Searched;
  value: number;
  outcome: Outcome;
}

function bestOf(field: Searched, base: Outcome, trials: readonly { trial: Trial; outcome: Outcome }[]): Chosen | null {
  const part = ({ cost }: Outcome): number => cost[MOVES[field]];
  const own = trials.filter(({ trial: { tries } }) => tries.includes(field));
  const best = own.reduce<(typeof own)[number] | null>(
    (least, one) => (least === null || part(one.outcome) < part(least.outcome) ? one : least),
    null,
  );
  if (best === null || part(best.outcome) > part(base) * (1 - TELLING_SHARE) || part(base) === 0) return null;
  return { field, value: best.trial.settings[field]!, outcome: best.outcome };
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
const lead = (seconds: number | null): string =>
  seconds === null ? 'not known' : minutes(Math.round(seconds / 30) * 30);

function gainWords(field: Searched, base: Outcome, outcome: Outcome): string {
  if (field === 'near_finish_lead_s')
    return `the call came ${lead(outcome.near_finish_lead_s)} before the true finish rather than ${lead(base.near_finish_lead_s)}`;
  if (field === 'scorch_lead_s')
    return `the call came ${lead(outcome.scorch_lead_s)} before burning rather than ${lead(base.scorch_lead_s)}`;
  return `the finish was called at ${outcome.finish_brix?.toFixed(1) ?? '–'} °Bx rather than at ${base.finish_brix?.toFixed(1) ?? '–'}`;
}

/** Calls that come of it, where this run tried nothing else that could make them. */
function costWords(field: Searched, value: number, base: Outcome, outcome: Outcome): string[] {
  const more = outcome.alarms - base.alarms;
  const falsely = outcome.falseCalls - base.falseCalls;
  const what = capital(valueWords(field, value));
  return [
    ...(falsely > 0 ? [`${what}: ${falsely} more false ${falsely === 1 ? 'call' : 'calls'}.`] : []),
    ...(more > 0 ? [`${what}: up to ${more} more ${more === 1 ? 'call' : 'calls'} in all.`] : []),
  ];
}
