// Settings, and how they would have done, in words.
import { lengthOfTime } from '../../core/quantities/time.ts';
import type {
  OffsetsView,
  Searched,
  TuneBoilRow,
  TuneScore,
  TuneSettingRow,
  TuningNow,
} from '../../protocol/tune-messages.ts';
import type { Settings } from '../client/types.ts';
import { hostWords } from '../language/host-words.ts';
import { type MessageKey, say, setApart } from '../language/say.ts';
import { differenceFromCelsius } from '../../core/quantities/units.ts';
import { calledById } from '../probes/kept.ts';
import { exactStrength, number, signed, strength } from './amounts.ts';
import { leadTime } from './lead-words.ts';

const FIELD: Record<string, (value: number) => string> = {
  near_finish_lead_s: (value) => say('tune.field.near_finish_lead', { time: leadTime(value) }),
  scorch_lead_s: (value) => say('tune.field.scorch_lead', { time: leadTime(value) }),
  low_level_lead_s: (value) => say('tune.field.low_level_lead', { time: leadTime(value) }),
  finish_probability: (value) => say('tune.field.probability', { percent: Math.round(100 * value) }),
};

/** "“Nearly syrup” 15 min before"; a field that is not known is left as it is named. */
export const fieldWords = (name: string, value: number): string => FIELD[name]?.(value) ?? `${name} ${value}`;

/** All that settings say, in one line; "as it was in each boil" where they say nothing. */
export function settingWords(settings: Partial<Record<Searched | string, unknown>>): string {
  const said = Object.entries(settings).flatMap(([name, value]) =>
    typeof value === 'number' ? [fieldWords(name, value)] : [],
  );
  return said.length === 0 ? say('tune.as_it_was') : said.join(', ');
}

/** What settings were called; a search names each by all that it tries, one after the other. */
export const triedWords = (name: string): string => name.split(', ').map(hostWords).join(', ');

/** How long before a moment a call came; 0 is that none did. */
function before(seconds: number | null, unknown: MessageKey): string {
  if (seconds === null) return say(unknown);
  return seconds === 0 ? say('tune.line.no_call') : lengthOfTime(seconds);
}

/** One line of the table: what is counted, and what it says of a score. */
export interface ScoreLine {
  label: MessageKey;
  words: (score: TuneScore, settings: Settings) => string;
  /** How it is drawn; null for what is only said. */
  value: ((score: TuneScore) => number | null) | null;
  unit: string;
}

export const SCORE_LINES: readonly ScoreLine[] = [
  {
    label: 'tune.line.near_finish',
    words: (score) => before(score.near_finish_lead_s, 'words.not_known'),
    unit: 'min',
    value: ({ near_finish_lead_s: s }) => (s === null ? null : s / 60),
  },
  {
    label: 'tune.line.strength',
    words: ({ finish_brix: brix }, settings) =>
      brix === null ? say('words.not_known') : strength(brix, brix, brix, settings),
    unit: '°Bx',
    value: ({ finish_brix: brix }) => brix,
  },
  {
    label: 'tune.line.scorch',
    words: (score) => before(score.scorch_lead_s, 'tune.line.not_so_far'),
    unit: 'min',
    value: ({ scorch_lead_s: s }) => (s === null ? null : s / 60),
  },
  {
    label: 'tune.line.false',
    words: ({ false_calls: count }) => (count === null ? say('words.not_known') : String(count)),
    value: null,
    unit: '',
  },
  { label: 'tune.line.all', words: ({ alarms }) => String(alarms), value: null, unit: '' },
  { label: 'tune.line.rate', words: ({ calls_per_hour: rate }) => number(rate, 1), value: null, unit: '' },
];

/** "12 of 31 boils, about 3 min left". */
export function progressWords({ done, boils, secondsLeft }: Pick<TuningNow, 'done' | 'boils' | 'secondsLeft'>): string {
  if (secondsLeft === null) return say('tune.progress', { done, boils });
  return say('tune.progress_left', { done, boils, time: lengthOfTime(secondsLeft) });
}

