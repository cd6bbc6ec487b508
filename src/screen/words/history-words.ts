// The history of a boil's alarms and the look back on it, in words.
import type { LookBack, Now, RaisingShown } from '../client/types.ts';
import { alarmTitle } from '../../protocol/alarm-titles.ts';
import { calledWords } from './alarm-words.ts';
import { lengthOfTime, timeOfDay } from './clock.ts';

/** "Back pot: Running low". */
export function raisingWords(raising: RaisingShown, now: Now): string {
  return calledWords({ ...raising, title: alarmTitle(raising.alarm) }, now.header);
}

/** What became of it: answered or not, put aside, over or still there. */
export function courseWords(raising: RaisingShown, now: Now): string[] {
  const { raisedAt, answeredAt, clearedAt } = raising;
  const seen = answeredAt === null ? 'not seen yet' : `seen after ${lengthOfTime((answeredAt - raisedAt) / 1000)}`;
  const over = clearedAt === null ? 'still there' : `over ${timeOfDay(now, clearedAt)}`;
  return [seen, ...raising.asides.map((aside) => asideWords(aside, now)), over];
}

function asideWords({ at, until, reason }: RaisingShown['asides'][number], now: Now): string {
  if (until <= at) return `taken up again ${timeOfDay(now, at)}`;
  const why = reason === '' ? '' : `, “${reason}”`;
  return `put aside ${timeOfDay(now, at)} for ${lengthOfTime((until - at) / 1000)}${why}`;
}

/** One line of the look back: what is counted, and what it says. */
export type LookBackLine = readonly [what: string, says: string];

const times = (count: number): string => (count === 1 ? 'once' : `${count} times`);

/** What the alarms asked of one person, for a short panel; `earlier` were raised before those that are kept. */
export function lookBackLines(look: LookBack, earlier: number, now: Now): LookBackLine[] {
  if (look.raised === 0) return [['Alarms', 'none']];
  const lines: LookBackLine[] = [
    ['Alarms', earlier === 0 ? String(look.raised) : `${look.raised}, and ${earlier} before those`],
    ['Seen', seenWords(look)],
    ['Most in one hour', String(look.worstHour)],
    ['Came and went at once', look.chatter === 0 ? 'none' : `${times(look.chatter)}: one alarm, over 3 times a minute`],
    ['Too many at once', look.floods === 0 ? 'never' : `${times(look.floods)}: over 10 within 10 min`],
  ];
  const { mostFrequent: most } = look;
  if (most !== null) {
    const what = calledWords({ ...most, title: alarmTitle(most.alarm), why: 'one of yours' }, now.header);
    lines.push(['Most often', `${what}, ${times(most.times)}`]);
  }
  return [...lines, ['Of no use, you said', look.noUse === 0 ? 'none' : String(look.noUse)]];
}

function seenWords({ raised, answered, answeredAfterS: after }: LookBack): string {
  const how = after === null ? '' : `, usually after ${lengthOfTime(after)}`;
  return `${answered === raised ? 'all' : `${answered} of ${raised}`}${how}`;
}
