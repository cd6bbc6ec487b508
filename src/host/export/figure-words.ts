// The figures of a boil in words for paper, in the language and the units that the person chose.
import { formatMass, formatNumber, formatStrength, formatSyrup, formatVolume } from '../../core/quantities/format.ts';
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
  ['syrup_brix', 'figure.sap_brix', 'strength'],
  ['expected_syrup_litres', 'paper.figure.expected', 'syrup'],
  ['gap_sugar_kg', 'paper.figure.gap', 'mass'],
  ['ratio', 'figure.ratio', 'ratio'],
  ['exact_ratio', 'paper.figure.exact', 'ratio'],
  ['ratio_by_86', 'paper.figure.by_86', 'ratio'],
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

/** Every figure of the list; what nobody knows says so. */
export function figureLines({ figures, settings, unnoted }: Told, tongue: Tongue): FigureLine[] {
  return SHOWN.map(([name, title, kind]) => {
    const figure = figures[name];
    if (figure !== null) {
      const value = valueWords(figure, kind, settings, tongue);
      return { title: tongue.say(title), value, isKnown: true, from: tongue.say(FROM[figure.from]) };
    }
    const isNotNoted = name === 'sap_litres' && unnoted.length > 0;
    const from = isNotNoted ? tongue.say('paper.from.not_noted', { pans: unnoted.join(', ') }) : '';
    return { title: tongue.say(title), value: tongue.say('words.not_known'), isKnown: false, from };
  });
}

function valueWords({ value, low, high }: Figure, kind: Kind, settings: Settings, tongue: Tongue): string {
  if (kind === 'strength') return tongue.amount(formatStrength(value, low, high, settings.strength));
  const words = (amount: number): string => amountWords(amount, kind, settings, tongue);
  if (kind === 'hours' || low === null || high === null || words(low) === words(high)) return words(value);
  return `${words(value)} (${tongue.say('figure.range', { low: bare(words(low)), high: bare(words(high)) })})`;
}

function amountWords(value: number, kind: Exclude<Kind, 'strength'>, settings: Settings, tongue: Tongue): string {
  const volume = (litres: number): string => tongue.amount(formatVolume(litres, settings.volume));
  const mass = (kg: number): string => tongue.amount(formatMass(kg, settings.mass));
  const number = (digits: number): string => tongue.digits(formatNumber(value, digits));
  switch (kind) {
    case 'volume':
      return volume(value);
    case 'syrup':
      return tongue.amount(formatSyrup(value, settings.volume));
    case 'flow':
      return `${volume(value)}/h`;
    case 'mass':
      return mass(value);
    case 'per-volume':
      return tongue.say('paper.figure.for_one', {
        mass: mass(value / volumeFromLitres(1, settings.volume)),
        unit: unitOf(volume(1)),
      });
    case 'ratio':
      return `${number(1)} : 1`;
    case 'hours':
      return hoursWords(value);
    case 'money':
      return number(2);
    case 'count':
      return number(0);
    case 'energy':
      return `${number(2)} kWh`;
    case 'wood':
      return tongue.say('figure.cords', { count: number(2) });
  }
}

/** "US gal" of "1.0 US gal". */
const unitOf = (text: string): string => text.slice(text.indexOf('\u00a0') + 1);
/** The number alone: "9.8" of "9.8 : 1" or "9.8 kg". */
const bare = (text: string): string => text.split(/[\u00a0 ]/u)[0] ?? text;

function hoursWords(hours: number): string {
  const minutes = Math.round(hours * 60);
  return minutes < 60 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')} min`;
}