/** Whether anything measured can be told under any of the settings. */
export const isMeasured = (rows: readonly Pick<TuneSettingRow, 'sum'>[]): boolean =>
  rows.some(({ sum }) => SCORE_LINES.some(({ value }) => value !== null && value(sum) !== null));

/**
 * "The same result: as set now; 20 min before the finish. …" of settings that did the same in every line, so that nobody
 * looks for a difference; null where none did, or where nobody can tell how good the calls were.
 */
export function alikeWords(
  rows: readonly Pick<TuneSettingRow, 'name' | 'sum' | 'done'>[],
  settings: Settings,
): string | null {
  if (!isMeasured(rows)) return null;
  const alike = [
    ...Map.groupBy(rows, ({ sum }) => SCORE_LINES.map(({ words }) => words(sum, settings)).join('|')).values(),
  ].filter((group) => group.length > 1);
  if (alike.length === 0) return null;
  const boils = Math.max(...rows.map(({ done }) => done));
  return alike
    .map((group) => say('tune.alike', { names: setApart(group.map(({ name }) => triedWords(name))), boils }))
    .join(' ');
}

/** What the sums are of: the boils that can tell, or all that were run where none can, so that nobody reads a mean of them. */
export function sumTitle(rows: readonly Pick<TuneSettingRow, 'sum' | 'truths' | 'done'>[]): string {
  const most = (of: 'truths' | 'done'): number => Math.max(0, ...rows.map((row) => row[of]));
  return isMeasured(rows) && most('truths') > 0
    ? say('tune.middle', { boils: most('truths') })
    : say('tune.counted', { boils: most('done') });
}

/** What a score rests on: only a boil that somebody measured, up to its finish, can tell how good a call was. */
export function truthWords(truths: number, done: number, isTold: boolean): string {
  if (truths > 0 && !isTold) return say('tune.truth.no_finish', { truths, done });
  if (truths === 0) return say('tune.truth.none', { done });
  if (truths < done) return say('tune.truth.some', { truths, done });
  return truths === 1 ? say('tune.truth.one') : say('tune.truth.all', { done });
}

const UNTOLD = {
  'left-out': 'tune.untold.left_out',
  'too-early': 'tune.untold.too_early',
  'not-followed': 'tune.untold.not_followed',
} as const satisfies Record<NonNullable<TuneBoilRow['untold']>['why'], MessageKey>;

/** What was noted of a boil's end, and what it lacks to tell how good the calls were. */
export function untoldWords(untold: TuneBoilRow['untold'], settings: Settings): string {
  if (untold === null) return say('tune.not_measured');
  const [brix, finish] = [exactStrength(untold.brix, settings), exactStrength(untold.finishBrix, settings)];
  const key = UNTOLD[untold.why];
  return say(key, { pan: untold.pan, brix, ...(key === 'tune.untold.too_early' ? { finish } : {}) });
}

/** "Probe A/1 shows 1.1 °F too much (0.7 to 1.4), from 5 boils: …", in the person's degrees. */
export function offsetWords(of: OffsetsView['probes'][number], settings: Settings): string {
  const probe = calledById(of.probe) ?? of.probe;
  const { boils, too_high_c: tooHighC, low_c: lowC, high_c: highC, offset_c: offsetC } = of;
  if (tooHighC === null || lowC === null || highC === null || offsetC === null)
    return hostWords(of.sentence.replace(of.probe, () => probe));
  const shown = (celsius: number): number => differenceFromCelsius(celsius, settings.temperature);
  const unit = `\u00a0°${settings.temperature}`;
  const range = { low: signed(shown(lowC), 1), high: signed(shown(highC), 1) };
  if (lowC <= 0 && highC >= 0) return say('tune.offset.none', { probe, boils, ...range, unit });
  const [least, most] = [lowC, highC].map((end) => Math.abs(shown(end))).sort((a, b) => a - b);
  return say('tune.offset', {
    probe,
    boils,
    way: tooHighC > 0 ? 'much' : 'little',
    size: `${number(Math.abs(shown(tooHighC)), 1)}${unit}`,
    low: number(least ?? 0, 1),
    high: number(most ?? 0, 1),
    offset: `${signed(shown(offsetC), 1)}${unit}`,
  });
}
