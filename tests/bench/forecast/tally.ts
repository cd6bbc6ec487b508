// Sums scores of many boils into figures: medians, 90th percentiles, bias, and how often a range held.
import type { AlarmName } from '../../../src/core/boil/entries.ts';
import { LEADS_MIN, type BoilScore, type Known, type StrengthSample, type TimeSample } from './score.ts';

/** The value under which the share of the sorted values lies, straight between two; NaN of none. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  const place = share * (sorted.length - 1);
  const below = sorted[Math.floor(place)];
  const above = sorted[Math.ceil(place)];
  if (below === undefined || above === undefined) return NaN;
  return below + (place - Math.floor(place)) * (above - below);
}

const shareOf = <T>(all: readonly T[], is: (one: T) => boolean): number =>
  all.length === 0 ? NaN : all.filter(is).length / all.length;

/** Errors are shares of the time left; bias is the median of the signed errors. */
export interface LeadFigures {
  leadMin: number;
  count: number;
  median: number;
  p90: number;
  bias: number;
  /** Of those that have a range. */
  held: number;
  /** Of boiling pans. */
  answered: number;
  line: number;
  law: number;
  lawOnTruth: number;
}

export function leadFigures(times: readonly TimeSample[], leadMin: number): LeadFigures {
  const here = times.filter((one) => one.leadMin === leadMin);
  const signed = (pick: (one: TimeSample) => number | null): number[] =>
    here.flatMap((one) => {
      const said = pick(one);
      return said === null ? [] : [said / one.left - 1];
    });
  const errors = signed(({ said }) => said);
  const size = errors.map(Math.abs);
  const ranged = here.filter(({ low, high }) => low !== null && high !== null);
  const boiling = here.filter((one) => one.boiling);
  return {
    leadMin,
    count: here.length,
    median: quantile(size, 0.5),
    p90: quantile(size, 0.9),
    bias: quantile(errors, 0.5),
    held: shareOf(ranged, ({ low, high, left }) => low! <= left && left <= high!),
    answered: shareOf(boiling, ({ said }) => said !== null),
    line: quantile(signed(({ line }) => line).map(Math.abs), 0.5),
    law: quantile(signed(({ law }) => law).map(Math.abs), 0.5),
    lawOnTruth: quantile(signed((one) => one.lawOnTruth).map(Math.abs), 0.5),
  };
}

export interface StrengthFigures {
  count: number;
  median: number;
  p90: number;
  bias: number;
  held: number;
  answered: number;
}

export function strengthFigures(samples: readonly StrengthSample[]): StrengthFigures {
  const errors = samples.flatMap(({ error }) => (error === null ? [] : [error]));
  const size = errors.map(Math.abs);
  return {
    count: samples.length,
    median: quantile(size, 0.5),
    p90: quantile(size, 0.9),
    bias: quantile(errors, 0.5),
    held: shareOf(
      samples.filter(({ error }) => error !== null),
      ({ held }) => held,
    ),
    answered: samples.length === 0 ? NaN : errors.length / samples.length,
  };
}

/** The groups in which strength and finish are judged apart; each sample is in exactly one. */
export const strengthGroups: readonly { name: string; has: (one: Known) => boolean }[] = [
  { name: 'checked, mix as told', has: (one) => one.blind === null && one.checked && one.mix === 'alike' },
  { name: 'checked, mix measured', has: (one) => one.blind === null && one.checked && one.mix === 'taught' },
  { name: 'checked, mix unlike', has: (one) => one.blind === null && one.checked && one.mix === 'unlike' },
  { name: 'not checked', has: (one) => one.blind === null && !one.checked },
  { name: 'no probe in it', has: (one) => one.blind === 'no-probe' },
  { name: 'below a boil', has: (one) => one.blind === 'below-a-boil' },
];

/** p10, p50 and p90 of what came, and how many never came. */
export interface Spread {
  count: number;
  p10: number;
  p50: number;
  p90: number;
  missing: number;
}

