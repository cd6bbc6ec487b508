// Which of the tips in one pan is at odds with the others: it is named, and the pan is not read by it meanwhile.
import { type Course, isOff } from '../pan/course.ts';
import { forgetBlocksFrom, panCorrected } from '../pan/pan-model.ts';
import { probeName } from '../pan/baseline.ts';
import { sigmaOf } from '../pan/joint-normal.ts';
import { median } from '../pan/robust-statistics.ts';
import { noiseOf, recentSince } from '../probes/recent.ts';
import { standsStill } from './probe-signs.ts';
import { heardState, periodMs, type ProbeTrack } from './probe-track.ts';
import { boilingOf, settingOf } from './settings.ts';
import type { BoilState } from './state.ts';
import { aroundPan } from './surroundings.ts';
import { bestKnown, type PanTips, type Stood } from './tip-levels.ts';

interface Tip {
  probe: string;
  place: number;
  track: ProbeTrack;
  /** The middle of its last seconds, corrected, and what of that is over its own place in the pan, °C. */
  celsius: number;
  levelC: number;
}

const LOOK_EVERY_MS = 5000;
/** What is compared is the middle of so much, ms, or of so many numbers. */
const LOOKED_AT_MS = 10_000;
const NUMBERS = 5;
const LEAST_NUMBERS = 3;

/** Tips that were seen together stay by each other to so much and the noise, °C: superheat, depth (common practice). */
const APART_C = 0.7;
const USUAL_NOISE_C = 0.1;
/** Before that, two may differ by so many standard deviations of what is known of them, and so much, °C. */
const APART_SIGMAS = 2;
const APART_UNSEEN_C = 1;
/** They must lie apart for so long before it is said, ms, and together for as long before one counts again. */
const SURE_MS = 60_000;
/** A boil is calm so long after it began or was poured into, ms. */
const CALM_AFTER_MS = 60_000;
/** The place of a tip is learnt over half an hour of looks, and moves by no more than this from where it began, °C. */
const LEARNT_LOOKS = 360;
const MOST_MOVED_C = 0.5;

/** Looks at every pan in which several tips hang; t in ms. */
export function lookAtTips(state: BoilState, t: number): void {
  for (const id in state.tips) {
    const tips = state.tips[id]!;
    const heard = heardTips(state, id, t);
    if (t - tips.lookedAt >= LOOK_EVERY_MS) {
      tips.lookedAt = t;
      if (heard.some(isOdd)) endOdd(heard, apartFrom(state, heard), t);
      compare(state, id, tips, heard, t);
    }
    leaveOut(state, id, tips, heard, t);
  }
}

function heardTips(state: BoilState, id: string, t: number): Tip[] {
  const heard: Tip[] = [];
  state.panProbes[id]!.forEach((probe, place) => {
    const track = state.probes[probe]!;
    if (heardState(track, t) !== 'ok' || track.signs.doubt !== null) return;
    const { values } = recentSince(track.recent, t - Math.max(LOOKED_AT_MS, NUMBERS * periodMs(track)));
    if (values.length < LEAST_NUMBERS) return;
    const celsius = median(values) + state.corrections[probe]!;
    heard.push({ probe, place, track, celsius, levelC: celsius - track.beside.overC });
  });
  return heard;
}

const isOdd = ({ track }: Tip): boolean => track.beside.odd !== null;
const levelOf = (tips: readonly Tip[]): number => tips.reduce((sum, { levelC }) => sum + levelC, 0) / tips.length;
const wasCompared = (tips: readonly Tip[]): boolean => tips.every(({ track }) => track.beside.looks > 0);

/** How far right ones may lie apart, °C. */
function apartFrom(state: BoilState, tips: readonly Tip[]): number {
  if (wasCompared(tips)) return APART_C + Math.max(...tips.map(({ track }) => noiseOf(track.recent) ?? USUAL_NOISE_C));
  const [first, ...others] = tips.map(({ probe }) => probeName(probe));
  const sigmas = others.map((other) =>
    sigmaOf(state.water.joint, [
      [first!, 1],
      [other, -1],
    ]),
  );
  return Math.max(APART_UNSEEN_C, APART_SIGMAS * Math.max(...sigmas));
}

/** One that was at odds and lies by the others for a while counts again. */
function endOdd(heard: readonly Tip[], apartC: number, t: number): void {
  const right = heard.filter((tip) => !isOdd(tip));
  if (right.length === 0) return;
  for (const { track, levelC } of heard.filter(isOdd)) {
    const { beside } = track;
    if (Math.abs(levelC - levelOf(right)) > apartC / 2) beside.alikeFrom = null;
    else beside.alikeFrom ??= t;
    if (beside.alikeFrom !== null && t - beside.alikeFrom >= SURE_MS) beside.odd = null;
  }
}

