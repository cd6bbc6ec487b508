// What each alarm of a pan looks at: limits, deadbands and delays as a table over one situation.
import type { AlarmName, Priority } from '../boil/entries.ts';
import type { TimeLeft } from '../pan/forecast.ts';
import { fellWords, isBurning, MAY_BE_LOW } from './words.ts';
import { BARE_DEPTH_MM } from '../pan/pan-reading.ts';
import type { PanReading } from '../pan/reading.ts';
import { isThick, SIGN_RULES, type SignsSeen } from './sign-rules.ts';

/** What is so with a pan at one moment, whoever calls. */
export interface PanSeen {
  reading: PanReading;
  finishBrix: number;
  minDepthMm: number;
  ceilingC: number | null;
  reachedFinish: boolean;
  reachedPast: boolean;
  /** Time to the finish, to burning, and to bare metal, each with how sure it is; null while not known. Thin sap is not asked when it burns. */
  finish: TimeLeft | null;
  scorch: () => TimeLeft | null;
  shallow: TimeLeft | null;
  /** Seconds until it may be low by a count, however unsure; null where nobody told of an amount. */
  mayBeLow: () => number | null;
  /** Share to which the litres are known. */
  litresShare: number;
  /** Something was poured in within the last minutes, and somebody said so. */
  justPoured: boolean;
  /** Its climb is its own: it boils, and neither is something cold being warmed in it nor was a tip put into it of late. */
  climbsByItself: boolean;
  /** What was poured in came out of a pan of which nobody knows the strength, and nothing has shown it since. */
  inDoubt: boolean;
  /** Strength at which this sap counts as scorching, °Bx, and its rise, °C, null while not known. */
  scorchBrix: number;
  scorchRiseC: number | null;
  /** The pan's port is lost: that alarm stands for its probe. */
  portLost: boolean;
  signs: SignsSeen;
  /** No thermometer shows its strength: it is counted from what went in and boiled away. */
  byCount: boolean;
  /** It rests on a thermometer that somebody read so long ago, ms; null for a pan with a probe, and where that is too long ago. */
  handAgeMs: number | null;
}

/** Everything that a pan's alarms may look at. */
export interface PanSituation extends PanSeen {
  settings: { nearFinishLeadS: number; nearFinishDeadband: number; scorchLeadS: number; lowLevelLeadS: number };
}

/**
 * What a rule finds. `over` starts an alarm, `inside` ends it, neither leaves it as it is (the deadband).
 * null: not known now, and the alarm keeps its last state.
 */
export interface Finding {
  over: boolean;
  inside: boolean;
  priority: Priority;
  why: () => string;
  /** Where it is not over, or no more: the numbers that the call stood on are no more those of now, and `why` says so. */
  rewords?: boolean;
  /** What it is called ahead of is there. */
  hasCome?: boolean;
  /** It ends without waiting: taken off, poured into, or another alarm has taken its place. */
  atOnce?: boolean;
}

/** One that asks for no lead finds the same whoever calls, and is asked once. */
export type Rule = {
  alarm: AlarmName;
  /** How long `over` must last before it is called, ms. */
  onDelayMs: number;
  /** How long `inside` must last before it counts as over, ms. */
  offDelayMs: number;
} & (
  | { asksLeads: true; find: (situation: PanSituation) => Finding | null }
  | { asksLeads: false; find: (seen: PanSeen) => Finding | null }
);

/** Thinner than this the forecast rests on counted litres, and calls only where it is sure, °Bx, standard deviation of its logarithm. */
const TELLING_BRIX = 30;
const SURE_FORECAST = 0.4;
/** Rise in a minute that no boil makes by itself, °C/min, and how far over water a climb counts, °C. */
const RUNAWAY_C_PER_MIN = 4;
const CLIMBS_FROM_C = 2;
/** A ceiling may be touched by so much, °C. */
const CEILING_MARGIN_C = 0.5;
/** °C under a limit at which an alarm of that limit ends. */
const TEMPERATURE_DEADBAND_C = 0.5;

