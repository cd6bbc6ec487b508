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

/** Heights for names that want these, none nearer than `apart` to the next, as near as that allows, within two edges. */
export function apartFrom(wanted: readonly number[], apart: number, top: number, bottom: number): number[] {
  const order = wanted.map((y, i) => ({ y, i })).sort((a, b) => a.y - b.y);
  let free = top;
  const down = order.map(({ y, i }) => {
    const place = Math.max(y, free);
    free = place + apart;
    return { i, place };
  });
  let limit = bottom;
  const places: number[] = [];
  for (const { i, place } of down.reverse()) {
    const kept = Math.min(place, limit);
    places[i] = kept;
    limit = kept - apart;
  }
  return places;
}
