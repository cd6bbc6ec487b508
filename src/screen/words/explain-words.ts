// Where a number comes from, how old its parts are and how sure it is: one short paragraph in the person's units.
import { lengthOfTime } from '../../core/quantities/time.ts';
import { Z80 } from '../../core/quantities/spread.ts';
import { differenceFromCelsius } from '../../core/quantities/units.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import type { Explained, Explanation, Header, MarkKind, Settings } from '../client/types.ts';
import {
  degrees,
  isUnderWater,
  depth,
  number,
  signedRate,
  strength,
  strengthEnds,
  strengthShown,
  temperature,
  unitSymbols,
  volume,
} from './amounts.ts';
import { timeOfDay } from './clock.ts';
import { doubtWords } from './origin-words.ts';
import { panName } from './pan-words.ts';
import { isTooLittle } from './planned-sap.ts';
import { whereFrom } from './where-from-words.ts';
import type { Telling } from './where-from-words.ts';

const TITLES: Record<Explained, MessageKey> = {
  water: 'explain.title.water',
  temperature: 'explain.title.temperature',
  rise: 'explain.title.rise',
  rate: 'explain.title.rate',
  strength: 'explain.title.strength',
  litres: 'explain.title.litres',
  depth: 'explain.title.depth',
  'top-up': 'explain.title.top_up',
  finish: 'explain.title.finish',
  'finish-point': 'explain.title.finish_point',
  'scorch-point': 'explain.title.scorch_point',
};

/** "Front pot: strength". */
export function explainTitle(what: Explained, pan: string | null, header: Header | null): string {
  const title = say(TITLES[what]);
  return pan === null ? title : say('explain.title', { pan: panName(header, pan), title });
}

