// A replay in words: what was said at a moment beside what came later, and how calls differ under other choices.
import { lengthOfTime } from '../../core/quantities/time.ts';
import { alarmTitle } from '../../protocol/alarm-titles.ts';
import { type CallDifference, type FinishedBy, isOpenedTitle, type PanKnown } from '../../protocol/replay-messages.ts';
import type { Header, Now } from '../client/types.ts';
import { hostWords } from '../language/host-words.ts';
import { type MessageKey, say } from '../language/say.ts';
import { whereWords } from './alarm-words.ts';
import { timeOfDay } from './clock.ts';

const BY: Record<Exclude<FinishedBy, 'unfinished'>, MessageKey> = {
  density: 'replay.by.density',
  called: 'replay.by.called',
  'taken-off': 'replay.by.taken_off',
};

/** "it said 16:40, between 16:32 and 16:55". */
export function saidWords({ said }: PanKnown, now: Now): string {
  if (said === null) return say('replay.said_nothing');
  const { at, low, high } = said;
  if (low === null || high === null) return say('replay.said', { at: timeOfDay(now, at) });
  return say('replay.said_between', { at: timeOfDay(now, at), low: timeOfDay(now, low), high: timeOfDay(now, high) });
}

/** "it was 16:47, as it was called: 7 min later, within what it said". */
export function cameWords({ was, later_s: later, inRange }: PanKnown, now: Now): string {
  if (was === null) {
    const isRead = now.replay !== null && now.replay.readUntil >= now.replay.length;
    return say(isRead ? 'replay.no_finish' : 'replay.not_read');
  }
  if (was.by === 'unfinished') return say('replay.was_unfinished', { at: timeOfDay(now, was.at) });
  const when = { at: timeOfDay(now, was.at), by: say(BY[was.by]) };
  if (later === null) return say('replay.was', when);
  if (inRange === null) return say('replay.was_later', { ...when, later: sooner(later) });
  return say(inRange ? 'replay.was_within' : 'replay.was_outside', { ...when, later: sooner(later) });
}

/** What a past boil's page says for its notes and calls until it is read and shown to its end; null from then on. */
export function stillReadWords({ t, replay }: Now): string | null {
  if (replay === null || (t >= replay.length && replay.readUntil >= replay.length)) return null;
  return say('notebook.still_read');
}

function sooner(laterS: number): string {
  if (Math.abs(laterS) < 30) return say('replay.to_half_minute');
  return say(laterS < 0 ? 'replay.sooner' : 'replay.later', { time: lengthOfTime(Math.abs(laterS)) });
}

/** "Front pot, Nearly syrup: 12 min sooner, 15:48 for 16:00". */
export function differenceWords(difference: CallDifference, now: Now): string {
  const { was, would } = difference;
  const words = hostWords(difference.words);
  const what = `${whereWords(difference, now.header)}, ${hostWords(alarmTitle(difference.alarm))}`;
  if (was !== null && would !== null)
    return say('replay.call_moved', { what, words, would: timeOfDay(now, would), was: timeOfDay(now, was) });
  return was === null
    ? say('replay.call_new', { what, words, would: timeOfDay(now, would ?? 0) })
    : say('replay.call_gone', { what, words, was: timeOfDay(now, was) });
}

/** What a printed page says of itself. */
export function printedWords(now: Now): string {
  const title = titleWords(now);
  const isOther = (now.replay?.choices ?? null) !== null;
  return say(isOther ? 'replay.printed_other' : 'replay.printed', { title, at: timeOfDay(now, now.t) });
}

/** The probes of one pan, by id. */
export function probesOf(header: Header | null, pan: string): string[] {
  const probe = header?.pans?.find(({ id }) => id === pan)?.probe;
  return probe === undefined ? [] : Array.isArray(probe) ? probe : [probe];
}

/** What the boil that is replayed is called. */
export function titleWords({ replay, header }: Pick<Now, 'replay' | 'header'>): string {
  const title = replay?.title ?? header?.name ?? say('replay.kept_boil');
  return isOpenedTitle(title) ? hostWords(title) : title;
}
