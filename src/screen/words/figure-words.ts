// The figures of a boil and of a season in words and in the person's own units, with their range and where they come from.
import { formatRanged } from '../../core/quantities/format.ts';
import type { RangeWords } from '../../core/quantities/format.ts';
import { litresFromVolume, massFromKg, volumeFromLitres } from '../../core/quantities/units.ts';
import { lengthOfTime } from '../../core/quantities/time.ts';
import type {
  Balance,
  BoilFigures,
  BoilPage,
  BoilPageView,
  Figure,
  FigureFrom,
  FigureName,
} from '../../protocol/season-messages.ts';
import type { Settings } from '../client/types.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import {
  exactStrength,
  massRange,
  number,
  roundTemperature,
  strength,
  strengthEnds,
  strengthShown,
  syrupRange,
  unitSymbols,
  volume,
  volumeRange,
} from './amounts.ts';
import { leftOver, leftWords } from './jar-words.ts';

const LABELS: Record<FigureName, MessageKey> = {
  sap_litres: 'figure.sap_litres',
  sap_brix: 'figure.sap_brix',
  sap_sugar_kg: 'figure.sap_sugar_kg',
  syrup_litres: 'figure.syrup_litres',
  syrup_kg: 'figure.syrup_kg',
  syrup_brix: 'figure.syrup_brix',
  syrup_sugar_kg: 'figure.syrup_sugar_kg',
  expected_syrup_litres: 'figure.expected_syrup_litres',
  left_sugar_kg: 'figure.left_sugar_kg',
  lost_sugar_kg: 'figure.lost_sugar_kg',
  gap_sugar_kg: 'figure.gap_sugar_kg',
  ratio: 'figure.ratio',
  exact_ratio: 'figure.exact_ratio',
  ratio_by_86: 'figure.ratio_by_86',
  ratio_by_revised_86: 'figure.ratio_by_revised_86',
  water_off_litres: 'figure.water_off_litres',
  hours: 'figure.hours',
  boiling_hours: 'figure.boiling_hours',
  water_off_l_per_h: 'figure.water_off_l_per_h',
  fuel_kg: 'figure.fuel_kg',
  fuel_kwh: 'figure.fuel_kwh',
  fuel_cords: 'figure.fuel_cords',
  fuel_mj: 'figure.fuel_mj',
  fuel_kg_per_l: 'figure.fuel_kg_per_l',
  fuel_mj_per_l: 'figure.fuel_mj_per_l',
  fuel_price: 'figure.fuel_price',
  cost: 'figure.cost',
  jars: 'figure.jars',
  cost_a_jar: 'figure.cost_a_jar',
  alarms: 'figure.alarms',
  alarms_no_use: 'figure.alarms_no_use',
};

/** What a figure of a boil is called. */
export const figureLabel = (name: FigureName): string => say(LABELS[name]);

const FROM: Record<FigureFrom, MessageKey> = {
  page: 'figure.from.page',
  marks: 'figure.from.marks',
  'marks-and-seen': 'figure.from.marks_and_seen',
  store: 'figure.from.store',
  jars: 'figure.from.jars',
  pans: 'figure.from.pans',
  plan: 'figure.from.plan',
  usual: 'figure.from.usual',
  'worked-out': 'figure.from.worked_out',
  seen: 'figure.from.seen',
};

/** Where a figure comes from, in words. */
export const fromWords = (from: FigureFrom): string => say(FROM[from]);

/** A quotient over litres, in the chosen volume. */
const perVolume = (value: number, settings: Settings): number => value * litresFromVolume(1, settings.volume);

const VOLUME_SHORT = {
  litre: () => 'L',
  'us-gallon': () => say('unit.us_gallon'),
  'imperial-gallon': () => say('unit.imperial_gallon'),
} as const;
const massUnit = (settings: Settings): string => (settings.mass === 'pound' ? 'lb' : 'kg');
const space = '\u00a0';
const SECONDS_AN_HOUR = 3600;
/** Of a range that is wider, °Bx, formatStrength tells the range alone. */
const WIDE_BRIX = 10;

type Ranging = Pick<Figure, 'value' | 'low' | 'high'>;

