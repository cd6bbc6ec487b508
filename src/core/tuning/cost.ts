// What settings would have cost in one boil, in minutes of a person's trouble: calls too late, too early, false, or too many.
import type { BoilScore, PanScore } from './score.ts';

/** Weighed against each other by judgement: the least cost is best. */
export interface Cost {
  /** Of the call before the finish, the finish call, the call before burning, calls without a cause, and all calls. */
  nearFinish: number;
  finish: number;
  scorch: number;
  falseCalls: number;
  calls: number;
}

/** What cost most in one pan, and when (ms): a replay opens there. */
export interface Worst {
  at: number;
  pan: string | null;
  words: string;
}

/** So long before the finish, and before burning, somebody wants to be called, s (common practice: to walk there with the instrument; to shut the heat). */
const WANTED_NEAR_S = 600;
const WANTED_SCORCH_S = 240;
/** A minute too late costs so much, a minute too early so little: one cannot be made good, the other is waiting. */
const LATE = { near: 1, scorch: 4 };
const EARLY = 0.2;
/** A °Bx too thick is near burning; a °Bx too thin boils on for some minutes. */
const TOO_THICK = 4;
const TOO_THIN = 2;
/** A false call costs a walk and some trust, any other a look. */
const FALSE_CALL = 5;
const CALL = 0.3;

/** null where the boil has no pan whose truth is known: then nothing but the calls could be counted. */
export function costOf(score: BoilScore, finishBrix: (pan: string) => number | null): Cost | null {
  if (score.pans.length === 0) return null;
  const sum = (of: (pan: PanScore) => number): number => score.pans.reduce((total, pan) => total + of(pan), 0);
  return {
    nearFinish: sum(nearCost),
    finish: sum((pan) => finishCost(pan, finishBrix(pan.pan))),
    scorch: sum(scorchCost),
    falseCalls: FALSE_CALL * (score.false_calls ?? 0),
    calls: CALL * score.alarms,
  };
}

/** All its parts together, minutes of a person's trouble. */
export const wholeCost = (cost: Cost): number => Object.values(cost).reduce((sum: number, one: number) => sum + one, 0);

const leadCost = (leadS: number | null, wantedS: number, late: number): number =>
  leadS === null ? 0 : (Math.max(0, wantedS - leadS) * late + Math.max(0, leadS - wantedS) * EARLY) / 60;

const nearCost = ({ near_finish_lead_s }: PanScore): number => leadCost(near_finish_lead_s, WANTED_NEAR_S, LATE.near);

const scorchCost = ({ scorch_lead_s }: PanScore): number => leadCost(scorch_lead_s, WANTED_SCORCH_S, LATE.scorch);

/** A finish that was never called is as bad as one called five °Bx too late. */
const NEVER_CALLED_BRIX = 5;

function finishCost({ finish_brix, finished_t }: PanScore, finishBrix: number | null): number {
  if (finishBrix === null) return 0;
  if (finish_brix === null) return finished_t === null ? 0 : NEVER_CALLED_BRIX * TOO_THICK;
  const over = finish_brix - finishBrix;
  return over > 0 ? over * TOO_THICK : -over * TOO_THIN;
}

/** null where nothing of a pan cost as much as a false call would. */
export function worstOf(score: BoilScore, finishBrix: (pan: string) => number | null): Worst | null {
  const all = score.pans.flatMap((pan) => {
    const { finished_t: finished, called_t: called } = pan;
    const brix = finishBrix(pan.pan);
    const faults: (Worst & { cost: number })[] = [];
    const at = called ?? finished;
    if (at !== null && brix !== null)
      faults.push({ cost: finishCost(pan, brix), at, pan: pan.pan, words: finishWords(pan, brix) });
    if (finished !== null) {
      const lead = pan.near_finish_lead_s ?? 0;
      faults.push({ cost: nearCost(pan), at: finished - lead * 1000, pan: pan.pan, words: nearWords(lead) });
    }
    if (pan.scorch_lead_s !== null && at !== null)
      faults.push({ cost: scorchCost(pan), at, pan: pan.pan, words: scorchWords(pan.scorch_lead_s) });
    return faults;
  });
  const worst = all.reduce<(typeof all)[number] | null>(
    (most, one) => (most === null || one.cost > most.cost ? one : most),
    null,
  );
  if (worst === null || worst.cost < FALSE_CALL) return null;
  return { at: Math.round(worst.at), pan: worst.pan, words: worst.words };
}

const minutes = (seconds: number): string => `${Math.round(seconds / 60)} min`;

function finishWords({ finish_brix }: PanScore, wanted: number): string {
  return finish_brix === null
    ? 'the finish was never called'
    : `the finish was called at ${finish_brix.toFixed(1)} °Bx, ${wanted.toFixed(1)} was asked for`;
}

const nearWords = (lead: number): string =>
  lead === 0 ? 'no call came before the finish' : `the call before the finish came ${minutes(lead)} before it`;

const scorchWords = (lead: number): string =>
  lead === 0 ? 'no call came before it burned' : `the call before burning came ${minutes(lead)} before it`;
