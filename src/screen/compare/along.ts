// What stands along a comparison of boils, and its ticks in the same unit.
import { HOUR_MS } from '../../core/quantities/time.ts';
import type { Alignment } from '../../protocol/compare-messages.ts';
import type { Point } from '../charts/curve-points.ts';
import { extentOf } from '../charts/lines-scale.ts';
import type { Extent } from '../charts/lines-scale.ts';
import { niceTicks } from '../charts/nice-ticks.ts';
import { tickMoments } from '../charts/time-window.ts';
import type { Settings } from '../client/types.ts';
import { say } from '../language/say.ts';
import { alongTitle, beforeFinish, hourOfDay, isInMinutes, MINUTES_AN_HOUR } from '../words/compare-words.ts';

interface Tick {
  /** Hours. */
  at: number;
  word: string;
}

interface Along {
  title: string;
  /** Round numbers where it is left out. */
  ticks?: (extent: Extent, most: number) => Tick[];
}

const ticksBefore =
  (each: number) =>
  ({ least, greatest }: Extent, most: number): Tick[] =>
    niceTicks(least / each, greatest / each, most).map((at) => ({ at: at * each, word: beforeFinish(at) }));

const clockTicks = ({ least, greatest }: Extent, most: number): Tick[] =>
  tickMoments(least * HOUR_MS, greatest * HOUR_MS, most).map((ms) => ({
    at: ms / HOUR_MS,
    word: hourOfDay(ms / HOUR_MS),
  }));

/** Time before the finish goes by minutes where what is drawn is short: what has no height is no part of the chart. */
export function alongOf(align: Alignment, lines: readonly { points: readonly Point[] }[], settings: Settings): Along {
  const title = alongTitle(align, settings);
  if (align === 'clock') return { title, ticks: clockTicks };
  if (align !== 'before-finish') return { title };
  const drawn = extentOf(lines.flatMap(({ points }) => points.flatMap(({ x, y }) => (y === null ? [] : [x]))));
  if (drawn === null || !isInMinutes(drawn.least, drawn.greatest)) return { title, ticks: ticksBefore(1) };
  return { title: say('compare.by.minutes_before_finish'), ticks: ticksBefore(1 / MINUTES_AN_HOUR) };
}
