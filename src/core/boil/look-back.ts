// What a boil's alarms asked of one person: how many, how fast answered, chatter, floods, and the most frequent.
import type { AlarmName } from './entries.ts';
import { median } from '../pan/robust-statistics.ts';
import { HOUR_MS } from '../quantities/time.ts';

/** What is counted of one raising; times in ms of boil time. */
export interface Counted {
  alarm: AlarmName;
  pan: string | null;
  port: string | null;
  raisedAt: number;
  answeredAt: number | null;
  /** When what it asks for was done, where somebody noted that; it answers the call as well as a word does. */
  doneAt?: number;
  noUse: boolean;
}

export interface LookBack {
  raised: number;
  /** Seen, or what it asks for done. */
  answered: number;
  /** Middle time from the raising to the first answer, s; null while nothing was answered. */
  answeredAfterS: number | null;
  /** How often one alarm was raised more than 3 times within 60 s. */
  chatter: number;
  /** How often more than 10 alarms were raised within 10 min. */
  floods: number;
  /** The most alarms that were raised within any hour. */
  worstHour: number;
  /** The alarm that was raised most often, where one was raised more than once. */
  mostFrequent: { alarm: AlarmName; pan: string | null; port: string | null; times: number } | null;
  /** Raisings that were of no use, by a person's own word. */
  noUse: number;
}

/** IEC 62682 as summarised in alarms.md: more than 3 raisings of one alarm in 60 s are chatter, more than 10 in 10 min a flood. */
const CHATTER = { most: 3, withinMs: 60_000 };
const FLOOD = { most: 10, withinMs: 600_000 };

/** `raisings` in order of raising. */
export function lookBack(raisings: readonly Counted[]): LookBack {
  const waits = raisings.flatMap(({ raisedAt, answeredAt, doneAt }) => {
    const first = Math.min(answeredAt ?? Infinity, doneAt ?? Infinity);
    return first === Infinity ? [] : [(first - raisedAt) / 1000];
  });
  const times = raisings.map((one) => one.raisedAt);
  const byAlarm = [...Map.groupBy(raisings, ({ alarm, pan, port }) => JSON.stringify([alarm, pan, port])).values()];
  return {
    raised: raisings.length,
    answered: waits.length,
    answeredAfterS: waits.length === 0 ? null : median(waits),
    chatter: byAlarm.reduce(
      (sum, same) =>
        sum +
        crowds(
          same.map((one) => one.raisedAt),
          CHATTER,
        ),
      0,
    ),
    floods: crowds(times, FLOOD),
    worstHour: times.reduce((most, from) => Math.max(most, countWithin(times, from, HOUR_MS)), 0),
    mostFrequent: mostFrequent(byAlarm),
    noUse: raisings.filter((one) => one.noUse).length,
  };
}

/** How many stretches have more than `most` within the time; a stretch that goes on is one. */
function crowds(times: readonly number[], { most, withinMs }: { most: number; withinMs: number }): number {
  let count = 0;
  let crowded = false;
  times.forEach((t, index) => {
    const back = times[index - most];
    const isCrowded = back !== undefined && t - back < withinMs;
    if (isCrowded && !crowded) count += 1;
    crowded = isCrowded;
  });
  return count;
}

function countWithin(times: readonly number[], from: number, lengthMs: number): number {
  return times.filter((t) => t >= from && t < from + lengthMs).length;
}

function mostFrequent(byAlarm: readonly (readonly Counted[])[]): LookBack['mostFrequent'] {
  const most = byAlarm.reduce<readonly Counted[]>((best, same) => (same.length > best.length ? same : best), []);
  const [first] = most;
  if (first === undefined || most.length < 2) return null;
  const { alarm, pan, port } = first;
  return { alarm, pan, port, times: most.length };
}
