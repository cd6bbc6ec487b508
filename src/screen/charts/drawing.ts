// What is drawn of one pan: its curve, what was noted and called, and how the times are shown.
import type { Priority } from '../client/types.ts';
import type { CurvePoints, Point } from './curve-points.ts';
import type { Step } from './curve-steps.ts';

export interface Flag {
  /** ms of boil time. */
  x: number;
  word: string;
}

export interface CallSign {
  /** ms of boil time. */
  x: number;
  priority: Priority;
}

export interface Drawing {
  points: CurvePoints;
  from: number;
  to: number;
  /** Where what was seen ends and what is expected begins, ms of boil time. */
  now: number;
  flags: Flag[];
  /** When the pan was called, in order of time. */
  calls: CallSign[];
  /** The water point and the finish, for where nothing else is known; in the unit of the points. */
  usual: number[];
  /** What was read by hand, each a dot. */
  dots: Point[];
  /** In order of time. */
  steps: Step[];
  /** ms that turn boil time into the time of day shown. */
  wallOffsetMs: number;
  /** A past boil behind it; null where none is wanted. */
  ghost: Point[] | null;
  /** Such as "°C". */
  unit: string;
}
