// The figures of a boil in words for paper, in the language and the units that the person chose.
import { lengthOfTime } from '../../core/quantities/time.ts';
import {
  formatMassRange,
  formatNumber,
  formatRanged,
  formatStrength,
  formatSyrupRange,
  formatVolumeRange,
} from '../../core/quantities/format.ts';
import type { RangeWords } from '../../core/quantities/format.ts';
import { volumeFromLitres } from '../../core/quantities/units.ts';
import type { Figure, FigureFrom, FigureName } from '../../core/season/figures.ts';
import type { MessageKey, Tongue } from '../../language/tongue.ts';
import type { Settings } from '../../protocol/messages.ts';
import type { ReportData } from './report-data.ts';

type Kind =
  | 'volume'
  | 'syrup'
  | 'mass'
  | 'strength'
  | 'ratio'
  | 'hours'
  | 'flow'
  | 'money'
  | 'count'
  | 'per-volume'
  | 'energy'
  | 'wood';

/** In the order of the paper. */
const SHOWN: readonly (readonly [figure: FigureName, title: MessageKey, kind: Kind])[] = [
  ['sap_litres', 'figure.sap_litres', 'volume'],
  ['sap_brix', 'figure.sap_brix', 'strength'],
  ['syrup_litres', 'figure.syrup_litres', 'syrup'],
  ['syrup_kg', 'figure.syrup_kg', 'mass'],
  ['syrup_brix', 'figure.syrup_brix', 'strength'],
  ['expected_syrup_litres', 'paper.figure.expected', 'syrup'],
  ['gap_sugar_kg', 'paper.figure.gap', 'mass'],
  ['ratio', 'figure.ratio', 'ratio'],
  ['exact_ratio', 'paper.figure.exact', 'ratio'],
  ['ratio_by_86', 'paper.figure.by_86', 'ratio'],
  ['ratio_by_revised_86', 'paper.figure.by_revised_86', 'ratio'],
  ['hours', 'paper.figure.hours', 'hours'],
  ['boiling_hours', 'paper.figure.boiling', 'hours'],
  ['water_off_litres', 'paper.figure.water_off', 'volume'],
  ['water_off_l_per_h', 'paper.figure.water_off_hour', 'flow'],
  ['fuel_kg', 'figure.fuel_kg', 'mass'],
  ['fuel_kwh', 'paper.figure.electricity', 'energy'],
  ['fuel_cords', 'figure.fuel_cords', 'wood'],
  ['fuel_kg_per_l', 'paper.figure.fuel_for_syrup', 'per-volume'],
  ['cost', 'paper.figure.cost', 'money'],
  ['jars', 'figure.jars', 'count'],
  ['cost_a_jar', 'figure.cost_a_jar', 'money'],
  ['alarms', 'figure.alarms', 'count'],
];

const FROM: Record<FigureFrom, MessageKey> = {
  page: 'paper.from.page',
  marks: 'paper.from.marks',
  'marks-and-seen': 'paper.from.marks_and_seen',
  store: 'paper.from.store',
  jars: 'paper.from.jars',
  pans: 'paper.from.pans',
  plan: 'paper.from.plan',
  usual: 'paper.from.usual',
  'worked-out': 'figure.from.worked_out',
  seen: 'paper.from.seen',
};

export interface FigureLine {
  title: string;
  value: string;
  isKnown: boolean;
  /** Where it comes from, or what is missing. */
  from: string;
}

type Told = Pick<ReportData, 'figures' | 'settings' | 'unnoted'>;

/** Kinds of fuel that were not used, and rules that do not reach this sap, are no gap in what is known. */
const LEFT_OUT_UNKNOWN: ReadonlySet<FigureName> = new Set([
  'fuel_kwh',
  'fuel_cords',
  'ratio_by_86',
  'ratio_by_revised_86',
]);

/** Every figure of the list; what nobody knows says so, but for a kind of fuel of which nothing was noted, and the rules of thumb. */
export function figureLines({ figures, settings, unnoted }: Told, tongue: Tongue): FigureLine[] {
  const shown = SHOWN.filter(([name]) => figures[name] !== null || !LEFT_OUT_UNKNOWN.has(name));
  return shown.map(([name, title, kind]) => {
    const figure = figures[name];
    if (figure !== null) {
      const value = valueWords(figure, kind, settings, tongue);
      return { title: tongue.say(title), value, isKnown: true, from: tongue.say(FROM[figure.from]) };
    }
    const isNotNoted = name === 'sap_litres' && unnoted.length > 0;
    const from = isNotNoted ? tongue.say('paper.from.not_noted', { pans: unnoted.join(', ') }) : '';
    return { title: tongue.say(title), value: tongue.say('figure.not_known', { name }), isKnown: false, from };
  });
}

function valueWords(figure: Figure, kind: Kind, settings: Settings, tongue: Tongue): string {
  if (kind === 'strength')
    return tongue.amount(formatStrength(figure.value, figure.low, figure.high, settings.strength));
  const { value, low, high } = amountWords(figure, kind, settings, tongue);
  if (kind === 'hours' || low === null || high === null || low === high) return value;
  return `${value} (${tongue.say('figure.range', { low: bare(low), high: bare(high) })})`;
}

/** A value and the ends of its range, with the digits that the range allows. */
function amountWords(figure: Figure, kind: Exclude<Kind, 'strength'>, settings: Settings, tongue: Tongue): RangeWords {
  const eachOf = ({ value, low, high }: RangeWords, write: (text: string) => string): RangeWords => ({
    value: write(value),
    low: low === null ? null : write(low),
    high: high === null ? null : write(high),
  });
  const volume = eachOf(formatVolumeRange(figure, settings.volume), (text) => tongue.amount(text));
  const numbers = (most: number, write: (text: string) => string): RangeWords =>
    formatRanged(figure, most, (value, digits) => write(tongue.digits(formatNumber(value, digits))));
  switch (kind) {
    case 'volume':
      return volume;
    case 'syrup':
      return eachOf(formatSyrupRange(figure, settings.volume), (text) => tongue.amount(text));
    case 'flow':
      return eachOf(volume, (text) => `${text}/h`);
    case 'mass':
      return eachOf(formatMassRange(figure, settings.mass), (text) => tongue.amount(text));
    case 'per-volume': {
      const each = volumeFromLitres(1, settings.volume);
      const { value, low, high } = figure;
      const ranged = { value: value / each, low: low && low / each, high: high && high / each };
      const unit = unitOf(volume.value);
      return eachOf(formatMassRange(ranged, settings.mass), (text) =>
        tongue.say('paper.figure.for_one', { mass: tongue.amount(text), unit }),
      );
    }
    case 'ratio':
      return numbers(1, (ratio) => tongue.say('figure.ratio_to_one', { ratio }));
    case 'hours':
      return { value: lengthOfTime(figure.value * 3600), low: null, high: null };
    case 'money':
      return numbers(2, (text) => text);
    case 'count':
      return numbers(0, (text) => text);
    case 'energy':
      return numbers(2, (text) => `${text} kWh`);
    case 'wood':
      return numbers(2, (count) => tongue.say('figure.cords', { count }));
  }
}

/** "US gal" of "1.0 US gal". */
const unitOf = (text: string): string => text.slice(text.indexOf('\u00a0') + 1);
/** The number alone: "9.8" of "9.8 : 1" or "9.8 kg". */
const bare = (text: string): string => text.split(/[\u00a0 ]/u)[0] ?? text;