export const PAN_RULES: readonly Rule[] = [
  { alarm: 'near-finish', onDelayMs: 15_000, offDelayMs: 30_000, asksLeads: true, find: nearFinish },
  { alarm: 'finish', onDelayMs: 0, offDelayMs: 0, asksLeads: false, find: finish },
  { alarm: 'past-finish', onDelayMs: 0, offDelayMs: 0, asksLeads: false, find: pastFinish },
  { alarm: 'scorch-risk', onDelayMs: 3000, offDelayMs: 30_000, asksLeads: true, find: scorchRisk },
  { alarm: 'low-level', onDelayMs: 10_000, offDelayMs: 30_000, asksLeads: true, find: lowLevel },
  { alarm: 'probe-lost', onDelayMs: 0, offDelayMs: 3000, asksLeads: false, find: probeLost },
  ...SIGN_RULES,
];

function itIsOver(priority: Priority): Finding {
  return { over: false, inside: true, priority, why: () => '', atOnce: true };
}

const minutes = (seconds: number): string => String(Math.max(1, Math.round(seconds / 60)));
const digits = (value: number, count: number): string => value.toFixed(count).replace('-', '−');

function nearFinish(situation: PanSituation): Finding | null {
  const { reading, settings, finishBrix, reachedFinish, finish, justPoured, inDoubt, handAgeMs } = situation;
  const left = reading.finish_in_s;
  const done = reachedFinish || reading.stage === 'off';
  if (done) return (reading.stage === 'off' ? null : fellUnexplained(situation)) ?? itIsOver('medium');
  if (left === null || reading.brix === null)
    return justPoured && !inDoubt ? itIsOver('medium') : fellUnexplained(situation);
  const low = minutes(reading.finish_low_s ?? left);
  const high = minutes(reading.finish_high_s ?? left);
  return {
    over: left <= settings.nearFinishLeadS && (reading.brix >= TELLING_BRIX || (finish?.sigma ?? 1) < SURE_FORECAST),
    inside: left > settings.nearFinishLeadS * settings.nearFinishDeadband && !inDoubt,
    priority: 'medium',
    rewords: reading.probe === null,
    why: () =>
      `about ${minutes(left)} min to ${digits(finishBrix, 1).replace(/\.0$/, '')} °Bx (${low}–${high})${handWords(handAgeMs)}`,
  };
}

/** Too strong to be named: the rise says so. */
function beyondScale({ reading, scorchRiseC }: PanSeen): boolean {
  return reading.rise_c !== null && scorchRiseC !== null && reading.rise_c >= scorchRiseC;
}

function finish(situation: PanSeen): Finding | null {
  return whileReached(situation, situation.reachedFinish && !situation.reachedPast);
}

function pastFinish(situation: PanSeen): Finding | null {
  return whileReached(situation, situation.reachedPast);
}

/** A strength that was reached stays so while nothing is known; a pan that has cooled was taken off. */
function whileReached(situation: PanSeen, reached: boolean): Finding | null {
  const { reading } = situation;
  // A pour that was only guessed from the fall ends nothing either.
  if (!reached || reading.stage === 'off')
    return (reading.stage === 'off' ? null : fellUnexplained(situation)) ?? itIsOver('high');
  if (reading.brix === null && !beyondScale(situation)) return cooled(situation) ?? fellUnexplained(situation);
  const counted = situation.byCount ? COUNTED : handWords(situation.handAgeMs);
  return { over: true, inside: false, priority: 'high', why: () => `${strengthWords(situation)}${counted}` };
}

/** What a call rests on where no probe hangs in the pan. */
function handWords(ageMs: number | null): string {
  if (ageMs === null) return '';
  return `, by a thermometer read by hand ${ageMs < 60_000 ? 'just now' : `${Math.round(ageMs / 60_000)} min ago`}`;
}