/** The whole paragraph. */
export function explainWords(told: Explanation, telling: Telling): string {
  if (told.value === null) return say('explain.gone');
  return [howSure(told, telling), whereFrom(told, telling), leastSure(told, telling)]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

/** "Front pot: Density" and the like, as a sentence before the button; null where nothing would help much. */
export function surerWords({ what, surer: mark, facts }: Pick<Explanation, 'what' | 'surer' | 'facts'>): string | null {
  if (mark === 'water-check' && facts !== null && facts.probe === null) return say('explain.surer.water_check_hand');
  // By hand, a density tells how this sap boils only where the thermometer was read just before it.
  const isPoint = what === 'finish-point' || what === 'scorch-point';
  if (mark === 'density' && isPoint && facts !== null && facts.probe === null) return say('explain.surer.density_hand');
  const helps: Partial<Record<MarkKind, MessageKey>> = {
    'water-check': 'explain.surer.water_check',
    pressure: 'explain.surer.pressure',
    density: 'explain.surer.density',
    depth: 'explain.surer.depth',
  };
  const key = mark === null ? undefined : helps[mark];
  return key === undefined ? null : say(key);
}

function howSure(told: Explanation, telling: Telling): string {
  const { value } = told;
  // Under boiling water the words say how far, without a sign.
  const isUnder = told.what === 'rise' && (value ?? 0) < 0;
  const [low, high] = isUnder ? [told.high, told.low] : [told.low, told.high];
  if (value === null) return '';
  const whole = sayWhole(told, telling);
  if (low === null || high === null) return say('explain.unsure', { whole });
  if (low === high) return say('explain.exact', { whole });
  const [from, to] = [amount(told, low, telling), amount(told, high, telling)];
  if (from === to) return say('explain.sure', { whole });
  return say('explain.between', { whole, from: withoutUnit(from, to), to });
}

/** The first of two amounts, whose unit the second says. */
function withoutUnit(from: string, to: string): string {
  const unit = unitOf(to);
  return from.endsWith(unit) ? from.slice(0, from.length - unit.length) : from;
}

/** The unit with the blank before it; times of day have none. */
function unitOf(text: string): string {
  return /\u00a0\D.*$/u.exec(text)?.[0] ?? '';
}

/** The number as it stands on the card. */
function sayWhole(told: Explanation, telling: Telling): string {
  const { what, value, low, high } = told;
  const { settings } = telling;
  if (value === null) return '';
  // Where the card would print the range alone, the number stands before it here.
  if (what === 'strength')
    return (high ?? 0) - (low ?? 0) > 10 ? strength(value, null, null, settings) : strength(value, low, high, settings);
  if (what === 'finish') {
    const isCalled = telling.now.readings.some((each) => each.pan === told.pan && each.stage === 'finished');
    if (value <= 0 || isCalled) return say(value <= 0 && isCalled ? 'pan.done_now' : 'pan.done_perhaps');
    const isAlone = isTooLittle(telling.now, told.pan);
    return say(isAlone ? 'explain.done_alone' : 'pan.done_about', { time: amount(told, value, telling) });
  }
  if (what === 'top-up')
    return value <= 0 ? say('explain.top_up_now') : say('explain.top_up_by', { time: amount(told, value, telling) });
  if (what === 'rise')
    return say(isUnderWater(value, settings) ? 'explain.under_water' : 'from.over_water', {
      rise: degrees(Math.abs(value), settings),
    });
  if (what === 'water') return say('explain.water_boils', { at: amount(told, value, telling) });
  return amount(told, value, telling);
}

/** One end of the range, in the unit of the number. */
function amount({ what, low, high, t }: Explanation, value: number, { now, settings }: Telling): string {
  switch (what) {
    case 'strength':
      return strengthEnd(value, low ?? value, high ?? value, settings);
    case 'rise':
      return degrees(Math.abs(value), settings);
    case 'rate':
      return signedRate(value, settings).replace(' ', '\u00a0');
    case 'litres':
      return volume(value, settings);
    case 'depth':
      return depth(value, settings);
    case 'top-up':
    case 'finish':
      return timeOfDay(now, t + value * 1000);
    case 'water':
    case 'temperature':
    case 'finish-point':
    case 'scorch-point':
      return temperature(value, settings);
  }
}

/** An end of a strength's range, with as many digits as the range allows. */
function strengthEnd(brix: number, low: number, high: number, settings: Settings): string {
  const [least, most] = strengthEnds(low, high, settings);
  const end = brix <= (low + high) / 2 ? least : most;
  return `${end}\u00a0${unitSymbols(settings).strength}`;
}

/** The largest part, with how much of the range it makes. */
function leastSure(told: Explanation, telling: Telling): string {
  const [largest] = told.parts;
  if (largest === undefined || told.low === told.high) return '';
  const probe = told.facts?.probe ?? largest.of ?? null;
  const what = doubtWords(largest.kind, probe, telling.now.header, told.pan);
  const reach = Z80 * Math.abs(largest.sigma);
  if (isLopsided(told)) return leastSureBetween(told, reach, what, telling);
  const spread = spreadWords(told, reach, telling);
  return spread === null ? say('explain.least_sure', { what }) : say('explain.least_sure_by', { what, spread });
}

/** One side of a range wider than the other by more than this: a ± would promise what is not so. */
const LOPSIDED = 1.25;

function isLopsided({ value, low, high }: Explanation): boolean {
  if (value === null || low === null || high === null) return false;
  const [down, up] = [value - low, high - value];
  return Math.max(down, up) > LOPSIDED * Math.min(down, up);
}

/** What the largest part does by itself, each way its share of the range; nothing where that is the range that was said. */
function leastSureBetween(told: Explanation, reach: number, what: string, telling: Telling): string {
  const [value, low, high] = [told.value ?? 0, told.low ?? 0, told.high ?? 0];
  const share = Math.min(1, reach / Math.max(value - low, high - value));
  const ends = [value - share * (value - low), value + share * (high - value)] as const;
  const [from, to] = ends.map((end) => amount(told, end, telling));
  const isWhole = from === amount(told, low, telling) && to === amount(told, high, telling);
  return isWhole || from === to || from === undefined || to === undefined
    ? say('explain.least_sure', { what })
    : say('explain.least_sure_between', { what, from: withoutUnit(from, to), to });
}

/** "0.4 °Bx" behind a ±; null where it would print as nothing. */
function spreadWords({ what, value }: Explanation, spread: number, { settings }: Telling): string | null {
  const text = spreadOf(what, value ?? 0, spread, settings);
  return /[1-9]/u.test(text) ? text : null;
}

function spreadOf(what: Explained, value: number, spread: number, settings: Settings): string {
  switch (what) {
    case 'strength': {
      const width = strengthShown(Math.min(85, value + spread), settings) - strengthShown(value, settings);
      return `${number(width, settings.strength === 'sg' ? 3 : 1)}\u00a0${unitSymbols(settings).strength}`;
    }
    case 'litres':
      return volume(spread, settings);
    case 'depth':
      return depth(spread, settings);
    case 'top-up':
    case 'finish':
      return lengthOfTime(spread);
    case 'rate':
      return `${number(differenceFromCelsius(spread, settings.temperature), 2)}\u00a0°${settings.temperature}/min`;
    default:
      return degrees(spread, settings);
  }
}
