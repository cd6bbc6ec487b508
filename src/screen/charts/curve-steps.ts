// Draws on a chart where a person's word changed what is believed: old and new strength, and the finish as it was and is.
import type { Chart } from 'chart.js';
import { DOT_PX, groundOf, textPx } from './chart-inks.ts';
import type { Inks } from './chart-inks.ts';
import { valueAt } from './curve-points.ts';
import type { CurvePoints } from './curve-points.ts';
import { besideMark } from './label-places.ts';
import type { Spot, Taken } from './label-places.ts';

/** Where a person's word changed what is believed. */
export interface Step {
  /** ms of boil time. */
  x: number;
  /** Such as "55 → 58 °Bx"; null where the strength stayed. */
  word: string | null;
  /** The chosen one's finish as it was and as it is, ms of boil time; null for all others. */
  finish: [before: number | null, after: number | null] | null;
}

/** Half of a step's mark, px. */
const STEP_PX = 12;

interface Stepped {
  /** In order of time. */
  steps: Step[];
  points: CurvePoints;
}

/**
 * Where each step stands on the curve, px; null for one that is out of sight. Where the curve is not known, or runs under
 * what is shown, steps stand over the `foot`, px, those that are close together over each other.
 */
export function stepSpots(chart: Chart, { steps, points }: Stepped, foot: number): (Spot | null)[] {
  const { chartArea, scales } = chart;
  const inRow: Spot[] = [];
  return steps.map(({ x: at }) => {
    const x = scales.x?.getPixelForValue(at) ?? -1;
    if (x < chartArea.left || x > chartArea.right) return null;
    const value = valueAt(points, at);
    const y = value === null ? chartArea.bottom : (scales.y?.getPixelForValue(value) ?? chartArea.bottom);
    if (y < chartArea.bottom) return { x, y: Math.max(chartArea.top, y) };
    const under = inRow.filter((each) => x - each.x < 2 * STEP_PX).map((each) => each.y - 2 * STEP_PX);
    const spot = { x, y: Math.max(chartArea.top, Math.min(foot - STEP_PX, ...under)) };
    inRow.push(spot);
    return spot;
  });
}

/** The room that the marks of the steps take. */
export const stepRoom = (spots: readonly (Spot | null)[]): Taken[] =>
  spots.flatMap((spot): Taken[] =>
    spot === null ? [] : [{ x: spot.x - STEP_PX, y: spot.y + STEP_PX, width: 2 * STEP_PX, height: 2 * STEP_PX }],
  );

/** Words of a chart and where they stand. */
export interface ChartText extends Taken {
  word: string;
}

/** Old and new strength beside its mark and clear of what is drawn, the latest first: one that has no room is left out. */
export function stepTexts(
  chart: Chart,
  { steps }: Stepped,
  spots: readonly (Spot | null)[],
  { curve, lines, stands }: { curve: readonly Spot[]; lines: readonly number[]; stands: readonly Taken[] },
): ChartText[] {
  const { ctx, chartArea } = chart;
  const taken = [...stands];
  return [...steps.entries()].reverse().flatMap(([i, { word }]): ChartText[] => {
    const spot = spots[i];
    if (spot === null || spot === undefined || word === null) return [];
    const size = groundOf(ctx, word, textPx(chart.width));
    const place = besideMark(spot, size, chartArea, { curve, lines, stands: taken });
    if (place === null) return [];
    taken.push(place);
    return [{ word, ...place }];
  });
}

/** The finish of the chosen step on the line of the finish: a hollow ring where it was, a full one where it is. */
export function finishStep(chart: Chart, inks: Inks, { steps, points }: Stepped): void {
  const finish = steps.find((step) => step.finish !== null)?.finish ?? null;
  const line = points.finish.findLast((point) => point.y !== null)?.y ?? null;
  const { ctx, chartArea, scales } = chart;
  const { x, y } = scales;
  if (finish === null || line === null || x === undefined || y === undefined) return;
  const height = y.getPixelForValue(line);
  const [was, is] = finish.map((at) =>
    at === null
      ? null
      : Math.min(chartArea.right - DOT_PX - 2, Math.max(chartArea.left + DOT_PX, x.getPixelForValue(at))),
  );
  ctx.strokeStyle = inks.ink;
  ctx.lineWidth = 3;
  if (typeof was === 'number' && typeof is === 'number') {
    ctx.beginPath();
    ctx.moveTo(was, height);
    ctx.lineTo(is, height);
    ctx.stroke();
  }
  for (const [at, fill] of [
    [was, inks.ground],
    [is, inks.ink],
  ] as const) {
    if (typeof at !== 'number') continue;
    ctx.beginPath();
    ctx.arc(at, height, DOT_PX, 0, 2 * Math.PI);
    ctx.fillStyle = fill;
    ctx.fill();
    ctx.stroke();
  }
}
