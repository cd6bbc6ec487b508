// The state machine of an alarm: its condition and a person's answer, kept apart and never merged; time is an input.
import type { AlarmEventName, AlarmName, Answer, Priority } from '../boil/entries.ts';
import type { AlarmTransition, Condition, ListedAlarm } from './alarm.ts';
import type { Finding } from './rules.ts';

export interface AlarmState {
  alarm: AlarmName;
  pan: string | null;
  port: string | null;
  /** Tells alarms of one name apart where neither pan nor port does (reminders). */
  about: string | null;
  condition: Condition;
  /** Called, over, and nobody has said that they saw it. */
  overUnseen: boolean;
  answered: boolean;
  /** It was answered since it was raised, whatever it came to since: when it is over, nobody is asked about it again. */
  seenOnce: boolean;
  priority: Priority;
  why: string;
  /** Its `why` is of a look at which it would not have been raised; the next that has numbers of its own says those. */
  isReworded?: boolean;
  /** What it was called ahead of has come since it was raised, and was called. */
  hasCome?: boolean;
  /** When that was, ms; absent where it was so when it was raised. */
  cameAt?: number;
  /** When it was raised, ms; while pending or clearing, `since` is when that began. */
  raisedAt: number;
  since: number;
  /** When it last began to ask for an answer: raised, escalated or returned; ms. */
  calledAt: number;
  /** When it was acknowledged, ms; null while it is not. */
  answeredAt: number | null;
  /** The phone on which it was; absent for the screen by the pans. */
  answeredBy?: string | undefined;
  asideUntil: number | null;
  asideReason: string | null;
}

export interface AlarmBook {
  alarms: AlarmState[];
  silencedUntil: number | null;
  /** When all sound went off, ms; absent while nothing was ever silenced. */
  silencedAt?: number;
  /** The phone on which it was; absent for the screen by the pans. */
  silencedBy?: string | undefined;
}

/** The high alarms that nobody has answered: the one that waits longest, and how often its call was repeated. */
export interface UnansweredHigh {
  /** When it began to ask for an answer, ms. */
  since: number;
  /** Whole minutes since then. Whenever this grows, the sound starts anew and the second channel is asked. */
  repeats: number;
}

export interface AlarmKey {
  alarm: AlarmName;
  pan: string | null;
  port?: string | null | undefined;
  about?: string | null | undefined;
}

/** No alarm stands, and nothing is silenced. */
export function startAlarms(): AlarmBook {
  return { alarms: [], silencedUntil: null };
}

/** An unanswered high alarm is called again after so long, and then through the second channel too, ms. */
export const REPEAT_UNANSWERED_MS = 60_000;
/** A high alarm that was acknowledged and is still there after so long asks for an answer again, ms. */
export const REPEAT_ACKNOWLEDGED_MS = 300_000;

const RANK: Record<Priority, number> = { low: 0, medium: 1, high: 2 };

/** The alarm of this name, pan, port and matter; undefined where it neither stands nor is listed. */
export function findAlarm(book: AlarmBook, key: AlarmKey): AlarmState | undefined {
  return book.alarms.find(
    (one) =>
      one.alarm === key.alarm &&
      one.pan === key.pan &&
      one.port === (key.port ?? null) &&
      one.about === (key.about ?? null),
  );
}

/** It waits out its on- or off-delay. */
export const isWaiting = ({ condition }: AlarmState): boolean => condition === 'pending' || condition === 'clearing';

/** An alarm of this pan waits out its on- or off-delay. */
export const isWaitedFor = (book: AlarmBook, pan: string): boolean =>
  book.alarms.some((one) => one.pan === pan && isWaiting(one));

/**
 * One look at one alarm's cause at t (ms). Unknown (null) leaves everything as it is: missing data is never "all well".
 * Gives the transitions that this look makes, in order.
 */
