// The one fold over a boil's entries, the same for live, replay and practice: physics, then pans, then alarms.
import { alarmsAfterGap, answerAlarms } from '../alarms/engine.ts';
import { BLOCK_MS } from '../pan/temperature-track.ts';
import { type Moved, panAfterGap, panCorrected } from '../pan/pan-model.ts';
import { answerByDeed, rememberTransitions } from './alarm-history.ts';
import { believedNow, keepCorrections } from './corrections.ts';
import type { Called, Entry, Header, HeaderPatch, Mark } from './entries.ts';
import { hearLine } from './hear-line.ts';
import { judgeAlarms } from './judge.ts';
import { leftOut, lookAtLeftOut } from './left-out.ts';
import type { FoldTools } from './line-reading.ts';
import { noteMark, standingMark } from './marks.ts';
import { takeCall } from './program-alarms.ts';
import { checkDoubt } from './readings-noted.ts';
import { correctionC, doubtAboutPressure, NEEDS_ALTITUDE, pressureJump } from './water.ts';
import { mergePatch } from './merge-patch.ts';
import { afterGap, lostAt } from './probe-track.ts';
import { type BoilState, callersOf, type KeptMark, lookSoon, portNamed, takeHeader, tell } from './state.ts';
import { questionAmounts } from './questioned-amounts.ts';
import { stepPans } from './readings.ts';
import { settingOf } from './settings.ts';
import { levelMovesC } from './tip-levels.ts';
import { REFRESH_MS, refreshWater, weighAnew } from './surroundings.ts';

export { startBoil, type BoilState } from './state.ts';
export { panReadings, strengthsNow } from './readings.ts';

/**
 * What is due is done on the whole second, ms, and at the very moment at which a probe counts as lost or broken, or a
 * port as lost. Pans are looked at then, when a block of readings has closed, when something was noted, and while one of
 * their alarms waits out a delay: between those nothing of them can change.
 */
const TICK_MS = 1000;

/**
 * One entry of the boil, in order of t. Everything due before entry.t is done first.
 * The state is handed over: it is changed and returned, so clone it to keep an old one.
 * `state.fresh` holds the alarm transitions of this call.
 */
export function applyEntry(state: BoilState, entry: Entry, tools: FoldTools): BoilState {
  state.fresh = [];
  if (state.ended) return state;
  if ('run' in entry && entry.run === 'gap') {
    passGap(state, entry.t, entry.seconds * 1000);
    return state;
  }
  // What falls due at entry.t itself is done by the next call: what a person does at t counts before it.
  runDue(state, entry.t - 1);
  // A call was worked out by a look already: one that a replay reads must not make it look when the live boil did not.
  if (!('line' in entry) && !('called' in entry)) state.stirred = true;
  if ('line' in entry) hearLine(state, entry.port, entry.line, entry.t, tools);
  else if ('state' in entry) portChanged(state, entry);
  else if ('mark' in entry) rememberingMind(state, entry.mark, entry.t);
  else if ('set' in entry) correcting(state, () => takeSet(state, entry.set, entry.t, tools));
  else if ('answer' in entry)
    for (const caller of callersOf(state)) tell(caller, answerAlarms(caller.book, entry.answer, entry.t));
  else if ('called' in entry) takeProgramCall(state, entry.called, entry.t);
  else if ('run' in entry) state.ended = true;
  return state;
}

/** It was told by the program that made it, so it is remembered here and not told again. */
function takeProgramCall(state: BoilState, called: Called, t: number): void {
  for (const { history, book } of callersOf(state)) rememberTransitions(history, book, takeCall(book, called, t));
}

/**
 * Does everything due at or before t (ms). The caller promises that no later entry has t at or before it, and that
 * t does not lie inside a gap: there enterGap stands instead, or alarms would be raised that nobody could have heard.
 */
export function advance(state: BoilState, t: number): BoilState {
  state.fresh = [];
  if (!state.ended) runDue(state, t);
  return state;
}

