// A replay in words: what was said at a moment beside what came later, and how calls differ under other choices.
import { alarmTitle } from '../../protocol/alarm-titles.ts';
import type { CallDifference, FinishedBy, PanKnown } from '../../protocol/replay-messages.ts';
import type { Header, Now } from '../client/types.ts';
import { whereWords } from './alarm-words.ts';
import { lengthOfTime, timeOfDay } from './clock.ts';

const BY: Record<FinishedBy, string> = {
  density: 'as an instrument told',
  called: 'as it was called',
  'taken-off': 'when it was taken off',
};

/** "it said 16:40, between 16:32 and 16:55". */
export function saidWords({ said }: PanKnown, now: Now): string {
  if (said === null) return 'it said nothing of the finish yet';
  const { at, low, high } = said;
  const range = low === null || high === null ? '' : `, between ${timeOfDay(now, low)} and ${timeOfDay(now, high)}`;
  return `it said ${timeOfDay(now, at)}${range}`;
}

/** "it was 16:47, as it was called: 7 min later, within what it said". */
export function cameWords({ was, later_s: later, inRange }: PanKnown, now: Now): string {
  if (was === null) {
    const isRead = now.replay !== null && now.replay.readUntil >= now.replay.length;
    return isRead ? 'no finish came after this' : 'not read so far yet';
  }
  const when = `it was ${timeOfDay(now, was.at)}, ${BY[was.by]}`;
  if (later === null) return when;
  const within = inRange === null ? '' : inRange ? ', within what it said' : ', outside of what it said';
  return `${when}: ${sooner(later)}${within}`;
}

function sooner(laterS: number): string {
  if (Math.abs(laterS) < 30) return 'to the half minute';
  return `${lengthOfTime(Math.abs(laterS))} ${laterS < 0 ? 'sooner' : 'later'}`;
}

/** "Front pot, Nearly syrup: 12 min sooner, 15:48 for 16:00". */
export function differenceWords(difference: CallDifference, now: Now): string {
  const { was, would, words } = difference;
  const what = `${whereWords(difference, now.header)}, ${alarmTitle(difference.alarm)}`;
  if (was !== null && would !== null)
    return `${what}: ${words}, at ${timeOfDay(now, would)} and not at ${timeOfDay(now, was)}`;
  return `${what}: ${words}${was === null ? ` at ${timeOfDay(now, would ?? 0)}` : ` (it was at ${timeOfDay(now, was)})`}`;
}

/** What a printed page says of itself. */
export function printedWords(now: Now): string {
  const title = now.replay?.title ?? now.header?.name ?? 'a kept boil';
  const other = (now.replay?.choices ?? null) === null ? '' : ', with other choices than it had';
  return `Printed from a replay of “${title}” at ${timeOfDay(now, now.t)}${other}. Nothing here is live.`;
}

/** The probes of one pan, by id. */
export function probesOf(header: Header | null, pan: string): string[] {
  const probe = header?.pans?.find(({ id }) => id === pan)?.probe;
  return probe === undefined ? [] : Array.isArray(probe) ? probe : [probe];
}
