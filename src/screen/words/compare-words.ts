// Boils beside each other in words and in the units that a person chose.
import { localDigits } from '../language/numbers.ts';
import { differenceFromCelsius } from '../../core/quantities/units.ts';
import type {
  Alignment,
  Compared,
  ComparedBoil,
  CompareView,
  Difference,
  Ghost,
} from '../../protocol/compare-messages.ts';
import type { BoilRow } from '../../protocol/season-messages.ts';
import type { BoilListing, SapKind, Settings } from '../client/types.ts';
import { hostWords } from '../language/host-words.ts';
import { type MessageKey, say, setApart } from '../language/say.ts';
import { celsiusShown, litresShown, strengthShown, unitSymbols } from './amounts.ts';
import { hoursAndMinutes, shortDay } from './clock.ts';
import { figureWords } from './figure-words.ts';
import { sapCalled, sapOfKey } from './sap-words.ts';
import { HOUR_MS } from '../../core/quantities/time.ts';

export const ALIGNED_BY: readonly (readonly [Alignment, MessageKey])[] = [
  ['clock', 'compare.by.clock'],
  ['before-finish', 'compare.by.time_before_finish'],
  ['evaporated', 'compare.by.evaporated'],
  ['strength', 'compare.by.strength'],
];

export const DRAWN: readonly (readonly [Compared, MessageKey])[] = [
  ['temperature', 'compare.drawn.temperature'],
  ['rise', 'compare.drawn.rise'],
  ['strength', 'compare.drawn.strength'],
  ['evaporation', 'compare.drawn.evaporation'],
];

/** What stands along a chart, with its unit. */
export function alongTitle(align: Alignment, settings: Settings): string {
  const units = unitSymbols(settings);
  const titles: Record<Alignment, string> = {
    clock: say('compare.by.clock'),
    'before-finish': say('compare.by.before_finish'),
    evaporated: say('compare.along.evaporated', { unit: units.volume }),
    strength: say('compare.along.strength', { unit: units.strength }),
  };
  return titles[align];
}

/** What stands upwards, with its unit. */
export function upTitle(what: Compared, settings: Settings): string {
  const units = unitSymbols(settings);
  const titles: Record<Compared, string> = {
    temperature: units.temperature,
    rise: say('compare.up.rise', { unit: units.temperature }),
    strength: units.strength,
    evaporation: say('compare.up.evaporation', { unit: units.volume }),
  };
  return titles[what];
}

/** A place along the chart in the units shown: hours stay, L and °Bx are turned. */
export function alongShown(align: Alignment, x: number, settings: Settings): number {
  if (align === 'evaporated') return litresShown(x, settings);
  return align === 'strength' ? strengthShown(x, settings) : x;
}

/** A height in the chart in the units shown, from °C, °Bx or L/h. */
export function upShown(what: Compared, y: number, settings: Settings): number {
  if (what === 'temperature') return celsiusShown(y, settings);
  if (what === 'rise') return differenceFromCelsius(y, settings.temperature);
  return what === 'strength' ? strengthShown(y, settings) : litresShown(y, settings);
}

/** What a boil lies between, °C or °C over boiling water: what warms up, has cooled or burns leaves the chart. */
const BOILS: Partial<Record<Compared, { least: number; greatest: number }>> = {
  temperature: { least: 90, greatest: 115 },
  rise: { least: -6, greatest: 15 },
};

/** The span of a chart within which something boils, in the units shown; undefined where all is drawn. */
export function boilsWithin(what: Compared, settings: Settings): { least: number; greatest: number } | undefined {
  const within = BOILS[what];
  if (within === undefined) return undefined;
  return { least: upShown(what, within.least, settings), greatest: upShown(what, within.greatest, settings) };
}

export const MINUTES_AN_HOUR = 60;

/** Whether so short a span, hours, is told in minutes. */
export const isInMinutes = (least: number, greatest: number): boolean => greatest - least < 1;

/** "2" of so many hours or minutes before the finish, and after it "+1". */
export const beforeFinish = (count: number): string =>
  count === 0 ? say('compare.done') : localDigits(count > 0 ? `+${count}` : String(-count));

const DAY_H = 24;

/** "16:30" of hours since midnight; after midnight it begins anew. To the whole ms: a third of an hour is no ms short of 20 min. */
export const hourOfDay = (hours: number): string => hoursAndMinutes(Math.round((hours % DAY_H) * HOUR_MS));

/** "13 Mar, Three pots, Front pot". */
function boilWords({
  started,
  name,
  pan,
}: Pick<ComparedBoil, 'started' | 'name'> & { pan: Ghost['pan'] | null }): string {
  const boil = { day: shortDay(started), name: name === '' ? say('compare.nameless') : name };
  return pan === null ? say('compare.boil', boil) : say('compare.boil_pan', { ...boil, pan: pan.name });
}

/** Which pan of which sap each boil is drawn by: "1 Front pot (maple)". */
export const pansWords = (boils: readonly Pick<ComparedBoil, 'pan'>[], kinds: readonly SapKind[]): string[] =>
  boils.flatMap(({ pan }, i) =>
    pan === null
      ? []
      : [say('compare.pan_of_sap', { place: i + 1, pan: pan.name, sap: sapCalled(sapOfKey(pan.sap), kinds) })],
  );

type Named = Pick<ComparedBoil, 'boil' | 'started' | 'name'> & { pan: Ghost['pan'] | null };

