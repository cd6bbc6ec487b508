// Where the lines of a chart lie: its scales, its paths, and the places of the names at their ends.
import type { Point } from './curve-points.ts';

export interface Extent {
  least: number;
  greatest: number;
}

/** Of all points that are known; null where none is. */
export function extentOf(values: readonly (number | null)[]): Extent | null {
  let extent: Extent | null = null;
  for (const value of values) {
    if (value === null) continue;
    extent ??= { least: value, greatest: value };
    extent.least = Math.min(extent.least, value);
    extent.greatest = Math.max(extent.greatest, value);
  }
  return extent;
}

/** As much of an extent as lies within another; the extent itself where none of it does. */
export function heldWithin(extent: Extent, within: Extent | undefined): Extent {
  if (within === undefined || extent.greatest < within.least || extent.least > within.greatest) return extent;
  return {
    least: Math.max(extent.least, within.least),
    greatest: Math.min(extent.greatest, within.greatest),
  };
}

/** With room over and under, so that no line lies on the frame; a level line gets a height, too. */
export function roomy({ least, greatest }: Extent): Extent {
  const room = Math.max((greatest - least) * 0.06, Math.abs(greatest) * 0.01, 0.1);
  return { least: least - room, greatest: greatest + room };
}

export type Place = (value: number) => number;

/** From an extent to px. */
export const placeIn = ({ least, greatest }: Extent, from: number, to: number): Place => {
  const span = Math.max(greatest - least, Number.EPSILON);
  return (value) => from + ((value - least) / span) * (to - from);
};

/** An SVG path; a null lifts the pen. */
export function linePath(points: readonly Point[], placeX: Place, placeY: Place): string {
  let pen = 'M';
  let path = '';
  for (const { x, y } of points) {
    if (y === null) pen = 'M';
    else {
      path += `${pen}${placeX(x).toFixed(1)} ${placeY(y).toFixed(1)}`;
      pen = 'L';
    }
  }
  return path;
}

export interface Named {
  x: number;
  y: number;
}

/** Heights for the names of ends, px: no two that stand beside each other within `apart`, and none under `bottom`. */
export function apartFrom(ends: readonly Named[], apart: number, bottom: number): number[] {
  const order = ends.map((end, i) => ({ ...end, i })).sort((a, b) => b.y - a.y);
  const heights: number[] = [];
  for (const { x, y, i } of order) {
    const beside = order.filter((each) => heights[each.i] !== undefined && Math.abs(each.x - x) < 2 * apart);
    // From below upwards: each stands over the highest of those beside it that it would touch.
    const over = Math.min(...beside.map((each) => (heights[each.i] ?? bottom) - apart));
    heights[i] = Math.min(y, bottom, over);
  }
  return heights;
}