/**
 * The program did not run from `from` (ms) on: nothing is known until an entry comes. What was due before is done;
 * for a replay that shows the gap itself. `applyEntry` of the gap entry does the same and then goes on behind it.
 */
export function enterGap(state: BoilState, from: number): BoilState {
  state.fresh = [];
  runDue(state, from);
  forgetRecent(state, Math.max(from, state.now));
  return state;
}

/** The program takes so long to start at the most, ms: a gap that begins by then is one since the fire was lit. */
const STARTS_WITHIN_MS = 1000;

function passGap(state: BoilState, t: number, length: number): void {
  const from = Math.max(state.now, Math.round(t - length));
  if (t - length < STARTS_WITHIN_MS) state.watchedFrom = t;
  if (from > state.now) runDue(state, from);
  forgetRecent(state, from);
  state.stirred = true;
  state.lookDue = null;
  state.now = t - 1;
  state.nextTick = Math.ceil(t / TICK_MS) * TICK_MS;
  forgetRecent(state, t);
  for (const { book } of callersOf(state)) alarmsAfterGap(book, t);
}

function forgetRecent(state: BoilState, t: number): void {
  for (const id in state.pans) panAfterGap(state.pans[id]!, settingOf(state, id), t);
  for (const [id, probe] of Object.entries(state.probes)) state.probes[id] = afterGap(probe, t);
  for (const junction of Object.values(state.coldJunctions)) junction.track = afterGap(junction.track, t);
}

/**
 * When something falls due next, ms: the whole second, the very moment at which a silent probe counts as lost, and a look
 * that cannot wait, for a probe broke or a port was lost.
 */
export function nextDue(state: BoilState): number {
  let due = Math.min(state.nextTick, state.lookDue ?? Number.POSITIVE_INFINITY);
  for (const id of state.names.probes) {
    const lost = lostAt(state.probes[id]!);
    if (lost > state.now && lost < due) due = lost;
  }
  return due;
}

function runDue(state: BoilState, until: number): void {
  for (;;) {
    const due = nextDue(state);
    if (due > until) break;
    const regular = due === state.nextTick;
    if (regular) state.nextTick += TICK_MS;
    tick(state, due, !regular || state.stirred || due % BLOCK_MS === 0);
  }
  state.now = Math.max(state.now, until);
}

function tick(state: BoilState, t: number, everyPan: boolean): void {
  state.now = t;
  if (everyPan) {
    state.stirred = false;
    state.lookDue = null;
    state.lookedAt = t;
    if (t - state.waterAt >= REFRESH_MS) correcting(state, () => refreshWater(state, t));
    stepPans(state, t);
    questionAmounts(state, t);
  }
  judgeAlarms(state, t, everyPan);
}

/**
 * Something that was noted or learnt may correct a probe, the water point or a sap. The pans did not change by it: what
 * their tracks hold is shifted, so that no rate and no slope comes of it.
 */
function correcting(state: BoilState, act: () => Moved): void {
  stepPans(state, state.now);
  const { corrections: before, around: aroundBefore } = state;
  const handBefore = correctionC(state.water, null);
  const moved = act();
  const handByC = correctionC(state.water, null) - handBefore;
  for (const id in state.pans) {
    const was = aroundBefore[id];
    const pan = state.pans[id]!;
    if (pan.byHand !== null) pan.byHand.celsius += handByC;
    if (was === undefined) continue;
    const byC = state.panProbes[id]!.length === 0 ? handByC : levelMovesC(state, id, before);
    panCorrected(pan, was, settingOf(state, id), byC, moved);
  }
}

/** A mark, with what it changes in what is believed. */
function rememberingMind(state: BoilState, mark: Mark, t: number): void {
  stepPans(state, state.now);
  const before = believedNow(state, t);
  const gone = mark.kind === 'withdraw' ? standingMark(state, mark.id) : null;
  correcting(state, () => takeMark(state, mark, t));
  const kept = mark.kind === 'withdraw' ? gone : state.marks.at(-1);
  if (kept !== undefined && kept !== null && mark.kind !== 'withdraw')
    for (const { book } of callersOf(state)) answerByDeed(book, kept, state.header);
  if (kept !== undefined && kept !== null) keepCorrections(state, kept, before, t);
}

