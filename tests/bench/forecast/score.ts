// Judges one boil: what the program said against what was true, as samples that can be counted over many boils.
import type { AlarmTransition } from '../../../src/core/alarms/alarm.ts';
import { sugarShares } from '../../../src/core/physics/sugar-shares.ts';
import type { PanReading } from '../../../src/core/pan/reading.ts';
import {
  falseHighCalls,
  finishCall,
  lostBoils,
  nearFinishLead,
  scorchCalls,
  type FalseCall,
  type LostBoils,
  type ScorchCall,
} from './calls.ts';
import { disturbances, lastDisturbance, type Disturbance } from './disturbances.ts';
import { READING_MS, type Played } from './play.ts';
import { judgePours, type PourCount } from './pours.ts';
import { SAMPLE_MS, type PanFacts, type Sample, type Witnessed } from './witness.ts';
import { lawOnTruth, yardsticks, type Told } from './yardsticks.ts';

export const LEADS_MIN = [60, 30, 15, 10, 5, 3] as const;

/** One moment before a true finish. Times in s. */
export interface TimeSample {
  pan: string;
  leadMin: number;
  left: number;
  said: number | null;
  low: number | null;
  high: number | null;
  boiling: boolean;
  line: number | null;
  law: number | null;
  lawOnTruth: number | null;
}

/** What the program could know of the probe and of the mix at that moment. */
export interface Known {
  /** A water check of its probe or a pressure was noted before. */
  checked: boolean;
  /** The header's mix is true, or not, or a density reading of this pan told of it. */
  mix: 'alike' | 'unlike' | 'taught';
  /** The pan is kept below a boil, or has no sound probe in it. */
  blind: 'below-a-boil' | 'no-probe' | null;
}

export interface StrengthSample extends Known {
  error: number | null;
  held: boolean;
}

/** `lead` in min, null when it never came. */
export interface NearSample {
  lead: number | null;
}

/** `off` in °Bx: the true strength at the call less the finish; null when it never came. */
export interface FinishSample extends Known {
  off: number | null;
}

export interface BoilScore {
  kind: string;
  seed: number;
  hours: number;
  panHours: number;
  times: TimeSample[];
  strengths: StrengthSample[];
  nears: NearSample[];
  finishes: FinishSample[];
  scorches: ScorchCall[];
  falseCalls: FalseCall[];
  lostBoils: LostBoils[];
  pours: PourCount;
  foldMs: number;
  probeReadings: number;
  stateBytesPerPan: number;
}

/** Everything of one pan that its judges look at. */
export interface PanCase {
  facts: PanFacts;
  samples: Sample[];
  readings: PanReading[];
  calls: AlarmTransition[];
  disturbed: Disturbance[];
  told: Told;
  known: (t: number) => Known;
}

export function scoreBoil(kind: string, seed: number, true_: Witnessed, played: Played): BoilScore {
  const cases = true_.pans.map((facts) => caseOf(facts, true_, played));
  const finished = cases.map((one) => ({ one, at: finishesOf(one, true_) }));
  const eachFinish = <T>(judge: (one: PanCase, t: number) => T[]): T[] =>
    finished.flatMap(({ one, at }) => at.flatMap((t) => judge(one, t)));
  return {
    kind,
    seed,
    hours: true_.endsAt / 3_600_000,
    panHours: cases.reduce((sum, { samples }) => sum + samples.filter(({ off }) => !off).length, 0) / 360,
    times: eachFinish(timesBefore),
    strengths: cases.flatMap(strengthsOf),
    nears: eachFinish((one, t) => nearFinishLead(one, t)),
    finishes: eachFinish((one, t) => [{ off: finishCall(one, t), ...one.known(t) }]),
    scorches: cases.flatMap((one) => scorchCalls(one, true_.moments)),
    falseCalls: cases.flatMap(falseHighCalls),
    lostBoils: cases.map((one) => lostBoils(one, flameMarks(true_, one.facts.id))),
    pours: judgePours(true_, played.pours),
    foldMs: played.foldMs,
    probeReadings: played.probeReadings,
    stateBytesPerPan: played.stateBytesPerPan,
  };
}

const flameMarks = ({ marks }: Witnessed, pan: string): number[] =>
  marks.flatMap(({ t, mark }) => (mark.kind === 'flame' && mark.pan === pan ? [mark.happened ?? t] : []));