export function observe(
  book: AlarmBook,
  key: AlarmKey,
  delays: { onDelayMs: number; offDelayMs: number },
  finding: Finding | null,
  t: number,
): AlarmTransition[] {
  if (finding === null) return [];
  let state = findAlarm(book, key);
  if (state === undefined) {
    if (!finding.over) return [];
    state = freshAlarm(key, t);
    book.alarms.push(state);
  }
  if (state.condition === 'ok' || state.condition === 'pending')
    return whileOff(book, state, delays.onDelayMs, finding, t);
  return whileOn(book, state, delays.offDelayMs, finding, t);
}

function freshAlarm(key: AlarmKey, t: number): AlarmState {
  return {
    alarm: key.alarm,
    pan: key.pan,
    port: key.port ?? null,
    about: key.about ?? null,
    condition: 'ok',
    overUnseen: false,
    answered: false,
    seenOnce: false,
    priority: 'low',
    why: '',
    raisedAt: t,
    since: t,
    calledAt: t,
    answeredAt: null,
    asideUntil: null,
    asideReason: null,
  };
}

function whileOff(
  book: AlarmBook,
  state: AlarmState,
  onDelayMs: number,
  finding: Finding,
  t: number,
): AlarmTransition[] {
  if (!finding.over) {
    state.condition = 'ok';
    forgetWhenDone(book, state);
    return [];
  }
  if (state.condition === 'ok') {
    state.condition = 'pending';
    state.since = t;
  }
  if (t - state.since < onDelayMs) return [];
  Object.assign(state, { condition: 'active', raisedAt: t, since: t, overUnseen: false, seenOnce: false });
  callAgain(state, t);
  state.priority = finding.priority;
  state.why = finding.why();
  state.isReworded = false;
  state.hasCome = finding.hasCome === true;
  delete state.cameAt;
  return [transition(state, 'raised', t)];
}

function whileOn(
  book: AlarmBook,
  state: AlarmState,
  offDelayMs: number,
  finding: Finding,
  t: number,
): AlarmTransition[] {
  if (!finding.inside) {
    state.condition = 'active';
    // The numbers behind it are those of now.
    if (finding.over) Object.assign(state, { why: finding.why(), isReworded: false });
    else reword(state, finding);
    if (!finding.over) return [];
    if (RANK[finding.priority] > RANK[state.priority]) return [escalate(state, finding, t)];
    return finding.hasCome === true ? come(state, t) : [];
  }
  reword(state, finding);
  if (state.condition === 'active') {
    state.condition = 'clearing';
    state.since = t;
  }
  if (finding.atOnce !== true && t - state.since < offDelayMs) return [];
  return [clear(book, state, t)];
}

/** Words of a look that would not raise it stand only as long as such looks come: what fell and was explained fell no more. */
function reword(state: AlarmState, finding: Finding): void {
  const rewords = finding.rewords === true;
  if (!rewords && state.isReworded !== true) return;
  const why = finding.why();
  // Nothing new is known: what was said last stands.
  if (why === '') return;
  state.why = why;
  state.isReworded = rewords;
}

function escalate(state: AlarmState, finding: Finding, t: number): AlarmTransition {
  state.priority = finding.priority;
  state.why = finding.why();
  callAgain(state, t);
  return transition(state, 'escalated', t);
}

/** What it was called ahead of is there: whoever has seen that it is coming has not seen that it came. Once, for it may come and go. */
function come(state: AlarmState, t: number): AlarmTransition[] {
  const isNew = state.hasCome !== true;
  state.hasCome = true;
  if (isNew) state.cameAt = t;
  if (!isNew || !state.answered || state.asideUntil !== null) return [];
  callAgain(state, t);
  return [transition(state, 'returned', t)];
}

/** From now on it asks for an answer, whatever was answered before. */
function callAgain(state: AlarmState, t: number): void {
  state.answered = false;
  state.answeredAt = null;
  delete state.answeredBy;
  state.calledAt = t;
}

