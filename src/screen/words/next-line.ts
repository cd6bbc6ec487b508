// The first line of the screen: the next thing to do, and when, in words.
import { fromTo, standsAtItsEnd, timeOfDay } from './clock.ts';
import { inOrder } from './alarm-words.ts';
import { isTooLittle, sapToCome, shallowThen } from './planned-sap.ts';
import { isAllOff, isFill, isUnseen, panName, panNamed } from './pan-words.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import type { AlarmView, NextThing, Now, Priority } from '../client/types.ts';

export interface NextLine {
  /** The pan's name, or null where it concerns all of them. */
  who: string | null;
  what: string;
  /** "16:32–16:55", the middle 80 %; null where there is none. */
  range: string | null;
  /** Of the call that it tells, whose shape stands before it; null where it tells none. */
  priority: Priority | null;
}

/** The alarm that the host means; null where the screen was not told of it yet. */
function alarmMeant(now: Now, next: NextThing): AlarmView | null {
  const ofPan = inOrder(now.alarms).filter((alarm) => alarm.pan === next.pan);
  return ofPan.find((alarm) => alarm.alarm === next.text) ?? ofPan[0] ?? null;
}

function alarmTitle(now: Now, next: NextThing): string {
  const alarm = alarmMeant(now, next);
  return alarm === null ? say('next.see_alarm') : hostWords(alarm.title);
}

function priorityOf(now: Now, next: NextThing): Priority | null {
  if (next.what === 'burnt') return 'high';
  return next.what === 'alarm' ? (alarmMeant(now, next)?.priority ?? null) : null;
}

/** The time of what is to be done later; null for what is to be done now. */
function later(now: Now, next: NextThing): string | null {
  return next.at === null || next.at <= now.t ? null : timeOfDay(now, next.at);
}

/** What a pan at its finish needs now, as the worst call that stands of it says, seen or not. */
function takeOff(now: Now, pan: string | null): string {
  const stands = (name: AlarmView['alarm']): boolean =>
    now.alarms.some((each) => each.pan === pan && each.alarm === name && each.condition === 'active');
  if (stands('scorch-risk')) return say('next.heat_off');
  if (stands('past-finish')) return say('next.take_off');
  const isCalled = stands('finish') || now.readings.some((each) => each.pan === pan && each.stage === 'finished');
  return say(isCalled ? 'next.done_now' : 'next.done_check');
}

/** What cannot be finished where it is has no time at which it is done. */
const hasNoFinish = (now: Now, next: NextThing): boolean =>
  next.what === 'finish' && later(now, next) !== null && isTooLittle(now, next.pan);

function finish(now: Now, next: NextThing): string {
  const time = later(now, next);
  if (time === null) return takeOff(now, next.pan);
  if (hasNoFinish(now, next)) return smallerPot(now, { ...next, at: null });
  const what = say(sapToCome(now, next.pan) > 0 ? 'next.done_dry' : 'next.done_about', { time });
  const reading = now.readings.find(({ pan }) => pan === next.pan);
  return reading !== undefined && isUnseen(reading) ? say('next.by_count', { what }) : what;
}

function topUp(now: Now, next: NextThing): string {
  const time = later(now, next);
  return time === null ? say('next.top_up_now') : say('next.top_up_by', { time });
}

function readByHand(now: Now, next: NextThing): string {
  const time = later(now, next);
  return time === null ? say('next.read_now') : say('next.read_by', { time });
}

function smallerPot(now: Now, next: NextThing): string {
  const advice = now.advice.find(({ pan }) => pan === next.pan) ?? null;
  const time = later(now, next);
  if (shallowThen(now, advice) === null && sapToCome(now, next.pan) > 0)
    return say(next.at !== null && time === null ? 'next.top_up_now' : 'next.more_sap');
  return time === null ? say('next.smaller_pot') : say('next.smaller_pot_about', { time });
}

/** Where no probe hangs anywhere there is none to hold into boiling water. */
function tellWater({ view, header }: Now): string {
  if (view === 'replay') return say('next.water_unknown');
  return say((header?.probes ?? []).length === 0 ? 'next.tell_water_by_hand' : 'next.tell_water');
}

/** What was noted of it may all have boiled away: to note more of the same tells nothing then. */
function tellLitres({ view, header, marks }: Now, { pan }: NextThing): string {
  if (view === 'replay') return say('next.litres_unknown');
  if (pan === null || !marks.some((each) => isFill(each, pan))) return say('next.tell_litres');
  return say(panNamed(header, pan)?.vessel === undefined ? 'next.read_now' : 'next.tell_depth');
}

/** A line that names no pan begins as a sentence does. */
const begun = (words: string): string => `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;

const WHAT: Record<NextThing['what'], (now: Now, next: NextThing) => string> = {
  alarm: alarmTitle,
  burnt: () => say('next.burnt'),
  'look-in': () => say('next.look_in'),
  finish,
  'top-up': topUp,
  'smaller-pot': smallerPot,
  foam: () => say('next.foam'),
  'tell-water': tellWater,
  'tell-litres': tellLitres,
  'read-by-hand': readByHand,
  watch: (_now, next) => (next.text === null ? say('next.nothing') : hostWords(next.text)),
};

/** The next thing to do, in words; that a boil is over, only where its pans still stand: elsewhere none runs. */
export function nextLine(now: Now, besidePans = true): NextLine {
  if (standsAtItsEnd(now)) {
    // A practice was no boil: that it is over its own band says.
    const what = say(now.mode === 'practice' || !besidePans ? 'shell.no_boil' : 'next.over');
    return { who: null, what, range: null, priority: null };
  }
  if (isAllOff(now) && now.next.what === 'watch') {
    return { who: null, what: say('next.all_off'), range: null, priority: null };
  }
  if (now.mode === 'practice' && now.next.what === 'watch' && now.readings.every(({ stage }) => stage === 'off')) {
    return { who: null, what: say('next.all_off_practice'), range: null, priority: null };
  }
  const { next } = now;
  const spread =
    next.low === null || next.high === null || hasNoFinish(now, next)
      ? null
      : [timeOfDay(now, next.low), timeOfDay(now, next.high)];
  const what = WHAT[next.what](now, next);
  return {
    who: next.pan === null ? null : panName(now.header, next.pan),
    what: next.pan === null ? begun(what) : what,
    range: spread === null || spread[0] === spread[1] ? null : fromTo(spread[0]!, spread[1]!),
    priority: priorityOf(now, next),
  };
}