function portChanged(
  state: BoilState,
  entry: { t: number; port: string; state: 'open' | 'lost'; why?: string | undefined },
): void {
  const port = portNamed(state, entry.port);
  port.state = entry.state;
  port.why = entry.why ?? null;
  lookSoon(state, entry.t);
  if (entry.state !== 'open') return;
  for (const probe of state.header.probes ?? []) {
    if (probe.port === entry.port) state.probes[probe.id]!.awaitedFrom = entry.t;
  }
  for (const { track } of Object.values(state.coldJunctions)) {
    if (track.port === entry.port) track.awaitedFrom = entry.t;
  }
}

/** Marks that teach the water point, a probe or a sap, or take such a lesson back. */
const TEACHING: ReadonlySet<Mark['kind']> = new Set(['pressure', 'water-check', 'density', 'withdraw']);

function takeMark(state: BoilState, mark: Mark, t: number): Moved {
  noteMark(state, mark, t);
  if (TEACHING.has(mark.kind)) weighAnew(state, t);
  lookAtLeftOut(state);
  if (mark.kind !== 'withdraw') askBack(state, t);
  return 'learnt';
}

/** What was just noted and can hardly be meant, or tells nothing, is asked about, once. */
function askBack(state: BoilState, t: number): void {
  const kept = state.marks.at(-1);
  if (kept === undefined || kept.t !== t) return;
  const { evidence, mark } = kept;
  const say = (sentence: string): void => void state.notices.push({ t, sentence });
  if (mark.kind === 'pressure') askAboutPressure(state, kept, mark, say);
  if (!kept.questioned) return;
  if (evidence?.kind === 'check' && mark.kind === 'water-check') {
    kept.doubt = checkDoubt(mark, evidence.inSyrup);
    say(kept.doubt);
  }
  if ((mark.kind === 'depth' || mark.kind === 'density') && kept.doubt !== null) say(leftOut(kept.doubt));
}

function askAboutPressure(
  state: BoilState,
  kept: KeptMark,
  mark: Mark & { kind: 'pressure' },
  say: (sentence: string) => void,
): void {
  const { evidence, questioned } = kept;
  const doubt = doubtAboutPressure(mark, state.header.site?.altitude_m ?? null);
  kept.doubt = doubt;
  const jump = evidence === null ? null : pressureJump(mark, evidence, state.water.evidence);
  if (evidence === null) say(NEEDS_ALTITUDE);
  else if (questioned && doubt !== null) say(leftOut(doubt));
  else if (jump !== null) say(jump);
}

/** For the list of what was noted: a pan's burner that is another from t (ms) on. */
function rememberPowers(state: BoilState, before: Header, t: number): void {
  for (const { id, heat } of state.header.pans ?? []) {
    const was = before.pans?.find((pan) => pan.id === id);
    if (was !== undefined && was.heat?.power_w !== heat?.power_w)
      state.powers.push({ t, pan: id, watts: heat?.power_w ?? null });
  }
}

function takeSet(state: BoilState, patch: HeaderPatch, t: number, tools: FoldTools): Moved {
  const checked = tools.checkHeader(mergePatch(state.header, patch));
  if (!checked.ok) {
    state.notices.push({ t, sentence: `A change of the setup could not be used: ${checked.why}.` });
    return 'learnt';
  }
  const before = state.header;
  takeHeader(state, checked.header, t);
  rememberPowers(state, before, t);
  for (const other of state.beside) {
    const theirs = tools.checkHeader(mergePatch(other.header, patch));
    if (theirs.ok) other.header = theirs.header;
  }
  weighAnew(state, t);
  lookAtLeftOut(state);
  return 'learnt';
}
