// What a person writes down beside the boils of a season: sap that was collected, and the page of each boil. What is absent is not known.
import type { Sap } from '../boil/entries.ts';

/** Sap that was brought in on one day from one group of trees. */
export interface Collection {
  id: string;
  /** The calendar day at the trees, YYYY-MM-DD. */
  day: string;
  /** Litres at 20 °C. */
  litres: number;
  brix?: number | undefined;
  sap?: Sap | undefined;
  /** The group of trees, in the person's own words. */
  trees?: string | undefined;
  /** Where it is kept until it is boiled, in the person's own words. */
  stored?: string | undefined;
  /** How cold it is kept, °C. */
  store_celsius?: number | undefined;
  /** The boil that took it, by id; absent while it is in store. */
  boil?: string | undefined;
  /** It was poured away instead. */
  spoilt?: boolean | undefined;
  note?: string | undefined;
}

/** Syrup filled into jars of one size. */
export interface Jars {
  /** What one holds, litres. */
  litres: number;
  count: number;
  lot?: string | undefined;
  /** YYYY-MM-DD */
  filled?: string | undefined;
}

/** Fuel that the boil took: an amount, or what a cylinder weighed before and after. */
export interface FuelUsed {
  kind: 'propane' | 'wood' | 'electric' | 'other';
  kg?: number | undefined;
  before_kg?: number | undefined;
  after_kg?: number | undefined;
  /** Cords of wood, 3.62 m³ stacked. */
  cords?: number | undefined;
  kwh?: number | undefined;
  /** In the person's own money, for all of it. */
  price?: number | undefined;
}

/** One raising of an alarm, as AlarmHistory names it. */
export interface RaisingName {
  alarm: string;
  pan: string | null;
  port: string | null;
  /** ms of boil time */
  raised: number;
}

/** What a person writes about one boil; it can be changed at any time, also long after the boil. */
export interface BoilPage {
  /** What the boil is called since; its recording keeps the name that it began with. */
  name?: string | undefined;
  /** All the sap that went in, where the marks do not tell it or tell it wrong. */
  sap?: { litres?: number | undefined; brix?: number | undefined } | undefined;
  syrup?: { litres?: number | undefined; kg?: number | undefined; brix?: number | undefined } | undefined;
  /** Sugar known to be lost: spilt, burnt, stuck, kg. */
  lost_kg?: number | undefined;
  jars?: Jars[] | undefined;
  fuel?: FuelUsed[] | undefined;
  /** Money for jars, filters and the like. */
  other_costs?: number | undefined;
  taste?: string | undefined;
  colour?: string | undefined;
  /** What to do otherwise next time. */
  next_time?: string | undefined;
  notes?: string | undefined;
  /** Steps of finishing and bottling that were ticked, with the time (ISO 8601). */
  steps?: Record<string, string> | undefined;
  /** Alarms that were of no use by the person's word, said after the boil. */
  no_use?: RaisingName[] | undefined;
  /** Left out of the list of boils, and brought back by the same word; only a practice boil that is over. */
  hidden?: boolean | undefined;
}

export interface Photo {
  /** Unique in its boil. */
  id: string;
  type: 'image/jpeg' | 'image/png' | 'image/webp';
  bytes: number;
  /** ISO 8601, when it was added. */
  added: string;
  caption: string;
}
