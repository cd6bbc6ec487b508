// Alarms of a boil at one moment: every rule over every pan and port, and the reminders that have come due.
import { type AlarmKey, findAlarm, isWaitedFor, isWaiting, observe, panIsOff, timePassed } from '../alarms/engine.ts';
import { type Finding, PAN_RULES, type PanSituation } from '../alarms/rules.ts';
import { isCounted } from '../pan/forecast.ts';
import { climbsByItself } from '../pan/pan-signs.ts';
import type { ProbeState } from '../pan/reading.ts';
import { probeState } from './probe-track.ts';
import { outlookOf } from './readings.ts';
import { type ProbeTrouble, signsOf } from './signs.ts';
import { leadTimes, type LeadTimes } from './lead-times.ts';
import { type BoilState, type Caller, callersOf, type KeptMark, tell } from './state.ts';

/** `everyPan` false: only the pans of which an alarm waits out a delay. */
export function judgeAlarms(state: BoilState, t: number, everyPan: boolean): void {
  const callers = callersOf(state);
  for (const caller of callers) {
    const { book } = caller;
    if (book.alarms.length > 0 || book.silencedUntil !== null) tell(caller, timePassed(book, t));
    for (const id of state.names.ports) judgePort(state, caller, id, t);
  }
  if (everyPan || callers.some(({ book }) => book.alarms.some(isWaiting))) {
    for (const id of state.names.pans) {
      const looking = everyPan ? callers : callers.filter(({ book }) => isWaitedFor(book, id));
      if (looking.length > 0) judgePan(state, looking, id, t);
    }
  }
  for (const place of state.standing.reminders) judgeReminder(callers, state.marks[place]!, place, t);
  // Pans and ports come and go with what is noted alone, and after that all pans are looked at.
  if (!everyPan) return;
  for (const caller of callers) {
    for (const gone of caller.book.alarms.filter((one) => hasLeft(state, one))) {
      look(caller, gone, 0, 0, t, { over: false, inside: true, priority: gone.priority, why: () => '' });
    }
  }
}

/** A pan or port that the header no longer has: its alarms are over, not active for ever. */
function hasLeft(state: BoilState, alarm: { pan: string | null; port: string | null }): boolean {
  return (alarm.pan !== null && !(alarm.pan in state.pans)) || (alarm.port !== null && !(alarm.port in state.ports));
}

function judgePort(state: BoilState, caller: Caller, id: string, t: number): void {
  const port = state.ports[id]!;
  const lost = port.state === 'lost';
  if (!lost && caller.book.alarms.length === 0) return;
  const key: AlarmKey = { alarm: 'port-lost', pan: null, port: id };
  if (!lost && findAlarm(caller.book, key) === undefined) return;
  look(caller, key, 0, 0, t, {
    over: lost,
    inside: port.state === 'open',
    priority: 'high',
    why: () => port.why ?? `port ${id} went away or cannot be opened`,
  });
}

/** The situation is one for all who call: of the reading the rules ask nothing that a lead moves. */
function judgePan(state: BoilState, callers: readonly Caller[], id: string, t: number): void {
  const situation = situationOf(state, id, leadTimes(callers[0]!.header, id), t);
  const plainWater = state.designs[id]!.role === 'reference';
  const found: (Finding | null)[] = [];
  for (const caller of callers) {
    const isFirst = caller === callers[0];
    if (!isFirst) situation.settings = leadTimes(caller.header, id);
    for (let place = 0; place < PAN_RULES.length; place++) {
      const rule = PAN_RULES[place]!;
      if (plainWater && rule.alarm !== 'probe-lost' && rule.alarm !== 'probe-suspect') continue;
      if (isFirst || rule.asksLeads) found[place] = rule.find(situation);
      const finding = found[place]!;
      // Nearly always nothing is called, and nothing was.
      if (finding === null || (!finding.over && caller.book.alarms.length === 0)) continue;
      look(caller, { alarm: rule.alarm, pan: id }, rule.onDelayMs, rule.offDelayMs, t, finding);
    }
    if (situation.reading.stage === 'off') panIsOff(caller.book, id);
  }
}

