// Judges the calls of one pan: how far ahead, how far off, and which high ones had no cause in what is true.
import type { AlarmTransition } from '../../../src/core/alarms/alarm.ts';
import type { AlarmName } from '../../../src/core/boil/entries.ts';
import type { TruthMoment } from '../../../src/core/simulation/truth.ts';
import { lastDisturbance } from './disturbances.ts';
import type { NearSample, PanCase } from './score.ts';
import { SAMPLE_MS, type Sample } from './witness.ts';

export interface ScorchCall {
  way: 'too-strong' | 'too-shallow';
  /** Minutes before it truly burned; null when it was not called. */
  lead: number | null;
}

export interface FalseCall {
  pan: string;
  t: number;
  alarm: AlarmName;
  why: string;
  /** True strength, depth and minutes until it would burn. */
  truth: { brix: number; depthMm: number; burnsInMin: number };
}

const MINUTE = 60_000;
/** A finish is judged for its lead only when nothing was poured or turned for so long before, ms. */
const UNDISTURBED_MS = 25 * MINUTE;

/** A call from before the pour that goes on for longer than this after it is a call of now, ms. */
const STALE_MS = 5 * MINUTE;

interface Episode {
  from: number;
  to: number;
}

/** From raised to cleared; `to` is Infinity for what was never cleared. */
export function episodes(calls: readonly AlarmTransition[], alarm: AlarmName): Episode[] {
  const found: Episode[] = [];
  for (const { t, alarm: name, event } of calls) {
    if (name !== alarm) continue;
    if (event === 'raised') found.push({ from: t, to: Infinity });
    const open = found.at(-1);
    if (event === 'cleared' && open !== undefined) open.to = t;
  }
  return found;
}

/** The first near-finish call since the pan was last changed by hand; no sample where that was less than 25 min before. */
export function nearFinishLead({ calls, disturbed }: PanCase, finishT: number): NearSample[] {
  const since = lastDisturbance(disturbed, finishT);
  if (finishT - Math.max(0, since) < UNDISTURBED_MS) return [];
  const called = episodes(calls, 'near-finish').find(
    ({ from, to }) => from <= finishT && (from > since || to > since + STALE_MS),
  );
  return [{ lead: called === undefined ? null : (finishT - called.from) / MINUTE }];
}

/** °Bx by which the true strength was over the finish at the first call since the last pour; null when none came in time. */
export function finishCall({ calls, disturbed, samples, facts }: PanCase, finishT: number): number | null {
  const since = lastDisturbance(disturbed, finishT, true);
  const until = disturbed.find(({ t, poured }) => poured && t > finishT)?.t ?? Infinity;
  const call = calls.find(
    ({ t, alarm, event }) =>
      t > since && t <= until && event === 'raised' && (alarm === 'finish' || alarm === 'past-finish'),
  );
  const sample = call === undefined ? undefined : sampleAt(samples, call.t);
  return sample === undefined || sample.off ? null : sample.brix - facts.finishBrix;
}

const sampleAt = (samples: readonly Sample[], t: number): Sample | undefined => samples[Math.floor(t / SAMPLE_MS)];

/** Deeper than that it burned for its strength. */
const SHALLOW_BURN_MM = 5;
/** A call that ended so long before the burning still counts as a warning, ms. */
const STILL_WARNED_MS = 10 * MINUTE;

export function scorchCalls({ calls, facts }: PanCase, moments: readonly TruthMoment[]): ScorchCall[] {
  return moments
    .filter(({ what, pan }) => what === 'burned' && pan === facts.id)
    .map(({ t, depth_mm }) => {
      const called = episodes(calls, 'scorch-risk').findLast(({ from, to }) => from < t && to > t - STILL_WARNED_MS);
      return {
        way: (depth_mm ?? 0) < SHALLOW_BURN_MM ? 'too-shallow' : 'too-strong',
        lead: called === undefined ? null : (t - called.from) / MINUTE,
      };
    });
}

/** Calls of high priority, raised so or escalated to it, for which nothing true was the cause. */
export function falseHighCalls(one: PanCase): FalseCall[] {
  return one.calls.flatMap(({ t, alarm, event, priority, why }) => {
    if (priority !== 'high' || (event !== 'raised' && event !== 'escalated')) return [];
    const sample = sampleAt(one.samples, t);
    if (sample === undefined) return [];
    const seen = sample.off ? lastOnFire(one.samples, t) : sample;
    return seen !== null && hasCause(one, alarm, seen)
      ? []
      : [{ pan: one.facts.id, t, alarm, why, truth: truthWords(one.samples, seen ?? sample) }];
  });
}