export function spreadOf(values: readonly (number | null)[]): Spread {
  const came = values.filter((value) => value !== null);
  return {
    count: values.length,
    p10: quantile(came, 0.1),
    p50: quantile(came, 0.5),
    p90: quantile(came, 0.9),
    missing: values.length - came.length,
  };
}

const LEAST_SCORCH_LEAD_MIN = 3;

export interface Tally {
  boils: number;
  hours: number;
  panHours: number;
  leads: LeadFigures[];
  strength: StrengthFigures;
  groups: { name: string; strength: StrengthFigures; finish: Spread }[];
  near: Spread;
  finish: Spread;
  scorch: Record<'too-strong' | 'too-shallow', Spread & { late: number }>;
  /** By alarm. */
  falseCalls: Partial<Record<AlarmName, number>>;
  falseCount: number;
  lostBoils: { truly: number; called: number; invented: number };
  pours: { told: boolean; unmarked: number; found: number; litresOff: number; invented: number; twice: number };
  microsecondsPerReading: number;
  greatestStateBytes: number;
}

function countBy(names: readonly AlarmName[]): Partial<Record<AlarmName, number>> {
  const counts: Partial<Record<AlarmName, number>> = {};
  for (const name of names) counts[name] = (counts[name] ?? 0) + 1;
  return counts;
}

export function tally(scores: readonly BoilScore[]): Tally {
  const all = <T>(pick: (score: BoilScore) => T[]): T[] => scores.flatMap(pick);
  const sum = (pick: (score: BoilScore) => number): number => scores.reduce((total, one) => total + pick(one), 0);
  const strengths = all((one) => one.strengths);
  const finishes = all((one) => one.finishes);
  const scorched = (way: 'too-strong' | 'too-shallow') => {
    const leads = all((one) => one.scorches).flatMap((call) => (call.way === way ? [call.lead] : []));
    return { ...spreadOf(leads), late: leads.filter((lead) => lead !== null && lead < LEAST_SCORCH_LEAD_MIN).length };
  };
  return {
    boils: scores.length,
    hours: sum((one) => one.hours),
    panHours: sum((one) => one.panHours),
    leads: LEADS_MIN.map((leadMin) =>
      leadFigures(
        all((one) => one.times),
        leadMin,
      ),
    ),
    strength: strengthFigures(strengths),
    groups: strengthGroups.map(({ name, has }) => ({
      name,
      strength: strengthFigures(strengths.filter(has)),
      finish: spreadOf(finishes.filter(has).map(({ off }) => off)),
    })),
    near: spreadOf(all((one) => one.nears).map(({ lead }) => lead)),
    finish: spreadOf(finishes.map(({ off }) => off)),
    scorch: { 'too-strong': scorched('too-strong'), 'too-shallow': scorched('too-shallow') },
    falseCalls: countBy(all((one) => one.falseCalls).map(({ alarm }) => alarm)),
    falseCount: sum((one) => one.falseCalls.length),
    lostBoils: {
      truly: sum((one) => one.lostBoils.reduce((total, { truly }) => total + truly, 0)),
      called: sum((one) => one.lostBoils.reduce((total, { called }) => total + called, 0)),
      invented: sum((one) => one.lostBoils.reduce((total, { invented }) => total + invented, 0)),
    },
    pours: {
      told: scores.some(({ pours }) => pours.told),
      unmarked: sum(({ pours }) => pours.unmarked),
      found: sum(({ pours }) => pours.found),
      litresOff: quantile(all(({ pours }) => pours.litresOff).map(Math.abs), 0.5),
      invented: sum(({ pours }) => pours.invented),
      twice: sum(({ pours }) => pours.twice),
    },
    microsecondsPerReading: (1000 * sum((one) => one.foldMs)) / sum((one) => one.probeReadings),
    greatestStateBytes: Math.max(0, ...scores.map((one) => one.stateBytesPerPan)),
  };
}