const COUNTED = ', by count, not by thermometer: check with an instrument';

/** A finished pan that cools far under the water point has been taken off the heat, said or not. */
const TAKEN_OFF_C = 8;

/** Ends an alarm of a pan that has cooled; otherwise what is not known changes nothing. */
function cooled({ reading }: PanSeen): Finding | null {
  if (reading.rise_c === null || reading.rise_c > -TAKEN_OFF_C) return null;
  return itIsOver('high');
}

/**
 * A thick pan fell at once and nobody noted why: it may have been poured into, and its tip may hang in the air over syrup
 * that burns. Nothing is called by that alone, and nothing that was called ends.
 */
function fellUnexplained({ reading: { temperature_c: now }, signs }: PanSeen): Finding | null {
  const { fell } = signs.pan;
  if (fell === null) return null;
  // Of a pan whose probe was lost since, what was said last stands.
  const why = (): string => (now === null ? '' : fellWords(digits(fell.fromC, 1), digits(now, 1)));
  return { over: false, inside: false, priority: 'high', why, rewords: true };
}

function strengthWords({ reading, finishBrix }: PanSeen): string {
  const target = digits(finishBrix, 1).replace(/\.0$/, '');
  if (reading.brix === null) return `rise ${digits(reading.rise_c ?? 0, 1)} °C, stronger than ${target} °Bx`;
  const range =
    reading.brix_low === null || reading.brix_high === null
      ? ''
      : ` (${digits(reading.brix_low, 1)}–${digits(reading.brix_high, 1)})`;
  return `${digits(reading.brix, 1)} °Bx${range}, finish ${target} °Bx`;
}

function scorchRisk(situation: PanSituation): Finding | null {
  const { reading, ceilingC, settings } = situation;
  if (reading.stage === 'off') return itIsOver('high');
  if (ceilingC !== null) return ceilingPassed(reading, ceilingC);
  if (beyondScale(situation) || runsAway(situation)) {
    return {
      over: true,
      inside: false,
      priority: 'high',
      why: () => runawayWords(situation),
      hasCome: isBurning(reading),
    };
  }
  const { bare } = situation.signs.pan;
  if (bare !== null) return { over: true, inside: false, priority: 'high', why: () => bareWords(reading, bare.fromC) };
  const burns = burnsIn(situation);
  if (burns === null)
    return situation.justPoured && !situation.inDoubt
      ? itIsOver('high')
      : (cooled(situation) ?? fellUnexplained(situation));
  // What is counted off says nothing of how thick it is: no call that stood on that ends by it.
  if (burns.seconds > settings.scorchLeadS && situation.signs.pan.fell !== null) return fellUnexplained(situation);
  const over = burns.seconds <= settings.scorchLeadS && !isAheadOfFinish(situation, burns);
  return {
    over,
    inside: burns.seconds > settings.scorchLeadS * 1.5 && !isHardlyCounted(situation, burns) && !situation.inDoubt,
    atOnce: situation.justPoured,
    priority: 'high',
    hasCome: over && isBurning(reading),
    rewords: reading.probe === null,
    why: () => `${burnsWords(situation, burns)}${handWords(situation.handAgeMs)}`,
  };
}

/**
 * A fast pan needs less than the lead from its finish to where it burns. Nobody takes it off before its finish, so that is
 * called first, as long as some warning is left; where no probe shows it from block to block, a count calls early all the same.
 */
const isAheadOfFinish = ({ reading, reachedFinish, scorch }: PanSeen, { by }: Burns): boolean =>
  by === 'strength' && !reachedFinish && SHOWS.has(reading.probe) && (scorch()?.seconds ?? 0) > LEAST_WARNING_S;

/** States of a probe that is believed. */
const SHOWS: ReadonlySet<PanReading['probe']> = new Set(['ok', 'late']);

/** A pan that burns so soon is called whatever its finish, s. */
const LEAST_WARNING_S = 90;