function clear(book: AlarmBook, state: AlarmState, t: number): AlarmTransition {
  state.condition = 'ok';
  state.overUnseen = !state.seenOnce;
  state.since = t;
  const cleared = transition(state, 'cleared', t);
  forgetWhenDone(book, state);
  return cleared;
}

/** An alarm that is over and seen, and not put aside, leaves the list. */
export function forgetWhenDone(book: AlarmBook, state: AlarmState): void {
  if (state.condition !== 'ok' || state.overUnseen || state.asideUntil !== null) return;
  book.alarms.splice(book.alarms.indexOf(state), 1);
}

/** What falls due by time alone: a put-aside or a silence that ends, a high alarm that was only acknowledged. */
export function timePassed(book: AlarmBook, t: number): AlarmTransition[] {
  if (book.silencedUntil !== null && t >= book.silencedUntil) book.silencedUntil = null;
  const fresh: AlarmTransition[] = [];
  for (const state of [...book.alarms]) {
    const asideIsOver = state.asideUntil !== null && t >= state.asideUntil;
    if (asideIsOver) Object.assign(state, { asideUntil: null, asideReason: null });
    if (isOn(state) && (asideIsOver || mustBeRepeated(state, t))) {
      callAgain(state, t);
      fresh.push(transition(state, 'returned', t));
    } else if (asideIsOver) forgetWhenDone(book, state);
  }
  return fresh;
}

/** The pan is off the fire: what was put aside of it, and is over, waits for nothing any more. */
export function panIsOff(book: AlarmBook, pan: string): void {
  for (const state of book.alarms.filter((one) => one.pan === pan && one.asideUntil !== null && !isOn(one))) {
    Object.assign(state, { asideUntil: null, asideReason: null });
    forgetWhenDone(book, state);
  }
}

/** The program did not run until t (ms): what was acknowledged stays so, and its repeat counts from here. */
export function alarmsAfterGap(book: AlarmBook, t: number): void {
  for (const state of book.alarms) if (state.answeredAt !== null) state.answeredAt = t;
}

function mustBeRepeated(state: AlarmState, t: number): boolean {
  if (state.priority !== 'high' || state.asideUntil !== null) return false;
  return state.answeredAt !== null && t - state.answeredAt >= REPEAT_ACKNOWLEDGED_MS;
}

/**
 * A person's answer at t (ms). Acknowledging never changes the condition. What names no listed alarm does nothing.
 * A silence stops the one sound for a while, whatever is raised meanwhile; the list goes on.
 */
export function answerAlarms(book: AlarmBook, answer: Answer, t: number): AlarmTransition[] {
  if ('silence' in answer) {
    // One that goes on is still the same quiet, whatever its new length.
    if (book.silencedUntil === null || t >= book.silencedUntil) book.silencedAt = t;
    book.silencedUntil = t + answer.silence.seconds * 1000;
    book.silencedBy = answer.by;
    return [];
  }
  const key = 'acknowledge' in answer ? answer.acknowledge : answer.put_aside;
  const fresh: AlarmTransition[] = [];
  for (const state of book.alarms.filter((one) => named(one, key))) {
    fresh.push(
      ...('acknowledge' in answer ? acknowledge(book, state, t, answer.by) : putAside(state, answer.put_aside, t)),
    );
  }
  return fresh;
}

function named(state: AlarmState, key: { pan: string | null; alarm: string; port?: string | undefined }): boolean {
  if (!isListed(state) || state.alarm !== key.alarm || state.pan !== key.pan) return false;
  return key.port === undefined || state.port === key.port;
}

/** Said twice is said once. */
function acknowledge(book: AlarmBook, state: AlarmState, t: number, by: string | undefined): AlarmTransition[] {
  if (state.answered || (!isOn(state) && !state.overUnseen)) return [];
  state.answered = true;
  state.seenOnce = true;
  state.answeredAt = t;
  state.answeredBy = by;
  state.overUnseen = false;
  const done = transition(state, 'acknowledged', t);
  forgetWhenDone(book, state);
  return [done];
}

