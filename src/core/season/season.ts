// What a season adds up to: its sums, and sap and syrup by day. A season is the calendar year at the trees.
import { Z80 } from '../quantities/spread.ts';
import type { BoilFigures, Figure, FigureName } from './figures.ts';
import { figureOf, known, type Known, quotient, sumOf } from './known.ts';
import type { Collection } from './records.ts';
import type { SapKindKey } from '../physics/sap-kinds.ts';

/** One day of a season, local to the boils: what was collected and what was made. */
export interface SeasonDay {
  /** YYYY-MM-DD */
  day: string;
  sap_litres: number;
  syrup_litres: number;
}

/** A sum over the boils of which the figure is known; null where it is known of none. */
export interface Summed {
  figure: Figure | null;
  /** Of so many boils it is known: nobody is to take a part for the whole. */
  boils_known: number;
}

const SUMMED = [
  'sap_litres',
  'sap_sugar_kg',
  'syrup_litres',
  'syrup_kg',
  'syrup_sugar_kg',
  'gap_sugar_kg',
  'water_off_litres',
  'hours',
  'boiling_hours',
  'fuel_kg',
  'fuel_mj',
  'cost',
  'jars',
  'alarms',
] as const satisfies readonly FigureName[];

/** What a quotient of a season adds up of each boil. */
type Part = (figures: BoilFigures) => Known | null;

function of(name: FigureName): Part {
  return ({ [name]: figure }) => (figure === null ? null : knownOf(figure));
}

const litresOfSyrup = of('syrup_litres');

/** Sap that the boil's own ratio counts: the ratio without what the syrup brings to its range. */
const finishedLitres: Part = ({ ratio, syrup_litres: syrup }) => {
  if (ratio === null || syrup === null) return null;
  const [of, over] = [knownOf(ratio), knownOf(syrup)];
  const share = (of.sigma / of.value) ** 2 - (over.sigma / over.value) ** 2;
  const value = of.value * over.value;
  return known(value, value * Math.sqrt(Math.max(0, share)), 'worked-out');
};

const whereTold =
  (name: FigureName): Part =>
  (figures) =>
    figures.water_off_l_per_h === null ? null : of(name)(figures);

/** Each is a quotient of two sums over the boils of which both are known. */
const QUOTIENTS = {
  ratio: [finishedLitres, litresOfSyrup],
  fuel_kg_per_l: [of('fuel_kg'), litresOfSyrup],
  fuel_mj_per_l: [of('fuel_mj'), litresOfSyrup],
  // Of a boil that was too short to tell it, nothing counts.
  water_off_l_per_h: [whereTold('water_off_litres'), whereTold('boiling_hours')],
  cost_a_jar: [of('cost'), of('jars')],
} as const satisfies Partial<Record<FigureName, readonly [Part, Part]>>;

export type SummedName = (typeof SUMMED)[number];
export type QuotientName = keyof typeof QUOTIENTS;

/** A kind of sap as a season tells it: early and late maple are maple; `several` is of boils of more than one. */
export type KindOfSeason = Exclude<SapKindKey, 'maple-early' | 'maple-late'> | 'several';

/** What a season's boils of one kind of sap add up to. */
export interface KindTotals {
  sap: KindOfSeason;
  boils: number;
  sap_litres: Summed;
  syrup_litres: Summed;
  ratio: Figure | null;
}

/**
 * Sums over the boils of a season that are not practice, and the sap that was collected in it. Where several kinds of sap were
 * boiled, in boils of their own or in one, `by_kind` holds each, and sap to syrup, which is that of no sap then, is null; else
 * `by_kind` is empty.
 */
export type SeasonTotals = Record<SummedName, Summed> &
  Record<QuotientName, Figure | null> & {
    boils: number;
    collected_litres: number;
    spoilt_litres: number;
    by_kind: KindTotals[];
  };

/** What the season needs of a boil; figures are null while they are being worked out. */
export interface BoilOfSeason {
  /** ISO 8601 with an offset. */
  started: string;
  figures: BoilFigures | null;
  /** The kinds of sap that its pans hold. */
  saps: readonly SapKindKey[];
}

/** The season of a day (YYYY-MM-DD…): its calendar year. */
export const yearOf = (isoDay: string): number => Number(isoDay.slice(0, 4));
const dayOf = (started: string): string => started.slice(0, 10);