/** A strength is told with its range; where that is too wide for a number, the range stands in its own column. */
function strengthRange({ value, low, high }: Ranging, settings: Settings): RangeWords {
  if (low === null || high === null) return { value: exactStrength(value, settings), low: null, high: null };
  const [least, most] = strengthEnds(low, high, settings);
  const unit = `${space}${unitSymbols(settings).strength}`;
  const isWide = high - low > WIDE_BRIX;
  return {
    value: strength(value, isWide ? null : low, isWide ? null : high, settings),
    low: `${least}${unit}`,
    high: `${most}${unit}`,
  };
}

/** A value and its range in the person's units, with the digits that the range allows: "12.4 L", "2.1 kg". Money has no unit: it is the person's own. */
function inWords(name: FigureName, ranging: Ranging, settings: Settings): RangeWords {
  const by = (most: number, write: (text: string) => string, factor = 1): RangeWords =>
    formatRanged(timesAll(ranging, factor), most, (value, digits) => write(number(value, digits)));
  switch (name) {
    case 'sap_litres':
    case 'water_off_litres':
      return volumeRange(ranging, settings);
    case 'water_off_l_per_h':
      return eachOf(volumeRange(ranging, settings), (text) => `${text}/h`);
    case 'syrup_litres':
    case 'expected_syrup_litres':
      return syrupRange(ranging, settings);
    case 'sap_brix':
    case 'syrup_brix':
      return strengthRange(ranging, settings);
    case 'sap_sugar_kg':
    case 'syrup_kg':
    case 'syrup_sugar_kg':
    case 'left_sugar_kg':
    case 'lost_sugar_kg':
    case 'gap_sugar_kg':
    case 'fuel_kg':
      return massRange(ranging, settings);
    case 'ratio':
    case 'exact_ratio':
    case 'ratio_by_86':
    case 'ratio_by_revised_86':
      return by(1, (ratio) => say('figure.ratio_to_one', { ratio }));
    case 'boiling_hours':
      if (ranging.value === 0) return { value: say('figure.no_boiling'), low: null, high: null };
      return { value: lengthOfTime(ranging.value * SECONDS_AN_HOUR), low: null, high: null };
    case 'hours':
      return { value: lengthOfTime(ranging.value * SECONDS_AN_HOUR), low: null, high: null };
    case 'fuel_kwh':
      return by(1, (text) => `${text}${space}kWh`);
    case 'fuel_cords':
      return by(2, (count) => say('figure.cords', { count }));
    case 'fuel_mj':
      return by(0, (text) => `${text}${space}${heatUnit(settings)}`, perMegajoule(settings));
    case 'fuel_kg_per_l': {
      const unit = `${massUnit(settings)}/${VOLUME_SHORT[settings.volume]()}`;
      return by(2, (text) => `${text}${space}${unit}`, massFromKg(perVolume(1, settings), settings.mass));
    }
    case 'fuel_mj_per_l':
      return by(0, (text) => `${text}${space}${heatPerVolume(settings)}`, perVolume(perMegajoule(settings), settings));
    case 'fuel_price':
    case 'cost':
    case 'cost_a_jar':
      return by(2, (text) => text);
    case 'jars':
      return by(0, (count) => say('figure.jar_count', { count, jars: Math.round(ranging.value) }));
    case 'alarms':
    case 'alarms_no_use':
      return by(0, (text) => text);
  }
}

const timesAll = ({ value, low, high }: Ranging, factor: number): Ranging => ({
  value: value * factor,
  low: low === null ? null : low * factor,
  high: high === null ? null : high * factor,
});

const eachOf = ({ value, low, high }: RangeWords, write: (text: string) => string): RangeWords => ({
  value: write(value),
  low: low === null ? null : write(low),
  high: high === null ? null : write(high),
});

/** A figure with its range in the units shown; “not known” for null. */
export const figureWords = (name: FigureName, figure: Figure | null, settings: Settings): string =>
  figure === null ? say('figure.not_known', { name }) : inWords(name, figure, settings).value;

/** The same in the list of boils: what a practice begins with is mostly no sap any more. */
export function cellWords(name: FigureName, figure: Figure | null, isPractice: boolean, settings: Settings): string {
  const words = figureWords(name, figure, settings);
  return name === 'sap_litres' && isPractice && figure !== null
    ? say('notebook.practice_sap', { amount: words })
    : words;
}