function compare(state: BoilState, id: string, tips: PanTips, heard: readonly Tip[], t: number): void {
  const right = heard.filter((tip) => !isOdd(tip)).sort((a, b) => a.levelC - b.levelC);
  const spreadC = right.length < 2 ? 0 : right.at(-1)!.levelC - right[0]!.levelC;
  const apartC = spreadC < APART_C / 2 ? APART_C : apartFrom(state, right);
  const calm = isCalm(state, id, t);
  tips.perhaps = null;
  if (spreadC < apartC) {
    tips.partedAt = null;
    if (right.length > 0 && (spreadC < apartC / 2 || right.length < 2)) endUntold(state, id, tips, right);
    if (calm && right.length > 1 && (spreadC < apartC / 2 || !wasCompared(right))) learn(state, id, tips, right, t);
    return;
  }
  tips.partedAt ??= t;
  const odd = calm ? oddOf(state, id, tips, right, t) : null;
  const sure = calm && t - tips.partedAt >= SURE_MS;
  if (odd !== null && right.length > 1) nameOdd(state, id, tips, right, odd, { sure, t });
  // Unseen together, the higher counts until the boil tells.
  else if (sure || !wasCompared(right)) nobodyCanTell(state, id, tips, right, spreadC, sure);
}

/** Since when a pan boils with nothing poured in, ms. */
const boilsSince = ({ boilingFrom, disturbedAt, pouredAt, deafUntil }: Course): number =>
  Math.max(boilingFrom, disturbedAt, pouredAt, deafUntil);

function isCalm(state: BoilState, id: string, t: number): boolean {
  const { course } = state.pans[id]!;
  return course.phase === 'boiling' && !isOff(course) && t - boilsSince(course) >= CALM_AFTER_MS;
}

/** So often it is kept how they stood, ms: the older of two is three to six minutes old. */
const STOOD_EVERY_MS = 180_000;

/** They lie together: each one's own place is learnt, slowly. */
function learn(state: BoilState, id: string, tips: PanTips, right: readonly Tip[], t: number): void {
  tips.alikeAt = t;
  const best = right.find(({ probe }) => probe === bestKnown(state, id));
  const known = right.filter(({ track }) => track.beside.looks > 0);
  const level = best?.levelC ?? levelOf(known.length > 0 ? known : right);
  for (const { track, celsius } of right) {
    const { beside } = track;
    const over = celsius - level;
    if (beside.looks === 0) beside.firstC = beside.overC = over;
    beside.looks = Math.min(LEARNT_LOOKS, beside.looks + 1);
    const next = beside.overC + (over - beside.overC) / beside.looks;
    beside.overC = Math.min(beside.firstC + MOST_MOVED_C, Math.max(beside.firstC - MOST_MOVED_C, next));
  }
  if (t - (tips.stood.at(-1)?.t ?? -Infinity) < STOOD_EVERY_MS) return;
  const celsius = state.panProbes[id]!.map((_, place) => right.find((tip) => tip.place === place)?.celsius ?? null);
  tips.stood.push({ t, rateCPerMin: Math.max(0, state.pans[id]!.rateCPerMin ?? 0), celsius });
  if (tips.stood.length > 2) tips.stood.shift();
}

/** Colder than water's boiling point by so much no tip in a boiling pan is, °C. */
const UNDER_WATER_C = 1;

/** The one that cannot be right, by its pan, its own numbers, the others, and how it went before; null where that is not to be told. */
function oddOf(state: BoilState, id: string, tips: PanTips, right: readonly Tip[], t: number): Tip | null {
  const { waterC } = state.around[id]!;
  const boils = waterC !== null && state.designs[id]!.ceilingC === null;
  const alikeAt = tips.alikeAt ?? -Infinity;
  return (
    onlyOne(right, ({ celsius }) => boils && celsius < waterC - UNDER_WATER_C) ??
    onlyOne(right, ({ track: { signs } }) => signs.sameSince <= alikeAt && t - signs.sameSince >= SURE_MS) ??
    (right.length > 2
      ? farFromMiddle(right)
      : offItsCourse(tips, right, Math.max(boilsSince(state.pans[id]!.course), t - COURSE_LASTS_MS), t))
  );
}

function onlyOne(tips: readonly Tip[], is: (tip: Tip) => boolean): Tip | null {
  const found = tips.filter(is);
  return found.length === 1 ? found[0]! : null;
}

/** Of three and more, the one that lies further from the middle than all others are from each other. */
function farFromMiddle(right: readonly Tip[]): Tip | null {
  const low = right[1]!.levelC - right[0]!.levelC;
  const high = right.at(-1)!.levelC - right.at(-2)!.levelC;
  if (Math.max(low, high) < 2 * Math.min(low, high)) return null;
  return low > high ? right[0]! : right.at(-1)!;
}

