// How settings would have done over one boil whose end is known: leads, the strength at the call, and calls without a cause.
import { median } from '../pan/robust-statistics.ts';
import type { PanDesign } from '../pan/setup.ts';
import type { RaisingShown } from '../boil/alarm-history.ts';
import type { AlarmTransition } from '../alarms/alarm.ts';
import { trueStrengthAt, whenTruly, type PanTruth } from './truth.ts';

/** What is compared; null where the boil's truth is not known. */
export interface Score {
  /** From the call to the true finish, s; 0 where no call came before it. The middle of the pans. */
  near_finish_lead_s: number | null;
  /** True strength at the finish call, °Bx. The middle of the pans. */
  finish_brix: number | null;
  /** From the call to the true scorch limit, s; 0 where no call came before it. The least of the pans that came so far. */
  scorch_lead_s: number | null;
  /** Calls that a person said were of no use, and finish calls well before the true finish. */
  false_calls: number | null;
  /** All that were raised. */
  alarms: number;
}

/** The same for one pan whose truth is known. */
export interface PanScore extends Pick<Score, 'near_finish_lead_s' | 'finish_brix' | 'scorch_lead_s'> {
  pan: string;
  /** When it truly reached the finish, ms; null where that is not known. */
  finished_t: number | null;
  /** When it was called as finished, ms; null where it was not. */
  called_t: number | null;
  /** The call came well before the finish. */
  too_early: boolean;
}

export interface BoilScore extends Score {
  pans: PanScore[];
}

/** A finish call so far under the finish is a false one, °Bx: a hydrometer told in a hot cup is off by half of it. */
const TOO_EARLY_BRIX = 2;
/** A call within this of one that was of no use is the same call under other settings, ms. */
const SAME_CALL_MS = 10 * 60_000;

/**
 * `calls` are the transitions of the run that is judged, `designs` its pans (with the finish that it was asked for);
 * `words` are the raisings of the boil as it was, with what people said of them.
 */
export function scoreOf(
  calls: readonly AlarmTransition[],
  designs: Readonly<Record<string, PanDesign>>,
  truths: readonly PanTruth[],
  words: readonly RaisingShown[],
): BoilScore {
  const raised = calls.filter(({ event }) => event === 'raised');
  const pans = truths.flatMap((truth) => {
    const design = designs[truth.pan];
    return design === undefined ? [] : [panScore(raised, design, truth)];
  });
  const noUse = words.filter(({ noUse }) => noUse);
  const scorches = known(pans.map((pan) => pan.scorch_lead_s));
  return {
    near_finish_lead_s: middle(pans.map((pan) => pan.near_finish_lead_s)),
    finish_brix: middle(pans.map((pan) => pan.finish_brix)),
    scorch_lead_s: scorches.length === 0 ? null : Math.min(...scorches),
    false_calls: pans.length === 0 && noUse.length === 0 ? null : falseCalls(raised, pans, noUse),
    alarms: raised.length,
    pans,
  };
}

function panScore(raised: readonly AlarmTransition[], design: PanDesign, truth: PanTruth): PanScore {
  const own = raised.filter(({ pan }) => pan === design.id);
  const finished = whenTruly(truth, design.finishBrix);
  const burnt = whenTruly(truth, design.scorchBrix);
  const from = truth.curve[0]!.t;
  // The last of several: an earlier one was of an earlier batch in this pan.
  const call = own.findLast(({ alarm, t }) => alarm === 'finish' && t >= from);
  const brix = call === undefined ? null : trueStrengthAt(truth, call.t);
  return {
    pan: design.id,
    near_finish_lead_s: finished === null ? null : leadOf(own, 'near-finish', from, finished),
    finish_brix: brix,
    scorch_lead_s: burnt === null ? null : leadOf(own, 'scorch-risk', from, burnt),
    finished_t: finished,
    called_t: call?.t ?? null,
    too_early: brix !== null && brix < design.finishBrix - TOO_EARLY_BRIX,
  };
}

/** From the first call that still stood for this batch to the time, s. */
function leadOf(own: readonly AlarmTransition[], alarm: string, from: number, until: number): number {
  const first = own.find((one) => one.alarm === alarm && one.t >= from && one.t <= until);
  return first === undefined ? 0 : (until - first.t) / 1000;
}

function falseCalls(
  raised: readonly AlarmTransition[],
  pans: readonly PanScore[],
  noUse: readonly RaisingShown[],
): number {
  const unneeded = raised.filter((call) => noUse.some((word) => isSameCall(call, word)));
  const early = pans.filter((pan) => pan.too_early && !unneeded.some((call) => isFinishOf(call, pan)));
  return unneeded.length + early.length;
}

const isFinishOf = (call: AlarmTransition, { pan, called_t }: PanScore): boolean =>
  call.alarm === 'finish' && call.pan === pan && call.t === called_t;

function isSameCall(call: AlarmTransition, word: RaisingShown): boolean {
  const isNamed = call.alarm === word.alarm && call.pan === word.pan && (call.port ?? null) === word.port;
  return isNamed && Math.abs(call.t - word.raisedAt) <= SAME_CALL_MS;
}

function known(values: readonly (number | null)[]): number[] {
  return values.filter((value) => value !== null);
}

function middle(values: readonly (number | null)[]): number | null {
  const all = known(values);
  return all.length === 0 ? null : median(all);
}