/** "11.2 L to 13.6 L", for eight times of ten; empty for what was counted or is exact. */
export function rangeWords(name: FigureName, figure: Figure | null, settings: Settings): string {
  if (figure === null) return '';
  const { low, high } = inWords(name, figure, settings);
  return low === null || high === null || low === high ? '' : say('figure.range', { low, high });
}

/** Where fires go by Btu an hour, heat goes by thousands of them. */
const heatUnit = ({ power }: Settings): string => (power === 'btu-per-hour' ? 'kBtu' : 'MJ');

/** 1 Btu is 1055.06 J (international table). */
const perMegajoule = ({ power }: Settings): number => (power === 'btu-per-hour' ? 1 / 1.05506 : 1);

/** "MJ/L", as the figures and their chart have it. */
export const heatPerVolume = (settings: Settings): string => `${heatUnit(settings)}/${VOLUME_SHORT[settings.volume]()}`;

/** So much water 1 MJ, or 1000 Btu, brings from room warmth to a boil: 1000 kJ / (4.19 kJ/(kg K) × 80 K), litres and °C. */
const ONE_MJ = { litres: 3, fromC: 20 };

/** What the unit of heat means at a stove. */
export const heatUnitWords = (settings: Settings): string =>
  say('figure.heat_unit', {
    unit: heatUnit(settings),
    water: volume(ONE_MJ.litres, settings, settings.volume === 'litre' ? 0 : 1),
    cold: roundTemperature(ONE_MJ.fromC, settings),
  });

/** Measured, weighed or drawn off by litres, rather than reckoned or counted in those very jars. */
const OWN_AMOUNT: ReadonlySet<FigureFrom> = new Set(['page', 'worked-out', 'marks']);

/** "and 0.15 L left over": syrup that was measured and fills no jar; empty where all is filled or it is not known. */
export function leftOverWords(jars: BoilPage['jars'], syrup: Figure | null, settings: Settings): string {
  if (jars === undefined || jars.length === 0 || syrup === null || !OWN_AMOUNT.has(syrup.from)) return '';
  const left = leftOver(syrup.value, jars);
  return left === null ? '' : say('figure.left_over', { amount: leftWords(left, settings) });
}

/** "8.0 L of it had been boiled before …": of sap in, where some of what was noted was no sap any more; empty for none. */
export function boiledBeforeWords(pours: BoilPageView['pours'], settings: Settings): string {
  const litres = (pours ?? []).reduce((sum, pour) => sum + (pour.boiledBefore === true ? pour.litres : 0), 0);
  return litres === 0 ? '' : say('figure.boiled_before', { litres: volume(litres, settings) });
}

type RatioFigures = Pick<BoilFigures, 'ratio' | 'sap_litres' | 'syrup_litres'>;

/** So much more sap than the ratio counts is told, as a share. */
const COUNTED_SHARE = 0.01;

/** Whether the ratio leaves out sap that never became syrup, so that sap over syrup by hand is more. */
export const isRatioOfPart = ({ ratio, sap_litres: sap, syrup_litres: syrup }: RatioFigures): boolean =>
  ratio !== null && sap !== null && syrup !== null && sap.value > (1 + COUNTED_SHARE) * ratio.value * syrup.value;

/** Whether the ratio is not known, though sap and syrup are; of no syrup there is none. */
export const isRatioOpen = ({ ratio, sap_litres: sap, syrup_litres: syrup }: RatioFigures): boolean =>
  ratio === null && sap !== null && syrup !== null && syrup.value > 0;