/**
 * A count that is hardly known is no reason to stop calling; a pour or a look at the depth is, and so is a strength that
 * is reached sooner: what is shown to be so thin has more water left, too.
 */
const isHardlyCounted = ({ shallow, litresShare, justPoured }: PanSeen, { by }: Burns): boolean =>
  by === 'depth' && shallow !== null && litresShare >= TELLING_DEPTH && !justPoured;

/** Which of the two limits comes first, how soon, and by which number: a pan that burns may be far from its finish. */
function burnsWords({ reading, scorchBrix, shallow, litresShare }: PanSeen, { by, seconds }: Burns): string {
  const isThere = by === 'depth' ? shallow?.seconds === 0 : reading.brix !== null && reading.brix >= scorchBrix;
  const soon = isThere ? '' : ` in about ${minutes(Math.max(0, seconds))} min at this heat`;
  if (by === 'strength')
    return `too strong${soon}: ${digits(reading.brix ?? 0, 1)} °Bx now, it burns from ${digits(scorchBrix, 1).replace(/\.0$/, '')} °Bx`;
  const deep =
    reading.depth_mm === null ? '' : `: ${digits(reading.depth_mm, 0)} mm deep, it burns from ${BARE_DEPTH_MM} mm down`;
  const counted = litresShare >= TELLING_DEPTH ? ', by what went in and boiled away: look how deep it is' : '';
  return `too shallow${soon}${deep}${counted}`;
}

const bareWords = ({ temperature_c: now }: PanReading, fromC: number): string =>
  `fell from ${digits(fromC, 1)} to ${now === null ? 'the steam' : `${digits(now, 1)} °C`} and stays there: is the tip in the syrup?`;

interface Burns {
  by: 'depth' | 'strength';
  seconds: number;
}

/** When it burns, by its strength where it is thick, else by what was poured in and boiled away. */
function burnsIn(seen: PanSeen): Burns | null {
  const { reading, scorch, shallow, litresShare } = seen;
  const isTelling = (reading.brix ?? 0) >= TELLING_BRIX;
  const burns = isTelling ? scorch() : null;
  const climbed = isTelling ? climbsThere(seen) : null;
  const thick = burns === null ? climbed : Math.min(soonest(burns), climbed ?? Infinity);
  const low = shallow === null ? null : byCount(shallow, litresShare);
  if (low !== null && (thick === null || low <= thick)) return { by: 'depth', seconds: low };
  return thick === null ? null : { by: 'strength', seconds: thick };
}

/** A climb that a fire makes which was slow or out a moment ago, °C/min; a slower one the forecast has followed by then (practice). */
const CLIMBS_C_PER_MIN = 0.3;

/**
 * Seconds until it is where it burns if it climbs on as it does, once it was at its finish: a pan that stood still and climbs
 * now is there before the forecast believes in that fire. At a steady fire it climbs ever faster, so this is no earlier than
 * it can be. Short of the finish a tip that is put back into the syrup would look the same.
 */
function climbsThere({ reading, climbsByItself, reachedFinish, scorchRiseC }: PanSeen): number | null {
  const { rise_c: rise, rate_c_per_min: rate } = reading;
  if (!climbsByItself || !reachedFinish || rise === null || rate === null || scorchRiseC === null) return null;
  return rate < CLIMBS_C_PER_MIN || rise <= CLIMBS_FROM_C ? null : Math.max(0, (60 * (scorchRiseC - rise)) / rate);
}

/** A depth known to this share calls by its early end; one known worse so much before its middle, s, and says that it is a count. */
const TELLING_DEPTH = 0.25;
const UNSURE_EARLIER_S = 60;
/** No count calls by its early end where it may as well be a quarter of an hour, s. */
const SURELY_SOON_S = 900;