function putAside(state: AlarmState, wish: { seconds: number; reason: string }, t: number): AlarmTransition[] {
  state.asideUntil = t + wish.seconds * 1000;
  state.asideReason = wish.reason;
  return [transition(state, 'put-aside', t)];
}

/** Called, and its cause is there or was until just now. */
export function isOn(state: AlarmState): boolean {
  return state.condition === 'active' || state.condition === 'clearing';
}

function isListed(state: AlarmState): boolean {
  return isOn(state) || state.overUnseen || state.asideUntil !== null;
}

/** The alarms that a person sees, the one to go to first at the top. */
export function listAlarms(book: AlarmBook): ListedAlarm[] {
  return book.alarms
    .filter(isListed)
    .map((state) => listed(state, book))
    .sort(byUrgency);
}

/**
 * What was put aside comes last, before it what is over; then the worse priority, the unanswered, and the one that was
 * raised first. Of those raised in the same millisecond the one that was looked at first: ports, then pans as the
 * header has them, then the order of the rules.
 */
export function byUrgency(a: ListedAlarm, b: ListedAlarm): number {
  return (
    Number(a.asideUntil !== null) - Number(b.asideUntil !== null) ||
    Number(a.condition === 'over') - Number(b.condition === 'over') ||
    RANK[b.priority] - RANK[a.priority] ||
    Number(a.answered) - Number(b.answered) ||
    a.since - b.since
  );
}

/** It began to ask while all sound was off. */
function cameInQuiet({ calledAt }: AlarmState, { silencedAt, silencedUntil }: AlarmBook): boolean {
  return silencedUntil !== null && silencedAt !== undefined && silencedAt <= calledAt && calledAt < silencedUntil;
}

function listed(state: AlarmState, book: AlarmBook): ListedAlarm {
  return {
    alarm: state.alarm,
    pan: state.pan,
    port: state.port,
    priority: state.priority,
    condition: isOn(state) ? 'active' : 'over',
    answered: state.answered,
    ...(state.answeredBy !== undefined && { answeredBy: state.answeredBy }),
    ...(cameInQuiet(state, book) && { inQuiet: true as const }),
    since: state.raisedAt,
    ...(state.cameAt !== undefined && { cameAt: state.cameAt }),
    asideUntil: state.asideUntil,
    asideReason: state.asideReason,
    why: state.why,
  };
}

/** An active, unanswered alarm that is not put aside: it asks for an answer. */
function asks(state: AlarmState): boolean {
  return isOn(state) && !state.answered && state.asideUntil === null;
}

/** The one priority that should sound at t (ms), whatever many alarms ask for an answer; null while silenced. */
export function soundNow(book: AlarmBook, t: number): Priority | null {
  let loudest: Priority | null = null;
  for (const state of book.alarms) {
    if (asks(state) && (loudest === null || RANK[state.priority] > RANK[loudest])) loudest = state.priority;
  }
  return book.silencedUntil !== null && t < book.silencedUntil ? null : loudest;
}

/** The high alarms that ask for an answer at t (ms); null when none does. A silence changes nothing of this. */
export function unansweredHigh(book: AlarmBook, t: number): UnansweredHigh | null {
  let since: number | null = null;
  for (const state of book.alarms) {
    if (asks(state) && state.priority === 'high' && (since === null || state.calledAt < since)) since = state.calledAt;
  }
  return since === null ? null : { since, repeats: Math.floor((t - since) / REPEAT_UNANSWERED_MS) };
}

function transition(state: AlarmState, event: AlarmEventName, t: number): AlarmTransition {
  const port = state.port === null ? {} : { port: state.port };
  const about = state.about === null ? {} : { about: state.about };
  return { t, pan: state.pan, ...port, ...about, alarm: state.alarm, event, priority: state.priority, why: state.why };
}