/** One left its course where it went so much further from it than the other, and so much, °C. */
const OFF_COURSE = 2;
const OFF_COURSE_C = 0.2;
/** What they did so long ago tells nothing of now, ms. */
const COURSE_LASTS_MS = 20 * 60_000;

/** Of two, the one that left the course on which both were some minutes ago, since `since` (ms), where the other stayed on it. */
function offItsCourse(tips: PanTips, right: readonly Tip[], since: number, t: number): Tip | null {
  const stood = tips.stood.find((one) => one.t >= since);
  if (stood === undefined) return null;
  const [low, high] = right.map((tip) => ({ tip, offC: offCourseC(stood, tip, t) }));
  if (low === undefined || high === undefined || low.offC === null || high.offC === null) return null;
  const [near, far] = low.offC < high.offC ? [low, high] : [high, low];
  return far.offC! >= OFF_COURSE * near.offC! + OFF_COURSE_C ? far.tip : null;
}

/** How far a tip is from where its course would have brought it, °C; null where it was not heard then. */
function offCourseC({ t: from, rateCPerMin, celsius }: Stood, tip: Tip, t: number): number | null {
  const before = celsius[tip.place] ?? null;
  return before === null ? null : Math.abs(tip.celsius - before - (rateCPerMin * (t - from)) / 60_000);
}

interface Named {
  sure: boolean;
  t: number;
}

function nameOdd(
  state: BoilState,
  id: string,
  tips: PanTips,
  right: readonly Tip[],
  odd: Tip,
  { sure, t }: Named,
): void {
  const others = right.filter((tip) => tip !== odd);
  endUntold(state, id, tips, others);
  tips.perhaps = odd.probe;
  // What the pan was read by since they began to part was in part this one.
  if (!odd.track.beside.leftOut && tips.alikeAt !== null && t - tips.alikeAt < COURSE_LASTS_MS)
    forgetBlocksFrom(boilingOf(state), id, tips.alikeAt);
  if (!sure) return;
  const overC = odd.levelC - levelOf(others);
  const side = overC > 0 ? 'more' : 'less';
  odd.track.beside.odd = {
    state: 'suspect',
    why: `${odd.probe} shows ${Math.abs(overC).toFixed(1)} °C ${side} than what else hangs in this pan, and is left out`,
  };
  odd.track.beside.alikeFrom = null;
  tips.partedAt = null;
}

function nobodyCanTell(
  state: BoilState,
  id: string,
  tips: PanTips,
  right: readonly Tip[],
  apartC: number,
  sure: boolean,
): void {
  const { probe: highest, levelC } = right.at(-1)!;
  const before = tips.untold;
  const names = right.map(({ probe }) => probe).sort();
  const why = `${names.join(', ')} lie ${apartC.toFixed(1)} °C apart, and nobody can tell which is right: the higher one counts`;
  const doubt = before?.doubt ?? (sure ? { state: 'suspect' as const, why } : null);
  const standing = right.find(({ probe }) => probe === before?.highest);
  if (before !== null && standing !== undefined && levelC - standing.levelC < APART_C) {
    tips.untold = { ...before, doubt };
    return;
  }
  setUntold(state, id, { apartC, highest, doubt }, levelC);
}

function endUntold(state: BoilState, id: string, tips: PanTips, right: readonly Tip[]): void {
  if (tips.untold !== null) setUntold(state, id, null, levelOf(right));
}

/** The pan is read by others from now on: all that it showed is moved to their level, and its rise is known so much worse. */
function setUntold(state: BoilState, id: string, untold: PanTips['untold'], levelC: number): void {
  const pan = state.pans[id]!;
  const before = state.around[id]!;
  state.tips[id]!.untold = untold;
  state.around[id] = aroundPan(state, id);
  const shownC = pan.track.values.length === 0 ? levelC : median(pan.track.values.slice(-RECENT));
  panCorrected(pan, before, settingOf(state, id), levelC - shownC, 'learnt');
}

/** Readings of about half a minute of two probes. */
const RECENT = 31;

/** Tells each tip whether the pan is read by it now: one that is heard there always is. */
function leaveOut(state: BoilState, id: string, tips: PanTips, heard: readonly Tip[], t: number): void {
  const best = bestKnown(state, id);
  let read = 0;
  for (const probe of state.panProbes[id]!) {
    const { beside, signs } = state.probes[probe]!;
    const highest = tips.untold?.highest;
    const lower = highest !== undefined && highest !== probe;
    const waits = best !== null && best !== probe && beside.looks === 0 && heard.some((tip) => tip.probe === best);
    const doubted = beside.odd !== null || signs.doubt !== null || tips.perhaps === probe || standsStill(signs, t);
    beside.leftOut = doubted || lower || waits;
    if (!beside.leftOut && heard.some((tip) => tip.probe === probe)) read += 1;
  }
  if (read === 0) for (const probe of state.panProbes[id]!) state.probes[probe]!.beside.leftOut = false;
}