function look(
  caller: Caller,
  key: AlarmKey,
  onDelayMs: number,
  offDelayMs: number,
  t: number,
  finding: Finding | null,
): void {
  tell(caller, observe(caller.book, key, { onDelayMs, offDelayMs }, finding, t));
}

/** So long after a marked pour it counts as just poured, ms. */
const JUST_POURED_MS = 120_000;

function situationOf(state: BoilState, id: string, settings: LeadTimes, t: number): PanSituation {
  const design = state.designs[id]!;
  const around = state.around[id]!;
  const worst = worstProbe(state, id, t);
  const outlook = outlookOf(state, id, t);
  const { reading } = outlook;
  const { course } = state.pans[id]!;
  if (worst !== null) reading.probe = worst.state;
  return {
    reading,
    finishBrix: around.limits.finish.brix,
    scorchBrix: around.limits.scorch.brix,
    scorchRiseC: around.limits.scorch.riseC,
    minDepthMm: design.minDepthMm,
    ceilingC: design.ceilingC,
    reachedFinish: course.reachedFinish,
    reachedPast: course.reachedPast,
    finish: outlook.finish,
    scorch: () => reading.tooStrong(),
    shallow: outlook.shallow,
    mayBeLow: () => reading.mayBeLow(),
    litresShare: outlook.litresShare,
    byCount: isCounted(state.pans[id]!, design.ceilingC, t),
    handAgeMs: handAge(state, id, t),
    justPoured: t - course.pouredAt < JUST_POURED_MS,
    climbsByItself: climbsByItself(state.pans[id]!.track, course, t),
    inDoubt: course.inDoubt,
    portLost: worst !== null && state.ports[worst.port]?.state === 'lost',
    signs: signsOf(state, id, worst, t),
    settings,
  };
}

/** A thermometer read longer ago than this is a count, not a reading, ms. */
const HAND_COUNTS_MS = 10 * 60_000;

function handAge(state: BoilState, id: string, t: number): number | null {
  const { byHand, course } = state.pans[id]!;
  // What an instrument showed since goes before what the thermometer did.
  if (byHand === null || state.panProbes[id]!.length > 0 || course.strengthAt > byHand.at) return null;
  return t - byHand.at > HAND_COUNTS_MS ? null : t - byHand.at;
}

const WORST_FIRST: ProbeState[] = ['lost', 'broken', 'suspect', 'stuck', 'late', 'ok'];

/** Of several probes in a pan the one that is worst off is called. */
function worstProbe(
  state: BoilState,
  pan: string,
  t: number,
): ({ state: ProbeState; port: string } & ProbeTrouble) | null {
  const all = state.panProbes[pan]!.map((id) => {
    const track = state.probes[id]!;
    return { state: probeState(track, t), port: track.port, doubt: track.doubt, brokenBy: track.brokenBy };
  });
  if (all.length < 2) return all[0] ?? null;
  return all.reduce((worst, one) => (WORST_FIRST.indexOf(one.state) < WORST_FIRST.indexOf(worst.state) ? one : worst));
}

/** A reminder ends when it is seen, or taken back; an unseen one ends after so long, ms. */
const REMINDER_LASTS_MS = 10 * 60_000;

/** Called once, when its time has come or, after a gap, as soon as the program runs again. */
function judgeReminder(callers: readonly Caller[], kept: KeptMark, index: number, t: number): void {
  const { mark } = kept;
  if (mark.kind !== 'remind' || t < kept.at + mark.seconds * 1000) return;
  const key = { alarm: 'reminder', pan: null, about: String(index) } as const;
  const wasReminded = kept.reminded;
  kept.reminded = true;
  for (const caller of callers) {
    const called = findAlarm(caller.book, key);
    if (wasReminded && called === undefined) continue;
    const seen = called !== undefined && (called.answered || t - called.raisedAt >= REMINDER_LASTS_MS);
    const over = !kept.withdrawn && !seen;
    look(caller, key, 0, 0, t, { over, inside: !over, priority: 'low', why: () => mark.text });
  }
}