/** The same; of boils of one day and name with the hour at which each began: "13 Mar, 07:30, Three pots, Front pot". */
export function boilWordsAmong(one: Named, boils: readonly Named[]): string {
  const hasTwin = boils.some((other) => other.boil !== one.boil && boilWords(other) === boilWords(one));
  if (!hasTwin) return boilWords(one);
  const day = say('compare.day_and_hour', { day: shortDay(one.started), time: one.started.slice(11, 16) });
  const boil = { day, name: one.name === '' ? say('compare.nameless') : one.name };
  return one.pan === null ? say('compare.boil', boil) : say('compare.boil_pan', { ...boil, pan: one.pan.name });
}

/** Of a boil that has no line: "6 Mar, Too little sap: not drawn. This pan was not finished."; null for one that is drawn. */
export function notDrawnWords(
  one: (Named & Pick<ComparedBoil, 'isWorking' | 'why'>) | undefined,
  boils: readonly Named[],
): string | null {
  if (one === undefined) return null;
  const boil = boilWordsAmong(one, boils);
  if (one.isWorking) return say('compare.not_read_yet', { boil });
  return one.why === null ? null : say('compare.why', { boil, why: hostWords(one.why) });
}

/** "2 (13 Mar, Three pots): 18 min slower from 30 to 60 °Bx …" */
function differenceOfBoil(difference: Difference, boils: readonly ComparedBoil[]): string {
  const place = boils.findIndex(({ boil }) => boil === difference.boil);
  const boil = boils[place];
  const who =
    boil === undefined ? difference.boil : say('compare.boil', { day: shortDay(boil.started), name: boil.name });
  return say('compare.difference', { place: place + 1, who, sentence: hostWords(difference.sentence) });
}

/** What is said under the chart of how the other boils differ from the first. */
export interface Differing {
  /** The differences, the greatest first. */
  lines: string[];
  /** Which boils were as fast, of which it cannot be told, or why nothing can be compared. */
  others: string[];
  /** Which boils were left out of it for having no line; null where all have one. */
  leftOut: string | null;
}

const isDrawn = ({ y }: Pick<ComparedBoil, 'y'>): boolean => y.some((each) => each !== null);

/** Told only of boils that have a line in the chart: of any other, that nothing differs would be read as said of it, too. */
export function differingWords({
  boils,
  differences,
  untold,
}: Pick<CompareView, 'boils' | 'differences' | 'untold'>): Differing {
  const places = (isWanted: (boil: ComparedBoil, place: number) => boolean): string[] =>
    boils.flatMap((boil, i) => (isWanted(boil, i + 1) ? [String(i + 1)] : []));
  const undrawn = places((boil) => !isDrawn(boil));
  if (undrawn.includes('1')) return { lines: [], others: [say('compare.differs_first_undrawn')], leftOut: null };
  const isOther = (boil: ComparedBoil, place: number): boolean => place > 1 && isDrawn(boil);
  if (places(isOther).length === 0) return { lines: [], others: [say('compare.differs_all_undrawn')], leftOut: null };
  const differs = (boil: ComparedBoil): boolean => differences.some((each) => each.boil === boil.boil);
  const isUntold = ({ boil }: ComparedBoil): boolean => untold.includes(boil);
  const said = (key: MessageKey, some: readonly string[]): string[] =>
    some.length === 0 ? [] : [say(key, { places: setApart(some) })];
  return {
    lines: differences
      .filter(({ boil }) => boils.some((each, i) => each.boil === boil && isOther(each, i + 1)))
      .map((each) => differenceOfBoil(each, boils)),
    others: [
      ...said(
        'compare.differs_as_fast',
        places((boil, place) => isOther(boil, place) && !differs(boil) && !isUntold(boil)),
      ),
      ...said(
        'compare.differs_untold',
        places((boil, place) => isOther(boil, place) && isUntold(boil)),
      ),
    ],
    leftOut: undrawn.length === 0 ? null : say('compare.differs_left_out', { places: setApart(undrawn) }),
  };
}

type Beside = 'sap_litres' | 'syrup_litres' | 'ratio' | 'fuel' | 'hours' | 'boiling_hours';

/** What stands of each boil beside the others, and what it is called. */
export const BESIDE: readonly (readonly [Beside, MessageKey])[] = [
  ['sap_litres', 'figure.sap_litres'],
  ['syrup_litres', 'figure.syrup_litres'],
  ['ratio', 'figure.ratio'],
  ['fuel', 'figure.fuel_kg'],
  ['hours', 'figure.hours'],
  ['boiling_hours', 'figure.boiling_hours'],
];

const FUELS = ['fuel_kg', 'fuel_kwh', 'fuel_cords'] as const;

/** One figure of a boil in the units shown, all its fuels in one; "not known" where nobody told, "…" while it is added up. */
export function figureBeside(
  name: Beside,
  { figures, running }: Pick<BoilRow, 'figures' | 'running'>,
  settings: Settings,
): string {
  if (figures === null && !running) return '…';
  if (name !== 'fuel') return figureWords(name, figures?.[name] ?? null, settings);
  const used = FUELS.filter((fuel) => (figures?.[fuel] ?? null) !== null);
  if (used.length === 0) return figureWords('fuel_kg', null, settings);
  return setApart(used.map((fuel) => figureWords(fuel, figures?.[fuel] ?? null, settings)));
}

/** Under the chart of a boil that runs: which past boil is drawn thin behind it, and how it is laid. */
export function ghostWords({ name, started, pan, alignedBy }: Ghost): string {
  const boil = boilWords({ name, started, pan });
  return say(alignedBy === 'strength' ? 'compare.ghost.strength' : 'compare.ghost.start', { boil });
}

/** Whether a practice boil of that year is among those that are listed: it is missed among its boils in small. */
export const hasPractice = (boils: readonly Pick<BoilListing, 'practice' | 'started'>[], year: number): boolean =>
  boils.some(({ practice, started }) => practice && Number(started.slice(0, 4)) === year);
