// The first line of the screen: the next thing to do, and when, in words.
import { timeOfDay } from './clock.ts';
import { inOrder } from './alarm-words.ts';
import { panName } from './pan-words.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import type { NextThing, Now } from '../client/types.ts';

export interface NextLine {
  /** The pan's name, or null where it concerns all of them. */
  who: string | null;
  what: string;
  /** "16:32–16:55", the middle 80 %; null where there is none. */
  range: string | null;
  urgent: boolean;
}

/** The alarm's own title; the host names the alarm it means. */
function alarmTitle(now: Now, next: NextThing): string {
  const ofPan = inOrder(now.alarms).filter((alarm) => alarm.pan === next.pan);
  const named = ofPan.find((alarm) => alarm.alarm === next.text) ?? ofPan[0];
  return named === undefined ? say('next.see_alarm') : hostWords(named.title);
}

/** The time of what is to be done later; null for what is to be done now. */
function later(now: Now, next: NextThing): string | null {
  return next.at === null || next.at <= now.t ? null : timeOfDay(now, next.at);
}

function finish(now: Now, next: NextThing): string {
  const time = later(now, next);
  return time === null ? say('next.done_now') : say('next.done_about', { time });
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
  return next.at === null ? say('next.smaller_pot') : say('next.smaller_pot_about', { time: timeOfDay(now, next.at) });
}

const WHAT: Record<NextThing['what'], (now: Now, next: NextThing) => string> = {
  alarm: alarmTitle,
  burnt: () => say('next.burnt'),
  finish,
  'top-up': topUp,
  'smaller-pot': smallerPot,
  foam: () => say('next.foam'),
  'tell-water': () => say('next.tell_water'),
  'tell-litres': () => say('next.tell_litres'),
  'read-by-hand': readByHand,
  watch: (_now, next) => (next.text === null ? say('next.nothing') : hostWords(next.text)),
};

/** The next thing to do, in words. */
export function nextLine(now: Now): NextLine {
  if (now.ended && now.view === 'live') return { who: null, what: say('next.over'), range: null, urgent: false };
  const { next } = now;
  const spread = next.low === null || next.high === null ? null : [timeOfDay(now, next.low), timeOfDay(now, next.high)];
  return {
    who: next.pan === null ? null : panName(now.header, next.pan),
    what: WHAT[next.what](now, next),
    range: spread === null || spread[0] === spread[1] ? null : spread.join('–'),
    urgent: next.what === 'alarm' || next.what === 'burnt',
  };
}