function caseOf(facts: PanFacts, true_: Witnessed, played: Played): PanCase {
  const samples = true_.samples[facts.id]!;
  const setup = true_.header.pans!.find(({ id }) => id === facts.id)!;
  const told: Told = { shares: sugarShares(setup.sap ?? 'maple'), finish: setup.finish ?? { brix: facts.finishBrix } };
  return {
    facts,
    samples,
    readings: played.readings[facts.id] ?? [],
    calls: played.calls.filter(({ pan }) => pan === facts.id),
    disturbed: disturbances(samples, true_.moments, facts.id),
    told,
    known: (t) => knownAt(facts, true_, samples, t),
  };
}

function knownAt(facts: PanFacts, { marks }: Witnessed, samples: Sample[], t: number): Known {
  const before = marks.filter((one) => one.t <= t).map(({ mark }) => mark);
  const taught = before.some((mark) => mark.kind === 'density' && mark.pan === facts.id);
  const sample = samples[Math.floor(t / SAMPLE_MS)];
  return {
    checked: before.some(
      (mark) => mark.kind === 'pressure' || (mark.kind === 'water-check' && mark.probe === facts.probe),
    ),
    mix: taught ? 'taught' : facts.mixAlike ? 'alike' : 'unlike',
    blind: Number.isFinite(facts.ceilingC) ? 'below-a-boil' : sample?.probed === true ? null : 'no-probe',
  };
}

/** True moments at which the strength reaches the finish over live fire. */
function finishesOf({ facts, samples }: PanCase, { moments }: Witnessed): number[] {
  return moments
    .filter(({ what, pan }) => what === 'reached-finish' && pan === facts.id)
    .map(({ t }) => t)
    .filter((t) => {
      const sample = samples[Math.floor(t / SAMPLE_MS)];
      return sample !== undefined && sample.level > 0 && !sample.off && !sample.burned;
    });
}

/**
 * The moments before a finish at which "as if nothing more is poured in and the fire stays as it is" is what truly
 * happened: none before the last pour, draw-off or change of flame by hand, marked or not. Wind and wood are no hand.
 */
export function timesBefore(one: PanCase, finishT: number): TimeSample[] {
  const since = lastDisturbance(one.disturbed, finishT);
  return LEADS_MIN.flatMap((leadMin) => {
    const index = Math.round((finishT - leadMin * 60_000) / READING_MS);
    const t = index * READING_MS;
    const reading = one.readings[index];
    const sample = one.samples[Math.floor(t / SAMPLE_MS)];
    if (index < 0 || t < since || reading === undefined || sample === undefined) return [];
    return [
      {
        pan: one.facts.id,
        leadMin,
        left: (finishT - t) / 1000,
        said: reading.finish_in_s,
        low: reading.finish_low_s,
        high: reading.finish_high_s,
        boiling: sample.boiling && sample.level > 0,
        lawOnTruth: trueLaw(one, t, since),
        ...yardsticks(one.readings.slice(0, index + 1).slice(-20), one.told, READING_MS / 1000),
      },
    ];
  });
}

/** From the last hand on, for that changes the law. */
function trueLaw({ samples, facts }: PanCase, t: number, since: number): number | null {
  const from = Math.max(0, Math.ceil((since + SAMPLE_MS) / SAMPLE_MS));
  return lawOnTruth(samples.slice(from, Math.floor(t / SAMPLE_MS) + 1), facts.finishBrix, SAMPLE_MS / 1000);
}

/** Once a minute from 25 °Bx on, while it is on the fire and has not burned. */
export function strengthsOf({ samples, readings, known }: PanCase): StrengthSample[] {
  return readings.flatMap((reading, index) => {
    const t = index * READING_MS;
    const sample = samples[Math.floor(t / SAMPLE_MS)];
    if (t % 60_000 !== 0 || sample === undefined || sample.off || sample.burned) return [];
    if (sample.brix < 25 || sample.level === 0) return [];
    const { brix, brix_low: low, brix_high: high } = reading;
    const held = low !== null && high !== null && low <= sample.brix && sample.brix <= high;
    return [{ error: brix === null ? null : brix - sample.brix, held, ...known(t) }];
  });
}
