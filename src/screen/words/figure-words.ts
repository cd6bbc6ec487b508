// The figures of a boil and of a season in words and in the person's own units, with their range and where they come from.
import { formatNumber, formatVolume } from '../../core/quantities/format.ts';
import { litresFromVolume, massFromKg, volumeFromLitres } from '../../core/quantities/units.ts';
import type { Balance, Figure, FigureFrom, FigureName } from '../../protocol/season-messages.ts';
import type { Settings } from '../client/types.ts';
import { mass, strength, strengthShown, volume } from './amounts.ts';

const LABELS: Record<FigureName, string> = {
  sap_litres: 'Sap in',
  sap_brix: 'Its strength',
  sap_sugar_kg: 'Sugar in it',
  syrup_litres: 'Syrup out',
  syrup_kg: 'Its weight',
  syrup_brix: 'Its density',
  syrup_sugar_kg: 'Sugar in it',
  expected_syrup_litres: 'All of the sap’s sugar would make',
  left_sugar_kg: 'Sugar left in the pans',
  lost_sugar_kg: 'Sugar known to be lost',
  gap_sugar_kg: 'Not accounted for',
  ratio: 'Sap to syrup',
  exact_ratio: 'by the exact balance',
  ratio_by_86: 'by the rule of 86',
  ratio_by_revised_86: 'by its revision, 87.1',
  water_off_litres: 'Water boiled off',
  hours: 'Length of the boil',
  boiling_hours: 'Time at a boil',
  water_off_l_per_h: 'Water an hour',
  fuel_kg: 'Fuel',
  fuel_kwh: 'Current',
  fuel_cords: 'Wood',
  fuel_mj: 'Heat in the fuel',
  fuel_kg_per_l: 'Fuel for each volume of syrup',
  fuel_mj_per_l: 'Heat for each volume of syrup',
  fuel_price: 'Price of the fuel',
  cost: 'Cost of all',
  jars: 'Jars',
  cost_a_jar: 'Cost of a jar',
  alarms: 'Alarms',
  alarms_no_use: 'Alarms of no use',
};

export const figureLabel = (name: FigureName): string => LABELS[name];

const FROM: Record<FigureFrom, string> = {
  page: 'your word',
  marks: 'your marks',
  'marks-and-seen': 'your marks, and pours that the probe saw',
  store: 'the sap store',
  jars: 'the jars',
  pans: 'the pan model',
  usual: 'what is usual; nobody measured',
  'worked-out': 'worked out',
  seen: 'counted',
};

export const fromWords = (from: FigureFrom): string => FROM[from];

const NOT_KNOWN = 'not known';

/** A quotient over litres, in the chosen volume. */
const perVolume = (value: number, settings: Settings): number => value * litresFromVolume(1, settings.volume);

const VOLUME_SHORT = { litre: 'L', 'us-gallon': 'US gal', 'imperial-gallon': 'imp gal' } as const;
const massUnit = (settings: Settings): string => (settings.mass === 'pound' ? 'lb' : 'kg');
const space = '\u00a0';

/** One value in the person's units: "12.4 L", "2.1 kg". Money has no unit: it is the person's own. */
function valueWords(name: FigureName, value: number, settings: Settings): string {
  switch (name) {
    case 'sap_litres':
    case 'syrup_litres':
    case 'expected_syrup_litres':
    case 'water_off_litres':
      return volume(value, settings);
    case 'sap_brix':
    case 'syrup_brix':
      return strength(value, value, value, settings);
    case 'sap_sugar_kg':
    case 'syrup_kg':
    case 'syrup_sugar_kg':
    case 'left_sugar_kg':
    case 'lost_sugar_kg':
    case 'gap_sugar_kg':
    case 'fuel_kg':
      return mass(value, settings);
    case 'ratio':
    case 'exact_ratio':
    case 'ratio_by_86':
    case 'ratio_by_revised_86':
      return `${formatNumber(value, 1)} : 1`;
    case 'hours':
    case 'boiling_hours':
      return `${formatNumber(value, 1)}${space}h`;
    case 'water_off_l_per_h':
      return `${formatVolume(value, settings.volume)}/h`;
    case 'fuel_kwh':
      return `${formatNumber(value, 1)}${space}kWh`;
    case 'fuel_cords':
      return `${formatNumber(value, 2)} cords`;
    case 'fuel_mj':
      return `${formatNumber(value, 0)}${space}MJ`;
    case 'fuel_kg_per_l':
      return `${formatNumber(massFromKg(perVolume(value, settings), settings.mass), 2)}${space}${massUnit(settings)}/${VOLUME_SHORT[settings.volume]}`;
    case 'fuel_mj_per_l':
      return `${formatNumber(perVolume(value, settings), 0)}${space}MJ/${VOLUME_SHORT[settings.volume]}`;
    case 'fuel_price':
    case 'cost':
    case 'cost_a_jar':
      return formatNumber(value, 2);
    case 'jars':
    case 'alarms':
    case 'alarms_no_use':
      return formatNumber(value, 0);
  }
}

export const figureWords = (name: FigureName, figure: Figure | null, settings: Settings): string =>
  figure === null ? NOT_KNOWN : valueWords(name, figure.value, settings);

/** "11.2 L to 13.6 L", for eight times of ten; empty for what was counted or is exact. */
export function rangeWords(name: FigureName, figure: Figure | null, settings: Settings): string {
  if (figure === null || figure.low === null || figure.high === null) return '';
  const [low, high] = [valueWords(name, figure.low, settings), valueWords(name, figure.high, settings)];
  return low === high ? '' : `${low} to ${high}`;
}

/** How the sugar adds up, in a sentence that says what to look at. */
export function balanceWords(balance: Balance, gap: Figure | null, settings: Settings): string {
  if (balance === null || gap === null) {
    return 'Whether the sugar adds up cannot be told: that takes the sap that went in, and syrup that was weighed or measured.';
  }
  if (balance === 'closes') return 'The sugar adds up, as far as it was measured.';
  const amount = mass(Math.abs(gap.value), settings);
  if (balance === 'missing') {
    return `${amount} of sugar is missing: it stuck to the pans, was spilt or burnt, syrup was not counted, or sap was counted or typed too much.`;
  }
  return `${amount} more sugar came out than went in: a pour was not noted, the sap was stronger than typed, or the syrup is less or thinner.`;
}

/** The number for a chart, in the person's units. */
export function chartValue(name: FigureName, value: number, settings: Settings): number {
  if (name === 'sap_litres' || name === 'syrup_litres') return volumeFromLitres(value, settings.volume);
  if (name === 'sap_brix' || name === 'syrup_brix') return strengthShown(value, settings);
  if (name === 'fuel_mj_per_l') return perVolume(value, settings);
  return name === 'fuel_kg_per_l' ? massFromKg(perVolume(value, settings), settings.mass) : value;
}

export const shortVolume = (settings: Settings): string => VOLUME_SHORT[settings.volume];
