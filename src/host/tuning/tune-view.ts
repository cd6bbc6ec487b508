// Puts what tuning has done so far into rows: each setting with its sums, its boils with the worst first, and what is proposed.
import { median } from '../../core/pan/robust-statistics.ts';
import { type Cost, wholeCost } from '../../core/tuning/cost.ts';
import type { BoilScore } from '../../core/tuning/score.ts';
import { type Outcome, propose, type Trial } from '../../core/tuning/search.ts';
import type { BoilSummary } from '../../notebook/contract.ts';
import type { TuneBoilRow, TuneProposal, TuneScore, TuneSettingRow } from '../../protocol/tune-messages.ts';
import type { SettingsFile, Tuned } from './tune-boil.ts';

type Scored = Extract<Tuned, { score: BoilScore }>;
const isScored = (one: Tuned): one is Scored => 'score' in one;

/** `tuned` is what was done with these settings, in any order; `boils` are all that were asked for. */
export function settingRow(
  { name, patch }: SettingsFile,
  tuned: readonly Tuned[],
  boils: ReadonlyMap<string, BoilSummary>,
): TuneSettingRow {
  const rows = tuned.flatMap((one) => boilRow(one, boils.get(one.boil)) ?? []);
  const scored = tuned.filter(isScored);
  const hours = sum(scored.map(({ boil }) => (boils.get(boil)?.seconds ?? 0) / 3600));
  const costs = scored.flatMap(({ cost }) => (cost === null ? [] : [wholeCost(cost)]));
  return {
    name,
    patch: { ...patch },
    sum: sumOf(scored, hours),
    cost: costs.length === 0 ? null : sum(costs) / costs.length,
    truths: costs.length,
    done: rows.length,
    boils: rows.sort(byWorst),
  };
}

/** Those of which a worst moment can be told come first, then what cost most. */
const byWorst = (one: TuneBoilRow, other: TuneBoilRow): number =>
  Number(other.worst !== null) - Number(one.worst !== null) || (other.cost ?? -1) - (one.cost ?? -1);

function boilRow(tuned: Tuned, summary: BoilSummary | undefined): TuneBoilRow | null {
  if (summary === undefined) return null;
  const head = { boil: tuned.boil, title: summary.name, started: summary.started };
  if (!isScored(tuned)) return { ...head, why: tuned.why, score: null, cost: null, worst: null, untold: null };
  const { score, cost, worst, untold } = tuned;
  const shown = scoreRow(score, score.alarms, summary.seconds / 3600);
  return { ...head, why: null, score: shown, cost: cost === null ? null : wholeCost(cost), worst, untold };
}

type Shown = Pick<BoilScore, 'near_finish_lead_s' | 'finish_brix' | 'scorch_lead_s' | 'false_calls'>;

function scoreRow(
  { near_finish_lead_s, finish_brix, scorch_lead_s, false_calls }: Shown,
  alarms: number,
  hours: number,
): TuneScore {
  const calls_per_hour = hours > 0 ? alarms / hours : 0;
  return { near_finish_lead_s, finish_brix, scorch_lead_s, false_calls, alarms, calls_per_hour };
}

function sumOf(scored: readonly Scored[], hours: number): TuneScore {
  const { cost: _, falseCalls, alarms, ...medians } = outcomeOf(scored);
  const isTold = scored.some(({ score }) => score.false_calls !== null);
  return scoreRow({ ...medians, false_calls: isTold ? falseCalls : null }, alarms, hours);
}

/** Over the boils of one setting; costs are those of boils whose truth is known. */
function outcomeOf(scored: readonly Scored[]): Outcome {
  const costs = scored.flatMap(({ cost }) => (cost === null ? [] : [cost]));
  const whole = (name: keyof Cost): number => sum(costs.map((cost) => cost[name]));
  const middle = (name: 'near_finish_lead_s' | 'finish_brix' | 'scorch_lead_s'): number | null => {
    const known = scored.map(({ score }) => score[name]).filter((value) => value !== null);
    return known.length === 0 ? null : median(known);
  };
  return {
    cost: {
      nearFinish: whole('nearFinish'),
      finish: whole('finish'),
      scorch: whole('scorch'),
      falseCalls: whole('falseCalls'),
      calls: whole('calls'),
    },
    near_finish_lead_s: middle('near_finish_lead_s'),
    finish_brix: middle('finish_brix'),
    scorch_lead_s: middle('scorch_lead_s'),
    falseCalls: sum(scored.map(({ score }) => score.false_calls ?? 0)),
    alarms: sum(scored.map(({ score }) => score.alarms)),
  };
}

/** Of boils that were run with every one of the settings; `base` is what holds now. */
export function proposalOf(
  base: readonly Tuned[],
  trials: readonly { trial: Trial; tuned: readonly Tuned[] }[],
): TuneProposal | { why: string } {
  const outcomes = trials.map(({ trial, tuned }) => ({ trial, outcome: outcomeOf(tuned.filter(isScored)) }));
  const scored = base.filter(isScored);
  const truths = scored.filter(({ cost }) => cost !== null).length;
  const proposal = propose(outcomeOf(scored), outcomes, truths);
  return 'why' in proposal ? proposal : { ...proposal, truths };
}

const sum = (values: readonly number[]): number => values.reduce((total, one) => total + one, 0);