function byCount(left: TimeLeft, litresShare: number): number {
  if (litresShare >= TELLING_DEPTH) return left.seconds - UNSURE_EARLIER_S;
  return left.high <= SURELY_SOON_S ? soonest(left) : left.seconds;
}

/** A wide range calls by its early end: so many seconds of warning are left even then. */
const LATE_WARNING_S = 90;
const soonest = ({ seconds, low }: TimeLeft): number => Math.min(seconds, low + LATE_WARNING_S);

function ceilingPassed(reading: PanReading, ceilingC: number): Finding | null {
  const { temperature_c: temperature } = reading;
  if (temperature === null) return null;
  return {
    over: temperature > ceilingC + CEILING_MARGIN_C,
    inside: temperature < ceilingC - TEMPERATURE_DEADBAND_C,
    priority: 'high',
    why: () => `over its ceiling: ${digits(temperature, 1)} °C, ceiling ${digits(ceilingC, 1).replace(/\.0$/, '')} °C`,
  };
}

function runsAway({ reading, climbsByItself }: PanSeen): boolean {
  return (
    climbsByItself &&
    reading.rise_c !== null &&
    reading.rise_c > CLIMBS_FROM_C &&
    (reading.rate_c_per_min ?? 0) >= RUNAWAY_C_PER_MIN
  );
}

function runawayWords(situation: PanSeen): string {
  const { rise_c: rise, rate_c_per_min: rate } = situation.reading;
  const risen = `rise ${digits(rise ?? 0, 1)} °C`;
  if (beyondScale(situation))
    return `too strong: ${risen}, it burns from a rise of ${digits(situation.scorchRiseC!, 1)} °C`;
  return `rises too fast: ${digits(rate ?? 0, 1)} °C/min, ${risen}`;
}

/** A depth known to this share calls as loud as it can. */
const SURE_DEPTH = 0.25;

function lowLevel(situation: PanSituation): Finding | null {
  const { reading, settings, minDepthMm, litresShare, justPoured } = situation;
  if (reading.stage === 'off') return itIsOver('medium');
  const left = reading.top_up_in_s;
  if (left === null) return fellUnexplained(situation) ?? lowByCount(situation);
  return {
    over: left <= settings.lowLevelLeadS,
    inside: left > settings.lowLevelLeadS * 1.3,
    atOnce: justPoured,
    priority: left === 0 && litresShare < SURE_DEPTH ? 'high' : 'medium',
    why: () =>
      `${digits(reading.depth_mm ?? 0, 0)} mm deep now, ${left > 0 ? `down to its least of ${digits(minDepthMm, 0)} mm in about ${minutes(left)} min` : `its least is ${digits(minDepthMm, 0)} mm`}`,
  };
}

/**
 * Of a pan that no thermometer shows, and of which the depth is not known, the count is all there is: it calls to look, as
 * unsure as it is, rather than let the pan boil dry. Where its strength is known that tells.
 */
function lowByCount({ reading, settings, byCount, justPoured, mayBeLow }: PanSituation): Finding | null {
  const left = byCount && reading.brix === null ? mayBeLow() : null;
  if (left === null) return justPoured ? itIsOver('medium') : null;
  return {
    over: left <= settings.lowLevelLeadS,
    inside: left > settings.lowLevelLeadS * 1.3,
    atOnce: justPoured,
    priority: 'medium',
    why: () => MAY_BE_LOW,
  };
}

function probeLost(seen: PanSeen): Finding | null {
  const { reading, portLost, signs } = seen;
  const gone = reading.probe === 'lost' || reading.probe === 'broken';
  const unwatched = reading.stage === 'off' || reading.probe === null || portLost;
  return {
    over: gone && !unwatched,
    // Late is neither: only a reading that came ends it.
    inside: unwatched || (!gone && reading.probe !== 'late'),
    priority: isThick(seen) ? 'high' : 'medium',
    why: () => (reading.probe === 'broken' ? (signs.broken ?? 'the probe is broken') : 'nothing comes from the probe'),
  };
}
