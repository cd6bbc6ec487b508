// The first line of the screen: the next thing to do, and when, in words.
import { timeOfDay } from './clock.ts';
import { inOrder } from './alarm-words.ts';
import { panName } from './pan-words.ts';
import type { NextThing, Now } from '../client/types.ts';

export interface NextLine {
  /** The pan's name, or null where it concerns all of them. */
  who: string | null;
  what: string;
  /** "16:32–16:55", the middle 80 %; null where there is none. */
  range: string | null;
  urgent: boolean;
}

function about(now: Now, next: NextThing): string {
  return next.at === null ? '' : ` about ${timeOfDay(now, next.at)}`;
}

/** The alarm's own title; the host names the alarm it means. */
function alarmTitle(now: Now, next: NextThing): string {
  const ofPan = inOrder(now.alarms).filter((alarm) => alarm.pan === next.pan);
  const named = ofPan.find((alarm) => alarm.alarm === next.text) ?? ofPan[0];
  return named?.title ?? 'see the alarm below';
}

function by(now: Now, next: NextThing): string {
  return next.at === null || next.at <= now.t ? ' now' : ` by ${timeOfDay(now, next.at)}`;
}

const WHAT: Record<NextThing['what'], (now: Now, next: NextThing) => string> = {
  alarm: alarmTitle,
  finish: (now, next) => (next.at !== null && next.at > now.t ? `done${about(now, next)}` : 'done, take it off now'),
  'top-up': (now, next) => `top up${by(now, next)}`,
  'smaller-pot': (now, next) => `pour it into a smaller pot${about(now, next)}`,
  foam: () => 'foam may rise soon; a drop or two of fat, or turn it down',
  'tell-water': () => 'tell how hot water boils here: altitude, air pressure or a check in boiling water',
  'tell-litres': () => 'tell how much is in it: a depth or a top-up',
  'read-by-hand': (now, next) => `read its thermometer${by(now, next)}`,
  watch: (_now, next) => next.text ?? 'Nothing to do just now. Stay by the pans.',
};

const OVER: NextLine = { who: null, what: 'This boil is over', range: null, urgent: false };

/** The next thing to do, in words. */
export function nextLine(now: Now): NextLine {
  if (now.ended && now.view === 'live') return OVER;
  const { next } = now;
  const spread = next.low === null || next.high === null ? null : [timeOfDay(now, next.low), timeOfDay(now, next.high)];
  return {
    who: next.pan === null ? null : panName(now.header, next.pan),
    what: WHAT[next.what](now, next),
    range: spread === null || spread[0] === spread[1] ? null : spread.join('–'),
    urgent: next.what === 'alarm',
  };
}
