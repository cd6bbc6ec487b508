// What host and screen say to each other of a replay: playing it, the whole boil at a glance, and other choices laid over it.
import { z } from 'zod';
import type { Call } from '../core/compare/calls.ts';
import type { CallDifference } from '../core/compare/call-differences.ts';
import type { Finished, FinishedBy } from '../core/compare/finishes.ts';
import type { Mark } from '../core/boil/entries.ts';

const ref = z.string().min(1).max(100);
/** ms of boil time */
const moment = z.number().int().nonnegative();

const STEPS_TO = ['mark', 'alarm', 'either'] as const;

/** Commands about the replay that is open; each but `replay` is refused while none is. */
export const replayCommands = [
  /** Opens a kept boil, or a recording that was posted to /opened and not imported; paused at `at` where one is given. */
  z.strictObject({ ref, replay: z.strictObject({ boil: z.string().min(1).max(200), at: moment.optional() }) }),
  z.strictObject({
    ref,
    replay_control: z.union([
      z.strictObject({ playing: z.boolean() }),
      z.strictObject({ speed: z.number().min(1).max(600) }),
      z.strictObject({ seek: moment }),
      /** So many ms on, or back, from the moment that was asked for last, shown or not yet. */
      z.strictObject({ by: z.number().int() }),
      /** To the next or the previous mark or raising of an alarm; it pauses there. Refused where there is none. */
      z.strictObject({ step: z.enum(['next', 'previous']), to: z.enum(STEPS_TO) }),
    ]),
  }),
  z.strictObject({ ref, replay_close: z.literal(true) }),
  /** The whole boil as far as it is read, in so many columns; data: ReplayStrip */
  z.strictObject({ ref, replay_strip: z.strictObject({ points: z.number().int().min(10).max(4000) }) }),
  /** What was known at a moment, and what came later; data: PanKnown[] */
  z.strictObject({ ref, replay_known: z.strictObject({ at: moment }) }),
  /**
   * Lays other choices over the replay: a merge patch over its header; null takes them away. The boil is read again
   * with them, from its start, and the replay shows it so. Refused in a sentence that names the field.
   */
  z.strictObject({ ref, replay_choices: z.strictObject({ patch: z.record(z.string(), z.unknown()).nullable() }) }),
  /** As it was called and as it would be called; refused without other choices. data: ReplayDifferences */
  z.strictObject({ ref, replay_differences: z.strictObject({ points: z.number().int().min(10).max(4000) }) }),
] as const;

const KEYS = [
  'replay',
  'replay_control',
  'replay_close',
  'replay_strip',
  'replay_known',
  'replay_choices',
  'replay_differences',
] as const;
export type ReplayCommand = z.infer<(typeof replayCommands)[number]>;

/** Whether a command is one of these. */
export const isReplayCommand = (command: object): command is ReplayCommand => KEYS.some((key) => key in command);

/** Of a snapshot: where the replay is. Times in ms of boil time. */
export interface ReplayNow {
  playing: boolean;
  length: number;
  title: string;
  /** ISO 8601 with offset: t = 0. */
  started: string;
  /** The strip, the marks and the alarms are known up to here; it grows to `length` soon after the replay is opened. */
  readUntil: number;
  /** The merge patch that is laid over the header; null where the boil is shown as it was. */
  choices: Record<string, unknown> | null;
  /** What was known at the moment that is shown, and what came later. */
  known: PanKnown[];
}

/** "It said 16:40, it was 16:47". Times in ms of boil time: `started` of the replay is their zero. */
export interface PanKnown {
  pan: string;
  /** When the finish was expected at that moment, and the middle 80 % of it; null where nothing was said. */
  said: { at: number; low: number | null; high: number | null } | null;
  /** The next finish of this pan after that moment; null where none came, or where the boil is not yet read so far. */
  was: { at: number; by: FinishedBy } | null;
  /** How much later it came than was said, s; negative is sooner. null where one of the two is not known. */
  later_s: number | null;
  /** It came within the range that was said; null where one of the two is not known. */
  inRange: boolean | null;
}

/** A pan over the whole boil: column i is the time from i to i + 1 times the strip's `columnMs`; null is not known. */
export interface PanStrip {
  pan: string;
  /** Least and greatest temperature, °C. */
  low: (number | null)[];
  high: (number | null)[];
  /** At the column's end: strength, °Bx; water point and temperature of the finish, °C. */
  brix: (number | null)[];
  water: (number | null)[];
  finish: (number | null)[];
}

export interface ReplayStrip {
  length: number;
  readUntil: number;
  columnMs: number;
  pans: PanStrip[];
  calls: Call[];
  /** When each was noted and when it happened; one that was taken back is left out. */
  marks: { t: number; at: number; mark: Mark }[];
  /** The program did not run. */
  gaps: { from: number; to: number }[];
  finishes: Finished[];
}

export interface ReplayDifferences {
  length: number;
  /** Both are read so far, ms. */
  readUntil: number;
  columnMs: number;
  pans: { pan: string; was: PanStrip | null; would: PanStrip | null }[];
  calls: { was: Call[]; would: Call[] };
  /** In order of time; calls that stay as they were, to a second, are left out. */
  differences: CallDifference[];
}

export type { Call, CallDifference, Finished, FinishedBy };

const OPENED = ' (opened, not in the notebook)';

/** What a recording that was opened and not imported is called, after the name in its header. */
export const openedTitle = (name: string): string => `${name}${OPENED}`;

/** Whether a title is one of those: the name of a kept boil is a person's own words. */
export const isOpenedTitle = (title: string): boolean => title.endsWith(OPENED);
