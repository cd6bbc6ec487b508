// The first line of the screen: the next thing to do, and when, in words.
import { timeOfDay } from './clock.ts';
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

function by(now: Now, next: NextThing): string {
  return next.at === null || next.at <= now.t ? ' now' : ` by ${timeOfDay(now, next.at)}`;
}

const WHAT: Record<NextThing['what'], (now: Now, next: NextThing) => string> = {
  alarm: (_now, next) => next.text ?? 'see the alarm below',
  'near-finish': (now, next) => `close to done, done${about(now, next) || ' soon'}`,
  finish: (now, next) => (next.at !== null && next.at > now.t ? `done${about(now, next)}` : 'done, take it off now'),
  'top-up': (now, next) => `top up${by(now, next)}`,
  scorch: (now, next) => `turn down or pour in${by(now, next)}, or it burns`,
  reminder: (now, next) => `${next.text ?? 'reminder'}${next.at === null ? '' : `, at ${timeOfDay(now, next.at)}`}`,
  'tell-water': () => 'tell how hot water boils here: altitude, air pressure or a check in boiling water',
  'tell-litres': () => 'tell how much is in it: a depth or a top-up',
  watch: (_now, next) => next.text ?? 'Nothing to do just now. Stay by the pans.',
};

/** The next thing to do, in words. */
export function nextLine(now: Now): NextLine {
  const { next } = now;
  const spread = next.low === null || next.high === null ? null : [timeOfDay(now, next.low), timeOfDay(now, next.high)];
  return {
    who: next.pan === null ? null : panName(now.header, next.pan),
    what: WHAT[next.what](now, next),
    range: spread === null || spread[0] === spread[1] ? null : spread.join('–'),
    urgent: next.what === 'alarm' || next.what === 'scorch',
  };
}
