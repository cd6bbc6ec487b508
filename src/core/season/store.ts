// The sap that was collected: how old it is, how long it keeps by common practice, and what is still in store.
import { massOfLitres } from '../pan/filter/liquid.ts';
import { sugarShares } from '../physics/sugar-shares.ts';
import type { Sap } from '../boil/entries.ts';
import type { Collection } from './records.ts';

/** `fresh`; `use-now`: its last good day; `past`: older than it keeps. */
export type KeepingState = 'fresh' | 'use-now' | 'past';

export interface CollectionShown extends Collection {
  /** Whole days from the day of collecting to today. */
  age_days: number;
  /** null for what is boiled or poured away. */
  keeping: { state: KeepingState; keeps_days: number } | null;
}

export interface StoreLevel {
  collections: number;
  /** What came in, less what was boiled or poured away. */
  litres: number;
  /** null where the strength of a part is not known. */
  sugar_kg: number | null;
  oldest_days: number | null;
  use_now_litres: number;
  past_litres: number;
}

/**
 * Days that sap keeps by how cold it is kept (°C, up to): birch begins to ferment in two to three days in the cold (common
 * practice); maple is treated like milk, within days below 4 °C (extension services), by halves as it gets warmer
 * (judgement).
 */
const BIRCH_KEEPS: readonly (readonly [upToC: number, days: number])[] = [
  [4, 3],
  [10, 1],
  [Infinity, 0],
];
const MAPLE_KEEPS: readonly (readonly [upToC: number, days: number])[] = [
  [2, 7],
  [4, 5],
  [7, 3],
  [10, 2],
  [Infinity, 1],
];
/** Sap of which nobody says how cold it is kept, °C: as in a shed in the season. */
const SUPPOSED_C = 4;

/** Whole days that sap keeps at a temperature; null for not known. */
export function keepsDays(sap: Sap, storeCelsius: number | null): number {
  const table = sugarShares(sap).sucrose < 0.5 ? BIRCH_KEEPS : MAPLE_KEEPS;
  return table.find(([upToC]) => (storeCelsius ?? SUPPOSED_C) <= upToC)![1];
}

/** Whole days between two calendar days, YYYY-MM-DD. */
export const daysBetween = (from: string, to: string): number => dayNumber(to) - dayNumber(from);

/** Days since 1 March of the year 0 in the Gregorian calendar: years that begin in March have their leap day at the end. */
function dayNumber(day: string): number {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const marchYear = month < 3 ? year - 1 : year;
  const leapDays = Math.floor(marchYear / 4) - Math.floor(marchYear / 100) + Math.floor(marchYear / 400);
  const daysBefore = Math.floor((153 * ((month + 9) % 12) + 2) / 5);
  return 365 * marchYear + leapDays + daysBefore + date;
}

/** A collection with its age on a day (YYYY-MM-DD) and, as long as it is in the store, how it keeps. */
export function collectionShown(collection: Collection, today: string): CollectionShown {
  const age = Math.max(0, daysBetween(collection.day, today));
  if (!isInStore(collection)) return { ...collection, age_days: age, keeping: null };
  const keeps = keepsDays(collection.sap ?? 'maple', collection.store_celsius ?? null);
  const state = age > keeps ? 'past' : age === keeps ? 'use-now' : 'fresh';
  return { ...collection, age_days: age, keeping: { state, keeps_days: keeps } };
}

const isInStore = ({ boil, spoilt }: Collection): boolean => boil === undefined && spoilt !== true;

/** What is in the store on a day (YYYY-MM-DD), all collections together: neither boiled nor poured away. */
export function storeLevel(collections: readonly Collection[], today: string): StoreLevel {
  const inStore = collections.filter((one) => isInStore(one)).map((one) => collectionShown(one, today));
  const litresOf = (ones: readonly Collection[]): number => ones.reduce((sum, { litres }) => sum + litres, 0);
  const inState = (wanted: KeepingState): CollectionShown[] =>
    inStore.filter(({ keeping }) => keeping?.state === wanted);
  return {
    collections: inStore.length,
    litres: litresOf(inStore),
    sugar_kg: inStore.some(({ brix }) => brix === undefined)
      ? null
      : inStore.reduce((sum, { litres, brix = 0 }) => sum + (massOfLitres(litres, brix) * brix) / 100, 0),
    oldest_days: inStore.length === 0 ? null : Math.max(...inStore.map((one) => one.age_days)),
    use_now_litres: litresOf(inState('use-now')),
    past_litres: litresOf(inState('past')),
  };
}
