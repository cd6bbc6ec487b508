// The history of a boil's alarms and the look back on it, in words.
import { lengthOfTime } from '../../core/quantities/time.ts';
import type { LookBack, Now, RaisingShown } from '../client/types.ts';
import { alarmTitle } from '../../protocol/alarm-titles.ts';
import { say } from '../language/say.ts';
import { calledWords } from './alarm-words.ts';
import { timeOfDay } from './clock.ts';

/** "Back pot: Running low"; while its call stands, by the word that stands over that. */
export function raisingWords(raising: RaisingShown, now: Now): string {
  const { alarm, pan, port, raisedAt } = raising;
  const standing = now.alarms.find(
    (each) => each.alarm === alarm && each.pan === pan && each.port === port && each.since === raisedAt,
  );
  return calledWords({ ...raising, title: standing?.title ?? alarmTitle(alarm) }, now.header);
}

/** What became of it, in order of time: answered or not, put aside, over or still there, now or when the boil was ended. */
export function courseWords(raising: RaisingShown, now: Now): string[] {
  const { clearedAt } = raising;
  const isStanding = clearedAt === null && !now.ended;
  const over =
    clearedAt === null
      ? { at: Number.MAX_SAFE_INTEGER, words: say(isStanding ? 'history.still_there' : 'history.stood_at_end') }
      : { at: clearedAt, words: say('history.over', { time: timeOfDay(now, clearedAt) }) };
  const asides = raising.asides.map((aside) => ({ at: aside.at, words: asideWords(aside, now) }));
  const quiet = raising.inQuiet === true ? [say('history.in_quiet')] : [];
  const steps = [...answers(raising, isStanding), ...asides, over].toSorted((one, other) => one.at - other.at);
  return [...quiet, ...steps.map(({ words }) => words)];
}

/** That it was seen, and that what it asks for was done; that neither was. */
function answers({ raisedAt, answeredAt, doneAt }: RaisingShown, isStanding: boolean): { at: number; words: string }[] {
  const after = (at: number): { length: string } => ({ length: lengthOfTime((at - raisedAt) / 1000) });
  const seen = answeredAt === null ? [] : [{ at: answeredAt, words: say('history.seen_after', after(answeredAt)) }];
  const done = doneAt === undefined ? [] : [{ at: doneAt, words: say('history.done_after', after(doneAt)) }];
  if (seen.length + done.length > 0) return [...seen, ...done];
  return [{ at: raisedAt, words: say(isStanding ? 'history.not_seen' : 'history.never_seen') }];
}

function asideWords({ at, until, reason }: RaisingShown['asides'][number], now: Now): string {
  const time = timeOfDay(now, at);
  if (until <= at) return say('history.taken_up', { time });
  const length = lengthOfTime((until - at) / 1000);
  return reason === '' ? say('history.aside', { time, length }) : say('history.aside_why', { time, length, reason });
}

/** One line of the look back: what is counted, and what it says. */
export type LookBackLine = readonly [what: string, says: string];

const times = (count: number): string => say('history.times', { count });

/** What the alarms asked of one person, for a short panel; `earlier` were raised before those that are kept. */
export function lookBackLines(look: LookBack, earlier: number, now: Now): LookBackLine[] {
  if (look.raised === 0) return [[say('history.alarms'), say('history.none')]];
  const lines: LookBackLine[] = [
    [
      say('history.alarms'),
      earlier === 0 ? String(look.raised) : say('history.and_earlier', { count: look.raised, earlier }),
    ],
    [say('history.seen'), seenWords(look)],
    [say('history.worst_hour'), String(look.worstHour)],
    [
      say('history.chatter'),
      look.chatter === 0 ? say('history.none') : say('history.chatter_times', { times: times(look.chatter) }),
    ],
    [
      say('history.floods'),
      look.floods === 0 ? say('history.never') : say('history.flood_times', { times: times(look.floods) }),
    ],
  ];
  const { mostFrequent: most } = look;
  if (most !== null) {
    const what = calledWords({ ...most, title: alarmTitle(most.alarm), why: say('history.yours') }, now.header);
    lines.push([say('history.most'), say('history.most_times', { what, times: times(most.times) })]);
  }
  const silent = now.history.raisings.filter((each) => each.inQuiet === true).length;
  if (silent > 0) lines.push([say('history.came_in_quiet'), String(silent)]);
  return [...lines, [say('history.no_use'), look.noUse === 0 ? say('history.none') : String(look.noUse)]];
}

/** What happened less often than so many times is no habit. */
const HABIT = 3;

function seenWords({ raised, answered, answeredAfterS: after }: LookBack): string {
  if (raised === 1 && after !== null) return say('history.seen_only', { length: lengthOfTime(after) });
  if (answered === 0) return say('history.none');
  const seen = answered === raised ? say('history.seen_all') : say('history.seen_some', { answered, raised });
  if (after === null || (answered > 1 && answered < HABIT)) return seen;
  return say(answered < HABIT ? 'history.seen_once' : 'history.seen_usually', { seen, length: lengthOfTime(after) });
}
