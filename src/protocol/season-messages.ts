// What host and screen say to each other of the season: commands, and the views that answer them.
import { z } from 'zod';
import type { AlarmHistory } from '../core/boil/alarm-history.ts';
import type { Header } from '../core/boil/entries.ts';
import type { BoilView } from '../core/boil/view.ts';
import type { BottlingStep } from '../core/season/bottling.ts';
import type { CollectionShown, StoreLevel } from '../core/season/store.ts';
import type { EndForm } from '../core/season/end-form.ts';
import { FIGURE_NAMES, OUTCOMES } from '../core/season/figures.ts';
import type { Balance, BoilFigures, BoilOutcome } from '../core/season/figures.ts';
import type { BoilPage, Photo } from '../core/season/records.ts';
import type { SapKindKey } from '../core/physics/sap-kinds.ts';
import type { PourCounted } from '../core/season/boil-facts.ts';
import type { KindOfSeason, KindTotals, SeasonDay, SeasonTotals } from '../core/season/season.ts';
import { boilPageSchema, collectionSchema } from './season-schemas.ts';

const ref = z.string().min(1).max(100);
const boil = z.string().min(1).max(200);
const day = z.iso.date();
const year = z.number().int().min(1900).max(2200);

const findSchema = z.strictObject({
  /** Words that name, pans, notes or page hold; each may be only begun. */
  text: z.string().max(500).optional(),
  /** Kind of sap: maple, birch … or other. */
  sap: z.string().max(100).optional(),
  /** Id or name of a pan. */
  pan: z.string().max(200).optional(),
  /** First and last day of the start, both included. */
  from: day.optional(),
  to: day.optional(),
  outcome: z.enum(OUTCOMES).optional(),
  /** Boils whose figure is not known come last. */
  sort: z.enum(['started', 'name', 'best', ...FIGURE_NAMES]).optional(),
  descending: z.boolean().optional(),
});
export type Find = z.infer<typeof findSchema>;

/** Commands about what is kept beside the boils. */
export const seasonCommands = [
  /** Everything of one boil; data: BoilPageView */
  z.strictObject({ ref, boil_page: z.strictObject({ boil }) }),
  /** The whole page in place of the one before; data: BoilPageView */
  z.strictObject({ ref, keep_page: z.strictObject({ boil, page: boilPageSchema }) }),
  /** data: CollectionsView */
  z.strictObject({ ref, collections: z.literal(true) }),
  /** A new one where the id is left out; data: CollectionsView */
  z.strictObject({ ref, keep_collection: collectionSchema.partial({ id: true }) }),
  /** data: CollectionsView */
  z.strictObject({ ref, drop_collection: z.strictObject({ id: z.string().min(1).max(200) }) }),
  /** null for the newest year that has anything; data: SeasonView */
  z.strictObject({ ref, season: z.strictObject({ year: year.nullable() }) }),
  /** data: FoundView */
  z.strictObject({ ref, find: findSchema }),
  z.strictObject({ ref, drop_photo: z.strictObject({ boil, id: z.string().min(1).max(200) }) }),
] as const;

const KEYS = [
  'boil_page',
  'keep_page',
  'collections',
  'keep_collection',
  'drop_collection',
  'season',
  'find',
  'drop_photo',
] as const;
export type SeasonCommand = z.infer<(typeof seasonCommands)[number]>;

/** Whether a command is one of these. */
export const isSeasonCommand = (command: object): command is SeasonCommand => KEYS.some((key) => key in command);

/** One boil in a list: what it was and its figures. */
export interface BoilRow {
  boil: string;
  name: string;
  /** ISO 8601 with an offset. */
  started: string;
  seconds: number;
  entries: number;
  running: boolean;
  practice: boolean;
  /** Its person wants it out of the list; absent for all others, and never of a real boil. */
  hidden?: true;
  pans: { id: string; name: string }[];
  saps: SapKindKey[];
  outcomes: BoilOutcome[];
  /** null while they are being worked out. */
  figures: BoilFigures | null;
  balance: Balance;
  /** Nobody wrote anything on its page. */
  isBlank: boolean;
}

export interface FoundView {
  boils: BoilRow[];
  /** So many boils are still being worked out: ask again in a second. */
  working: number;
}

/** Everything of one boil; what the entries tell is null while it is being worked out. */
export interface BoilPageView extends Omit<BoilRow, 'isBlank'> {
  header: Header;
  page: BoilPage;
  pours: PourCounted[] | null;
  /** Nothing tells whether any pan boiled: none was seen to, and no probe watched one. */
  boiling_never_seen: boolean;
  marks: BoilView['marks'] | null;
  history: AlarmHistory | null;
  photos: Photo[];
  steps: (BottlingStep & { ticked: string | null })[];
  form: EndForm | null;
}

export interface CollectionsView {
  /** Today at this machine, YYYY-MM-DD. */
  today: string;
  collections: CollectionShown[];
  store: StoreLevel;
}

export interface SeasonView {
  year: number;
  /** Newest first. */
  years: number[];
  totals: SeasonTotals;
  /** In order of start; practice boils are left out. */
  boils: BoilRow[];
  /** Sap collected and syrup made, each day that has any, in order. */
  days: SeasonDay[];
  /** All seasons side by side, newest first. */
  seasons: { year: number; totals: SeasonTotals }[];
  store: StoreLevel;
  working: number;
}

export type {
  Balance,
  BoilFigures,
  BoilOutcome,
  BoilPage,
  BottlingStep,
  CollectionShown,
  EndForm,
  Photo,
  PourCounted,
  SeasonDay,
  KindOfSeason,
  KindTotals,
  SeasonTotals,
  StoreLevel,
};
export type { Figure, FigureFrom, FigureName } from '../core/season/figures.ts';
export type { Collection, FuelUsed, Jars } from '../core/season/records.ts';