/** What the ratio was made of: "33 L of sap over 8.0 L of syrup", or the part of the sap that it counts; where it is not known, why, if that can be said. `kinds` of sap were boiled, some of it `boiledBefore`. */
export function ratioOfWords(
  figures: RatioFigures & Pick<BoilFigures, 'sap_sugar_kg' | 'syrup_sugar_kg' | 'left_sugar_kg' | 'lost_sugar_kg'>,
  { kinds, boiledBefore = false }: { kinds: number; boiledBefore?: boolean },
  settings: Settings,
): string {
  const { ratio, sap_litres: sap, syrup_litres: syrup } = figures;
  if (sap === null || syrup === null || syrup.value === 0) return '';
  if (ratio !== null && isRatioOfPart(figures))
    return say('figure.ratio_of_part', { counted: volume(ratio.value * syrup.value, settings) });
  if (ratio !== null)
    return say('figure.ratio_of_all', { sap: volume(sap.value, settings), syrup: volume(syrup.value, settings) });
  const { sap_sugar_kg: went, syrup_sugar_kg: became, left_sugar_kg: stayed, lost_sugar_kg: lost } = figures;
  if (kinds > 1) return say('figure.ratio_kinds');
  const came = [became, stayed, lost].reduce((sum, each) => sum + (each?.value ?? 0), 0);
  // Of syrup whose strength nobody knows it is left open only where it holds too much at any strength.
  const isOverAnyway = became === null && went !== null && !boiledBefore;
  if (isOverAnyway || came > (went?.value ?? Infinity)) return say('figure.ratio_over');
  return boiledBefore ? say('figure.ratio_no_sap') : '';
}

/** `wasSeen`: some pan was seen to boil, or watched by a probe. Why nobody knows how long it boiled, and how fast the water went where that alone is missing; empty for any other figure. */
export function unseenWords(
  name: FigureName,
  { boiling_hours: boiling, water_off_litres: water }: Pick<BoilFigures, 'boiling_hours' | 'water_off_litres'>,
  wasSeen: boolean,
): string {
  const isMissing = name === 'boiling_hours' || (name === 'water_off_l_per_h' && water !== null);
  if (!isMissing || boiling !== null) return '';
  return say(wasSeen ? 'figure.boiling_unseen' : 'figure.boiling_never_seen');
}

type BalanceFigures = Pick<
  BoilFigures,
  'gap_sugar_kg' | 'sap_sugar_kg' | 'syrup_sugar_kg' | 'syrup_litres' | 'left_sugar_kg'
>;

/** What the syrup holds over what went in, where nobody can say what stayed in the pans, kg: it is at least that much. */
const leastOver = (sap: Figure | null, syrup: Figure | null): Ranging => ({
  value: (sap?.value ?? 0) - (syrup?.value ?? 0),
  low: null,
  high: null,
});

/** How the sugar adds up, in a sentence that says what to look at. */
export function balanceWords(balance: Balance, figures: BalanceFigures, settings: Settings): string {
  const { sap_sugar_kg: sap, syrup_sugar_kg: syrup, syrup_litres: litres, left_sugar_kg: left } = figures;
  const isLeftAlone = sap !== null && syrup !== null && litres?.from !== 'pans' && left === null;
  if (balance === null && litres?.value === 0 && left !== null) return say('figure.balance.all_left');
  if (balance === null) return say(isLeftAlone ? 'figure.balance.left_unknown' : 'figure.balance.unknown');
  if (balance === 'closes') return say('figure.balance.closes');
  if (figures.gap_sugar_kg === null && syrup === null) return say('figure.balance.more_at_any_strength');
  const gap = figures.gap_sugar_kg ?? leastOver(sap, syrup);
  const amount = massRange(timesAll(gap, Math.sign(gap.value) || 1), settings).value;
  return say(balance === 'missing' ? 'figure.balance.missing' : 'figure.balance.more', { amount });
}

/** The number for a chart, in the person's units. */
export function chartValue(name: FigureName, value: number, settings: Settings): number {
  if (name === 'sap_litres' || name === 'syrup_litres') return volumeFromLitres(value, settings.volume);
  if (name === 'sap_brix' || name === 'syrup_brix') return strengthShown(value, settings);
  if (name === 'fuel_mj_per_l') return perVolume(value * perMegajoule(settings), settings);
  return name === 'fuel_kg_per_l' ? massFromKg(perVolume(value, settings), settings.mass) : value;
}

/** The unit of volume, short enough for a chart. */
export const shortVolume = (settings: Settings): string => VOLUME_SHORT[settings.volume]();

/** How much syrup came of a practice boil and how strong it is; null where nothing was finished. */
export function practiceGave(
  { syrup_litres: litres, syrup_brix: brix }: Pick<BoilFigures, 'syrup_litres' | 'syrup_brix'>,
  settings: Settings,
): { amount: string; strength: string } | null {
  if (litres === null || brix === null || litres.value === 0) return null;
  return {
    amount: figureWords('syrup_litres', litres, settings),
    strength: figureWords('syrup_brix', brix, settings),
  };
}
