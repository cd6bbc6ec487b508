// What host and screen say to each other of boils beside each other: curves, what differs, the best boil behind tonight's.
import { z } from 'zod';
import { ALIGNMENTS, type Alignment, COMPARED, type Compared } from '../core/compare/course.ts';
import type { StretchDifference } from '../core/compare/stretches.ts';

const ref = z.string().min(1).max(100);
const boil = z.string().min(1).max(200);
const points = z.number().int().min(10).max(1000);

export const MOST_COMPARED = 6;

/** Commands about kept boils beside each other; boils are read in the background the first time and kept after that. */
export const compareCommands = [
  /**
   * data: CompareView. `pan` null or left out takes each boil's last pan that was finished; `align` null the time before
   * the finish, or the clock where a pan was not finished and would not be drawn; `what` null the strength, or the temperature where the
   * strength of a pan is not known and it would not be drawn.
   */
  z.strictObject({
    ref,
    compare: z.strictObject({
      boils: z.array(boil).min(1).max(MOST_COMPARED),
      align: z.enum(ALIGNMENTS).nullable(),
      what: z.enum(COMPARED).nullable(),
      pan: z.string().min(1).max(200).nullable().optional(),
      points,
    }),
  }),
  /** A small curve of each boil of a season, in order of start; null for the newest year. data: SmallCurves */
  z.strictObject({ ref, small_curves: z.strictObject({ year: z.number().int().nullable(), points }) }),
  /** A past boil behind the live one; null takes the best: the fastest from 30 to 60 °Bx, of the same pan where there is one. Refused without a live boil. data: Ghost | null */
  z.strictObject({ ref, ghost: z.strictObject({ boil: boil.nullable(), pan: z.string().min(1).max(200), points }) }),
] as const;

const KEYS = ['compare', 'small_curves', 'ghost'] as const;
export type CompareCommand = z.infer<(typeof compareCommands)[number]>;

/** Whether a command is one of these. */
export const isCompareCommand = (command: object): command is CompareCommand => KEYS.some((key) => key in command);

/** One boil's line. */
export interface ComparedBoil {
  boil: string;
  name: string;
  /** ISO 8601 with offset. */
  started: string;
  /** Which pan is drawn, its name and its sap's key; null where none fits or the boil is not yet read. */
  pan: { id: string; name: string; sap: string } | null;
  /** Not yet read: ask again in a second. */
  isWorking: boolean;
  /** Why nothing is drawn, in a sentence; null where something is, or while it is read. */
  why: string | null;
  /**
   * Along: clock: hours since midnight of the day of the start (over 24 on the next day); before-finish: hours before
   * the finish (negative, 0 is the finish); evaporated: litres of water gone; strength: °Bx.
   */
  x: number[];
  /** Upwards: temperature and rise °C, strength °Bx, evaporation L/h; null lifts the pen. */
  y: (number | null)[];
  /** Boil time of each point, ms: a replay opens there. */
  t: number[];
}

/** How much longer or shorter a boil took than the first of the list. */
export interface Difference extends StretchDifference {
  boil: string;
}

export interface CompareView {
  /** The one that was asked for, or that was taken. */
  align: Alignment;
  /** The same. */
  what: Compared;
  boils: ComparedBoil[];
  /** All pans that were seen in any of them, each once by its id, named as in the first that has it. */
  pans: { id: string; name: string }[];
  differences: Difference[];
  /** Boils of which no stretch from one strength to another is known that the first went through, too. */
  untold: string[];
  /** Boils that are still being read. */
  working: number;
}

export interface SmallCurves {
  year: number;
  /** `x` is hours since the start, `y` the temperature, °C; the pan is the last that was finished. */
  boils: Pick<ComparedBoil, 'boil' | 'name' | 'started' | 'pan' | 'isWorking' | 'why' | 'x' | 'y'>[];
  working: number;
}

/** A past boil's pan, laid so that it is where tonight's pan is now; `t` is boil time of the live boil, ms. */
export interface Ghost {
  boil: string;
  name: string;
  started: string;
  pan: { id: string; name: string };
  /** How it was laid: where its strength was tonight's strength now, or, while that is not known, from the start. */
  alignedBy: 'strength' | 'start';
  t: number[];
  celsius: (number | null)[];
  brix: (number | null)[];
  /** When the past pan was finished, in the live boil's time, ms; null where it was not. */
  finished: number | null;
}

export type { Alignment, Compared, StretchDifference };
