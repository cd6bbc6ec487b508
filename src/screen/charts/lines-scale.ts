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

/** How far under `within` a pan that is kept below a boil may lie, as a share of its span. */
const UNDER_SHARE = 0.6;

/**
 * What of a line a chart spans: what lies within, with what lies right under it where the line mostly runs there, for no
 * line may be out of sight; all of it where nothing lies in either. Null where nothing of it is known.
 */
export function seenOf(values: readonly (number | null)[], within: Extent | undefined): Extent | null {
  const all = extentOf(values);
  if (all === null || within === undefined) return all;
  const known = values.filter((value) => value !== null);
  const inside = known.filter((value) => value >= within.least && value <= within.greatest);
  const floor = within.least - UNDER_SHARE * (within.greatest - within.least);
  const under = known.filter((value) => value < within.least && value >= floor);
  return extentOf(under.length > inside.length ? [...inside, ...under] : inside) ?? all;
}

/** Where a line is seen last, for the number at its end; its very end where it is never seen. */
export function lastSeen(points: readonly Point[], { least, greatest }: Extent): Named | null {
  const known = points.flatMap(({ x, y }) => (y === null ? [] : [{ x, y }]));
  return known.findLast(({ y }) => y >= least && y <= greatest) ?? known.at(-1) ?? null;
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

/** Heights for the names of ends, px: no two that stand beside each other within `apart`, as long as `top` to `bottom` has the room. */
export function apartFrom(ends: readonly Named[], apart: number, top: number, bottom: number): number[] {
  const heights = ends.map(({ y }) => y);
  const isBeside = (one: number, other: number): boolean =>
    Math.abs((ends[one]?.x ?? 0) - (ends[other]?.x ?? 0)) < 2 * apart;
  const order = [...ends.keys()].sort((a, b) => (ends[b]?.y ?? 0) - (ends[a]?.y ?? 0));
  const of = (i: number): number => heights[i] ?? bottom;
  // From below upwards: each stands over the highest of those beside it that it would touch.
  order.forEach((i, n) => {
    const under = order.slice(0, n).filter((each) => isBeside(each, i));
    heights[i] = Math.min(of(i), bottom, ...under.map((each) => of(each) - apart));
  });
  // What stands over the top then comes down again, and pushes those under it.
  order.reverse().forEach((i, n) => {
    const over = order.slice(0, n).filter((each) => isBeside(each, i));
    heights[i] = Math.max(of(i), top, ...over.map((each) => of(each) + apart));
  });
  return heights;
}
