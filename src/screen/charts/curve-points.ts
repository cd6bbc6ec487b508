// A curve as the host gives it, turned into the points of a chart; the scale covers what matters and no more.
import type { Curve } from '../client/types.ts';

export interface Point {
  x: number;
  y: number | null;
}

export interface CurvePoints {
  low: Point[];
  high: Point[];
  water: Point[];
  finish: Point[];
  scorch: Point[];
  /** What is expected from now on, a fan between its two edges; null where that is not known. */
  ahead: Record<'low' | 'middle' | 'high', Point[]> | null;
}

/** Points in the unit that `shown` makes of °C; a null stays a hole in the line. */
export function curvePoints(curve: Curve, shown: (celsius: number) => number): CurvePoints {
  const line = (values: (number | null)[], times = curve.t): Point[] =>
    times.map((x, i) => {
      const value = values[i] ?? null;
      return { x, y: value === null ? null : shown(value) };
    });
  const { ahead } = curve;
  return {
    low: line(curve.low),
    high: line(curve.high),
    water: drawnOn(line(curve.water), ahead),
    finish: drawnOn(line(curve.finish), ahead),
    scorch: drawnOn(line(curve.scorch), ahead),
    ahead: ahead && {
      low: line(ahead.low, ahead.t),
      middle: line(ahead.middle, ahead.t),
      high: line(ahead.high, ahead.t),
    },
  };
}

/** A curve without a reading for so long, ms, is not known to be anywhere. */
const NEAR_MS = 300_000;

/** Where the curve stood at a moment, in its own unit, by the reading nearest to it; null where none is near. */
export function valueAt({ low, high }: CurvePoints, at: number): number | null {
  let near: { away: number; value: number } | null = null;
  for (const [i, { x, y }] of low.entries()) {
    const away = Math.abs(x - at);
    const top = high[i]?.y ?? null;
    if (y !== null && top !== null && away <= (near?.away ?? NEAR_MS)) near = { away, value: (y + top) / 2 };
  }
  return near?.value ?? null;
}

/** A limit stands in what is ahead as it last stood. */
function drawnOn(line: Point[], ahead: Curve['ahead']): Point[] {
  const y = line.findLast((point) => point.y !== null)?.y ?? null;
  const [from, to] = [ahead?.t[0], ahead?.t.at(-1)];
  return y === null || from === undefined || to === undefined ? line : [...line, { x: from, y }, { x: to, y }];
}

function values(points: Point[]): number[] {
  return points.flatMap((point) => (point.y === null ? [] : [point.y]));
}

/** A pan that warms up or has cooled leaves the chart this far below the water point, °C or °F, so that the rest stays legible. */
const SHOWN_BELOW_WATER = 20;

/** A pan that burns dry leaves it this far above the line where it burns; how far it went is written there. */
const SHOWN_ABOVE_BURNS = 12;

/** Room around the water point and the finish where nothing else is shown, °C or °F. */
const ROOM_ALONE = 5;

export interface AxisRange {
  least: number;
  greatest: number;
  /** The hottest reading that lies above the axis; null where all are on it. */
  above: { x: number; y: number } | null;
}

/**
 * The temperature axis: the readings and the lines, but for what is far below a boil and far above where it burns. Where
 * nothing is known it spans `usual`, in the unit of the points: the water point and the finish.
 */
export function axisRange(points: CurvePoints, usual: readonly number[]): AxisRange {
  const readings = [...values(points.low), ...values(points.high)];
  const lines = [...values(points.water), ...values(points.finish), ...values(points.scorch)];
  if (readings.length + lines.length === 0)
    return { least: Math.min(...usual) - ROOM_ALONE, greatest: Math.max(...usual) + ROOM_ALONE, above: null };
  const all = [...readings, ...lines];
  const floor = Math.min(...values(points.water)) - SHOWN_BELOW_WATER;
  const isCold = readings.every((value) => value < floor);
  const lowest = isCold ? Math.min(...all) : Math.max(floor, Math.min(...all));
  const ceiling = Math.max(...values(points.scorch)) + SHOWN_ABOVE_BURNS;
  const isHot = readings.length > 0 && readings.every((value) => value > ceiling);
  const isAbove = Number.isFinite(ceiling) && !isHot && Math.max(...all) > ceiling;
  const highest = isAbove ? ceiling : Math.max(...all);
  const room = Math.max(0.5, (highest - lowest) * 0.06);
  return { least: lowest - room, greatest: highest + room, above: isAbove ? hottest(points.high) : null };
}

function hottest(points: Point[]): { x: number; y: number } | null {
  return points.reduce<{ x: number; y: number } | null>(
    (most, { x, y }) => (y === null || (most !== null && most.y >= y) ? most : { x, y }),
    null,
  );
}