function truthWords(samples: readonly Sample[], now: Sample): FalseCall['truth'] {
  return { brix: now.brix, depthMm: now.depthMm, burnsInMin: secondsToBurning(samples, now) / 60 };
}

/** What lets a boil die that nobody says, and how it was called. */
export interface LostBoils {
  truly: number;
  called: number;
  /** Calls without a boil that had died. */
  invented: number;
}

/** It counts as died when it stays so for so long, ms; a call may come so much later. */
const DIED_MS = 3 * MINUTE;
const LOST_CALL_MS = 10 * MINUTE;

/** A boil that dies with no pour in the ten minutes before, the pan on the fire, and nobody who noted a flame. */
export function lostBoils(one: PanCase, flameMarks: readonly number[]): LostBoils {
  const died = one.samples.flatMap(({ t, boiling }, index) => {
    const before = one.samples[index - 1];
    if (boiling || before === undefined || !before.boiling) return [];
    const later = one.samples.slice(index, index + DIED_MS / SAMPLE_MS + 1);
    const stays = later.every((sample) => !sample.boiling && !sample.off && !sample.burned);
    const explained =
      t - lastDisturbance(one.disturbed, t, true) < LOST_CALL_MS ||
      flameMarks.some((mark) => Math.abs(mark - t) < LOST_CALL_MS);
    return stays && !explained ? [t] : [];
  });
  const calls = episodes(one.calls, 'boil-lost').map(({ from }) => from);
  const near = (t: number, call: number): boolean => call >= t - MINUTE && call <= t + LOST_CALL_MS;
  return {
    truly: died.length,
    called: died.filter((t) => calls.some((call) => near(t, call))).length,
    invented: calls.filter((call) => !died.some((t) => near(t, call))).length,
  };
}

/** Somebody who lifts a pan off types it a little later; until then a call goes by what it was, ms. */
const TYPED_SOON_MS = 2 * MINUTE;

/** The last state before it was taken off, where that was only just now. */
function lastOnFire(samples: readonly Sample[], t: number): Sample | null {
  return samples.findLast((sample) => sample.t <= t && sample.t > t - TYPED_SOON_MS && !sample.off) ?? null;
}

/** A finish may be called so much early and still have a cause, °Bx. */
const EARLY_FINISH_BRIX = 1.5;
/** Pans burn soon when left so long they would, s; thicker than this they may be called whatever their time. */
const BURNS_SOON_S = 15 * 60;
const SCORCH_BRIX = 75;
/** A tip that came out of syrup at least so thick is a cause, °Bx. */
const THICK_BRIX = 25;

function hasCause(one: PanCase, alarm: AlarmName, sample: Sample): boolean {
  const { facts } = one;
  // What a burned pan is called matters no more.
  if (sample.burned) return true;
  if (alarm === 'finish' || alarm === 'past-finish') return sample.brix >= facts.finishBrix - EARLY_FINISH_BRIX;
  if (alarm === 'low-level') {
    return sample.depthMm <= facts.minDepthMm + 5 || sample.depthMm <= 1.3 * facts.minDepthMm;
  }
  if (alarm === 'scorch-risk') return burnsSoon(one, sample);
  if (alarm === 'probe-lost' || alarm === 'probe-suspect') return sample.tipBare || !sample.probed;
  return true;
}

function burnsSoon({ facts, samples }: PanCase, sample: Sample): boolean {
  if (sample.brix > SCORCH_BRIX || sample.celsius > facts.ceilingC) return true;
  if (sample.tipBare && sample.brix > THICK_BRIX) return true;
  return secondsToBurning(samples, sample) <= BURNS_SOON_S;
}

/** Strength and depth at which the simulator's pans burn. */
const BURNS_BRIX = 78;
const BURNS_MM = 4;

/** As it truly went over the minute before: s until it would burn if left as it is; Infinity when it loses nothing. */
export function secondsToBurning(samples: readonly Sample[], now: Sample): number {
  const before = sampleAt(samples, now.t - MINUTE);
  if (before === undefined || now.level === 0) return Infinity;
  const kgPerS = (before.massKg - now.massKg) / ((now.t - before.t) / 1000);
  if (!(kgPerS > 0)) return Infinity;
  const toStrength = now.massKg - (now.massKg * now.brix) / BURNS_BRIX;
  const toDepth = now.massKg * (1 - BURNS_MM / now.depthMm);
  return Math.max(0, Math.min(toStrength, toDepth)) / kgPerS;
}
