// Settings, and how they would have done, in words.
import type { Searched, TuneScore, TuningNow } from '../../protocol/tune-messages.ts';
import type { Settings } from '../client/types.ts';
import { strength } from './amounts.ts';
import { lengthOfTime } from './clock.ts';

const FIELD: Record<string, (value: number) => string> = {
  near_finish_lead_s: (value) => `“Nearly syrup” ${lengthOfTime(value)} before`,
  scorch_lead_s: (value) => `burning ${lengthOfTime(value)} before`,
  low_level_lead_s: (value) => `shallow ${lengthOfTime(value)} before`,
  finish_probability: (value) => `finish at ${Math.round(100 * value)} % likely`,
  near_finish_deadband: (value) => `“Nearly syrup” ends when it is ${Number(value.toFixed(2))} times as far off again`,
};

/** "“Nearly syrup” 15 min before"; a field that is not known is left as it is named. */
export const fieldWords = (name: string, value: number): string => FIELD[name]?.(value) ?? `${name} ${value}`;

/** All that settings say, in one line; "as it was in each boil" where they say nothing. */
export function settingWords(settings: Partial<Record<Searched | string, unknown>>): string {
  const said = Object.entries(settings).flatMap(([name, value]) =>
    typeof value === 'number' ? [fieldWords(name, value)] : [],
  );
  return said.length === 0 ? 'as it was in each boil' : said.join(', ');
}

const NOT_KNOWN = 'not known';
const time = (seconds: number | null): string => (seconds === null ? NOT_KNOWN : lengthOfTime(seconds));

/** One line of the table: what is counted, and what it says of a score. */
export interface ScoreLine {
  label: string;
  words: (score: TuneScore, settings: Settings) => string;
  /** How it is drawn; null for what is only said. */
  value: ((score: TuneScore) => number | null) | null;
}

export const SCORE_LINES: readonly ScoreLine[] = [
  {
    label: '“Nearly syrup” came before the true finish by',
    words: (score) => time(score.near_finish_lead_s),
    value: ({ near_finish_lead_s: s }) => (s === null ? null : s / 60),
  },
  {
    label: 'True strength when the finish was called',
    words: ({ finish_brix: brix }, settings) => (brix === null ? NOT_KNOWN : strength(brix, brix, brix, settings)),
    value: ({ finish_brix: brix }) => brix,
  },
  {
    label: 'Called before it would burn by',
    words: (score) => time(score.scorch_lead_s),
    value: ({ scorch_lead_s: s }) => (s === null ? null : s / 60),
  },
  {
    label: 'False calls',
    words: ({ false_calls: count }) => (count === null ? NOT_KNOWN : String(count)),
    value: null,
  },
  { label: 'All calls', words: ({ alarms }) => String(alarms), value: null },
  { label: 'Calls an hour', words: ({ calls_per_hour: rate }) => rate.toFixed(1), value: null },
];

/** "12 of 31 boils, about 3 min left". */
export function progressWords({ done, boils, secondsLeft }: Pick<TuningNow, 'done' | 'boils' | 'secondsLeft'>): string {
  const left = secondsLeft === null ? '' : `, about ${lengthOfTime(secondsLeft)} left`;
  return `${done} of ${boils} ${boils === 1 ? 'boil' : 'boils'}${left}`;
}

/** What a score rests on: only a boil that somebody measured can tell how good a call was. */
export function truthWords(truths: number, done: number): string {
  if (truths === 0)
    return `Nobody measured the finish in any of these ${done}: nothing can be told of how good the calls were.`;
  const some = truths < done ? `${truths} of ${done} boils` : truths === 1 ? 'one boil' : `all ${done} boils`;
  return `Rests on ${some} whose finish somebody measured with an instrument.`;
}