/** `boils` and `collections` are those of one season. */
export function seasonTotals(boils: readonly BoilOfSeason[], collections: readonly Collection[]): SeasonTotals {
  const figures = boils.flatMap((boil) => (boil.figures === null ? [] : [boil.figures]));
  const sums = SUMMED.map((name) => [name, summed(figures, name)] as const);
  const quotients = Object.entries(QUOTIENTS).map(
    ([name, [above, below]]) => [name, quotientOfSums(figures, above, below)] as const,
  );
  const byKind = kindTotals(boils);
  return {
    ...(Object.fromEntries(sums) as Record<SummedName, Summed>),
    ...(Object.fromEntries(quotients) as Record<QuotientName, Figure | null>),
    ...(byKind.length > 0 && { ratio: null }),
    by_kind: byKind,
    boils: boils.length,
    collected_litres: litresOf(collections),
    spoilt_litres: litresOf(collections.filter(({ spoilt }) => spoilt === true)),
  };
}

const kindsIn = ({ saps }: BoilOfSeason): Exclude<KindOfSeason, 'several'>[] => [
  ...new Set(saps.map((key) => (key === 'maple-early' || key === 'maple-late' ? 'maple' : key))),
];

/** A boil without a pan is of no kind that anybody knows. */
function kindOf(boil: BoilOfSeason): KindOfSeason {
  const [kind, ...others] = kindsIn(boil);
  return kind === undefined || others.length > 0 ? 'several' : kind;
}

/** In the order in which they were first boiled; empty where all boils are of one kind. */
function kindTotals(boils: readonly BoilOfSeason[]): KindTotals[] {
  const byKind = Map.groupBy(boils, kindOf);
  if (byKind.size < 2 && !boils.some((boil) => kindsIn(boil).length > 1)) return [];
  return [...byKind].map(([sap, ofKind]) => {
    const figures = ofKind.flatMap((boil) => (boil.figures === null ? [] : [boil.figures]));
    return {
      sap,
      boils: ofKind.length,
      sap_litres: summed(figures, 'sap_litres'),
      syrup_litres: summed(figures, 'syrup_litres'),
      ratio: sap === 'several' ? null : quotientOfSums(figures, ...QUOTIENTS.ratio),
    };
  });
}

const litresOf = (collections: readonly Collection[]): number =>
  collections.reduce((sum, { litres }) => sum + litres, 0);

function summed(boils: readonly BoilFigures[], name: SummedName): Summed {
  const parts = boils.flatMap((figures) => (figures[name] === null ? [] : [figures[name]]));
  const sum = parts.length === 0 ? null : sumOf(parts.map(knownOf), 'worked-out');
  return { figure: figureOf(sum, name === 'gap_sugar_kg'), boils_known: parts.length };
}

/** A figure whose range nobody knows makes the range of the sum unknown. */
function knownOf({ value, low, high, from }: Figure): Known {
  return known(value, low === null || high === null ? Infinity : (high - value) / Z80, from);
}

function quotientOfSums(boils: readonly BoilFigures[], above: Part, below: Part): Figure | null {
  const both = boils.flatMap((figures) => {
    const [a, b] = [above(figures), below(figures)];
    return a === null || b === null ? [] : [{ a, b }];
  });
  if (both.length === 0) return null;
  const sum = (side: 'a' | 'b'): Known =>
    sumOf(
      both.map((one) => one[side]),
      'worked-out',
    );
  return figureOf(quotient(sum('a'), sum('b')));
}

/** Days that have any, in order. Syrup of a boil counts on the day on which it began. */
export function seasonDays(boils: readonly BoilOfSeason[], collections: readonly Collection[]): SeasonDay[] {
  const days = new Map<string, SeasonDay>();
  const dayFor = (day: string): SeasonDay => {
    const made = days.get(day) ?? { day, sap_litres: 0, syrup_litres: 0 };
    days.set(day, made);
    return made;
  };
  for (const { day, litres } of collections) dayFor(day).sap_litres += litres;
  for (const { started, figures } of boils) {
    const litres = figures?.syrup_litres?.value ?? 0;
    if (litres > 0) dayFor(dayOf(started)).syrup_litres += litres;
  }
  return [...days.values()].sort((one, other) => (one.day < other.day ? -1 : 1));
}
