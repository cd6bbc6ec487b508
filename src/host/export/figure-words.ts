// The figures of a boil in words for paper, in the units that the person chose.
import { formatMass, formatNumber, formatStrength, formatVolume } from '../../core/quantities/format.ts';
import { volumeFromLitres } from '../../core/quantities/units.ts';
import type { BoilFigures, Figure, FigureFrom, FigureName } from '../../core/season/figures.ts';
import type { Settings } from '../../protocol/messages.ts';

type Kind = 'volume' | 'mass' | 'strength' | 'ratio' | 'hours' | 'flow' | 'money' | 'count' | 'per-volume' | 'plain';

/** In the order of the paper. */
const SHOWN: readonly (readonly [figure: FigureName, title: string, kind: Kind, unit?: string])[] = [
  ['sap_litres', 'Sap in', 'volume'],
  ['sap_brix', 'Its strength', 'strength'],
  ['syrup_litres', 'Syrup out', 'volume'],
  ['syrup_kg', 'Its weight', 'mass'],
  ['syrup_brix', 'Its strength', 'strength'],
  ['expected_syrup_litres', 'Syrup that this sap makes', 'volume'],
  ['gap_sugar_kg', 'Sugar not accounted for', 'mass'],
  ['ratio', 'Sap to syrup', 'ratio'],
  ['exact_ratio', '… by the exact balance', 'ratio'],
  ['ratio_by_86', '… by the rule of 86', 'ratio'],
  ['hours', 'Length', 'hours'],
  ['boiling_hours', 'Boiling', 'hours'],
  ['water_off_litres', 'Water off', 'volume'],
  ['water_off_l_per_h', 'Water off in an hour', 'flow'],
  ['fuel_kg', 'Fuel', 'mass'],
  ['fuel_kwh', 'Electricity', 'plain', 'kWh'],
  ['fuel_cords', 'Wood', 'plain', 'cords'],
  ['fuel_kg_per_l', 'Fuel for syrup', 'per-volume'],
  ['cost', 'Cost', 'money'],
  ['jars', 'Jars', 'count'],
  ['cost_a_jar', 'Cost of a jar', 'money'],
  ['alarms', 'Alarms', 'count'],
];

const FROM: Record<FigureFrom, string> = {
  page: 'as you wrote it',
  marks: 'from marks',
  'marks-and-seen': 'from marks and pours seen',
  store: 'from the store',
  jars: 'from the jars',
  pans: 'as the program reckoned',
  usual: 'usual, not measured',
  'worked-out': 'worked out',
  seen: 'seen',
};

export interface FigureLine {
  title: string;
  value: string;
  from: string;
}

/** Every figure of the list; what nobody knows says so. */
export function figureLines(figures: BoilFigures, settings: Settings): FigureLine[] {
  return SHOWN.map(([name, title, kind, unit]) => {
    const figure = figures[name];
    if (figure === null) return { title, value: 'not known', from: '' };
    return { title, value: valueWords(figure, kind, settings, unit ?? ''), from: FROM[figure.from] };
  });
}

function valueWords(figure: Figure, kind: Kind, settings: Settings, unit: string): string {
  const { value, low, high } = figure;
  if (kind === 'strength') return formatStrength(value, low, high, settings.strength);
  const words = (amount: number): string => amountWords(amount, kind, settings, unit);
  if (kind === 'hours' || low === null || high === null || words(low) === words(high)) return words(value);
  return `${words(value)} (${bare(words(low))} to ${bare(words(high))})`;
}

function amountWords(value: number, kind: Exclude<Kind, 'strength'>, settings: Settings, unit: string): string {
  switch (kind) {
    case 'volume':
      return formatVolume(value, settings.volume);
    case 'flow':
      return `${formatVolume(value, settings.volume)}/h`;
    case 'mass':
      return formatMass(value, settings.mass);
    case 'per-volume': {
      const perUnit = value / volumeFromLitres(1, settings.volume);
      return `${formatMass(perUnit, settings.mass)} for 1 ${volumeSymbol(settings)}`;
    }
    case 'ratio':
      return `${formatNumber(value, 1)} : 1`;
    case 'hours':
      return hoursWords(value);
    case 'money':
      return formatNumber(value, 2);
    case 'count':
      return formatNumber(value, 0);
    case 'plain':
      return `${formatNumber(value, 2)} ${unit}`;
  }
}

const volumeSymbol = (settings: Settings): string => formatVolume(1, settings.volume).replace(/^[\d.]+\s/u, '');
/** The number alone: "9.8" of "9.8 : 1" or "9.8 kg". */
const bare = (text: string): string => text.split(/[\u00a0 ]/u)[0] ?? text;

function hoursWords(hours: number): string {
  const minutes = Math.round(hours * 60);
  return minutes < 60 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')} min`;
}
