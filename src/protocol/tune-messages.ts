// What host and screen say to each other of tuning: past boils run again under other settings, and what that teaches.
import { z } from 'zod';
import type { ProbeOffset } from '../core/tuning/probe-offset.ts';
import { type Proposal, SEARCHED, type Searched } from '../core/tuning/search.ts';
import type { Worst } from '../core/tuning/cost.ts';
import type { Untold } from '../core/tuning/truth.ts';

const ref = z.string().min(1).max(100);
const boil = z.string().min(1).max(200);

/** What the host itself sets beside those that are tried: how each boil was called, and what is set now. */
export const AS_IT_WAS = 'as it was';
export const AS_SET_NOW = 'as set now';
export const BESIDE_THEM: readonly string[] = [AS_IT_WAS, AS_SET_NOW];

/** Commands about tuning; one runs at a time. */
export const tuneCommands = [
  /**
   * Runs boils again under each of the settings (merge patches over their headers); no boils named are all that are
   * kept. With `search` the program lays out the settings itself, around those that hold now. Refused with the path
   * of the wrong field, or while one runs.
   */
  z.strictObject({
    ref,
    tune_start: z.strictObject({
      boils: z.array(boil).max(1000),
      settings: z
        .array(z.strictObject({ name: z.string().min(1).max(200), patch: z.record(z.string(), z.unknown()) }))
        .max(50),
      search: z.array(z.enum(SEARCHED)).max(SEARCHED.length),
    }),
  }),
  /** Stops; what is done stays. */
  z.strictObject({ ref, tune_stop: z.literal(true) }),
  /** What is done so far; data: TuneView | null (null where nothing was tuned since the program began). */
  z.strictObject({ ref, tune_look: z.literal(true) }),
  /** How much each probe shows too much, from boils whose truth is known; data: OffsetsView */
  z.strictObject({ ref, probe_offsets: z.literal(true) }),
] as const;

export type TuneCommand = z.infer<(typeof tuneCommands)[number]>;

/** Sent whenever it changes. */
export interface TuningNow {
  kind: 'tuning';
  running: boolean;
  /** Share of the work that is done, 0 to 1, and s that the rest will take; null until that can be told. */
  share: number;
  secondsLeft: number | null;
  /** Boils that are done, of all. */
  done: number;
  boils: number;
}

/** How settings would have done; as in the lines of the command `tune`. null where the truth is not known. */
export interface TuneScore {
  /** From the call to the true finish, s. */
  near_finish_lead_s: number | null;
  /** True strength at the finish call, °Bx. */
  finish_brix: number | null;
  /** From the call to the true scorch limit, s. */
  scorch_lead_s: number | null;
  false_calls: number | null;
  alarms: number;
  calls_per_hour: number;
}

export interface TuneBoilRow {
  boil: string;
  title: string;
  started: string;
  /** Why it could not be run with these settings; null where it could. */
  why: string | null;
  score: TuneScore | null;
  /** How bad it was: weighed cost, least is best; boils come with the worst first. null where no truth is known. */
  cost: number | null;
  /** What was worst and when, so that a replay opens there; null where nothing was wrong. */
  worst: Worst | null;
  /** What an instrument said near its end and why that is no truth; null where one is known, and where none was read. */
  untold: Untold | null;
}

export interface TuneSettingRow {
  name: string;
  patch: Record<string, unknown>;
  /** Over all boils so far: medians of the leads and the strength, sums of the calls. */
  sum: TuneScore;
  /** Mean cost over boils with a known truth; null where there is none. */
  cost: number | null;
  /** Boils with a known truth, of those that are done. */
  truths: number;
  done: number;
  /** Worst first. */
  boils: TuneBoilRow[];
}

/** What the search would set, and what that costs; it is applied only by a person, with the command `settings`. */
export interface TuneProposal extends Proposal {
  /** It rests on so many boils with a known truth. */
  truths: number;
}

export interface TuneView extends Omit<TuningNow, 'kind'> {
  /** It was stopped before all was done. */
  stopped: boolean;
  /** In the order in which they were named, the search's behind them; the first is as it was, each boil as it was set then. */
  settings: TuneSettingRow[];
  /** null without a search, or while it runs; the sentence says so where too few truths are known. */
  proposal: TuneProposal | { why: string } | null;
  /** Boils that could not be read, in sentences. */
  problems: string[];
}

export interface OffsetsView {
  /** Each with what it says in a sentence. */
  probes: (ProbeOffset & { sentence: string })[];
  /** Boils that are still being read: ask again in a second. */
  working: number;
}

export { SEARCHED };
export type { Searched };
