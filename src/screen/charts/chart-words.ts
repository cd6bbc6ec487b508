// The words of a drawing, each in or beside what it names, none of which touches another, a mark or the curve.
import type { Chart } from 'chart.js';
import { say } from '../language/say.ts';
import { number } from '../words/amounts.ts';
import { hoursAndMinutes } from '../words/clock.ts';
import { DOT_PX, groundOf, textPx } from './chart-inks.ts';
import type { AxisRange, CurvePoints, Point } from './curve-points.ts';
import { stepRoom, stepTexts } from './curve-steps.ts';
import type { ChartText } from './curve-steps.ts';
import type { Drawing } from './drawing.ts';
import { freePlace, isFree, labelPlaces, rowsAt, wordsInRow } from './label-places.ts';
import type { Spot, Taken } from './label-places.ts';

/** Room that the names of the lines have at least, however little of the past is shown. */
const MOST_LABEL_PX = 180;
/** So much of a line is seen before its name, px. */
const LINE_START_PX = 14;
/** How high a flag's pole is, and how far its cloth reaches, px. */
export const POLE_PX = 34;
export const FLAG_PX = 12;

/** That what comes after now is only expected, at the foot; none without room. */
function aheadText(chart: Chart, { now, points }: Drawing): ChartText[] {
  const { ctx, chartArea, scales } = chart;
  const at = scales.x?.getPixelForValue(now) ?? -1;
  const word = say('chart.expected');
  const size = groundOf(ctx, word, textPx(chart.width));
  const x = at + FLAG_PX + 4;
  if (points.ahead === null || at < chartArea.left || x + size.width > chartArea.right) return [];
  return [{ word, x, y: chartArea.bottom - 3, ...size }];
}

/** A level line: its name, where it lies and from where on it is drawn, px. */
interface Level {
  word: string;
  y: number;
  from: number;
}

/** The lines within sight, the one that warns first. */
function levels({ scales: { x, y }, chartArea }: Chart, { points }: Drawing): Level[] {
  if (x === undefined || y === undefined) return [];
  const named: [string, Point[]][] = [
    [say('chart.burns'), points.scorch],
    [say('chart.done'), points.finish],
    [say('chart.boiling_water'), points.water],
  ];
  return named.flatMap(([word, line]) => {
    const first = line.find((point) => point.y !== null);
    const last = line.findLast((point) => point.y !== null)?.y ?? null;
    if (first === undefined || last === null) return [];
    const at = y.getPixelForValue(last);
    return at < chartArea.top || at > chartArea.bottom ? [] : [{ word, y: at, from: x.getPixelForValue(first.x) }];
  });
}

/** The names of the lines, each in its own line or right beside it; one that has no room there is left out. */
function lineTexts(
  chart: Chart,
  lines: readonly Level[],
  { now, points }: Drawing,
  curve: readonly Spot[],
  stands: readonly Taken[],
): ChartText[] {
  const { ctx, chartArea, scales } = chart;
  const letters = textPx(chart.width);
  const end = points.ahead === null ? chartArea.right : Math.min(chartArea.right, scales.x?.getPixelForValue(now) ?? 0);
  const wanted = lines.map(({ word, y, from }) => {
    const size = groundOf(ctx, word, letters);
    const others = lines.filter((other) => other.y !== y).map((other) => other.y);
    const left = Math.max(chartArea.left, from) + LINE_START_PX;
    const rows = rowsAt(y, size.height, others).filter((row) => row - size.height >= chartArea.top - letters / 2);
    return { ...size, rows, left, right: Math.min(chartArea.right, Math.max(end, left + MOST_LABEL_PX)) - 8 };
  });
  const places = labelPlaces(wanted, curve, stands);
  return lines.flatMap(({ word }, i) => {
    const place = places[i] ?? null;
    return place === null ? [] : [{ word, ...place }];
  });
}

/** The edges of a dot, px, which a name must leave free as it does the curve. */
function roundDot({ scales: { x, y } }: Chart, dot: Point): Spot[] {
  if (x === undefined || y === undefined || dot.y === null) return [];
  const [atX, atY] = [x.getPixelForValue(dot.x), y.getPixelForValue(dot.y)];
  return [-DOT_PX, DOT_PX].flatMap((by) => [
    { x: atX + by, y: atY },
    { x: atX, y: atY + by },
  ]);
}

/** Rows under the top at which that is tried, in heights of the text. */
const ABOVE_ROWS = [3.8, 5, 6.2];

/** How far a pan went that burnt dry: its curve leaves the axis at the top. Where it is said, clear of what stands. */
function aboveText(chart: Chart, { above }: AxisRange, drawing: Drawing, stands: readonly Taken[]): ChartText[] {
  if (above === null) return [];
  const { ctx, chartArea, scales } = chart;
  const time = hoursAndMinutes(above.x + drawing.wallOffsetMs);
  const word = say('chart.above', { most: `${number(above.y, 0)} ${drawing.unit}`, time });
  const { width, height } = groundOf(ctx, word, textPx(chart.width));
  const middle = Math.min((scales.x?.getPixelForValue(above.x) ?? 0) - width / 2, chartArea.right - width - 4);
  const x = Math.max(chartArea.left + 4, middle);
  const at = (rows: number) => ({ x, y: chartArea.top + rows * height, width, height });
  return [{ word, ...freePlace([at(2.6), ...ABOVE_ROWS.map(at)], stands) }];
}

/** Their words over the poles, of those that have the room; all stand in the list of notes. */
function flagTexts(
  chart: Chart,
  seen: readonly { x: number; word: string }[],
  curve: readonly Spot[],
  stands: readonly Taken[],
): ChartText[] {
  const { ctx, chartArea } = chart;
  const letters = textPx(chart.width);
  const sized = seen.map((each) => ({ ...each, ...groundOf(ctx, each.word, letters) }));
  const row = { y: chartArea.bottom - POLE_PX - 2, height: letters + 2, left: chartArea.left, right: chartArea.right };
  const places = wordsInRow(sized, row, { curve, stands });
  return sized.flatMap(({ word, width, height }, i) => {
    const place = places[i] ?? null;
    return place === null ? [] : [{ word, ...place, width, height }];
  });
}

/** No two spots of the curve lie further apart, px: no text has room between them. */
const SPOT_PX = 8;

/** Where the curve and the middle of what is expected run, px, without a gap in between. */
function curveSpots({ scales: { x, y }, chartArea }: Chart, points: CurvePoints): Spot[] {
  if (x === undefined || y === undefined) return [];
  const held = (px: number): number => Math.min(chartArea.bottom + 99, Math.max(chartArea.top - 99, px));
  return [points.low, points.high, points.ahead?.middle ?? []].flatMap((line) => {
    let before: Spot | null = null;
    return line.flatMap((point) => {
      if (point.y === null) {
        before = null;
        return [];
      }
      const spot = { x: x.getPixelForValue(point.x), y: held(y.getPixelForValue(point.y)) };
      const from = before ?? spot;
      before = spot;
      const steps = Math.ceil(Math.max(Math.abs(spot.x - from.x), Math.abs(spot.y - from.y)) / SPOT_PX);
      const between = Array.from({ length: Math.max(0, steps - 1) }, (_, i) => {
        const share = (i + 1) / steps;
        return { x: from.x + (spot.x - from.x) * share, y: from.y + (spot.y - from.y) * share };
      });
      return [...between, spot];
    });
  });
}

/** All words of a drawing, none of which touches another, a mark or the curve; of what matters most first. */
export function textsOf(
  chart: Chart,
  range: AxisRange,
  drawing: Drawing,
  { spots, flagged }: { spots: readonly (Spot | null)[]; flagged: readonly { x: number; word: string }[] },
): ChartText[] {
  const curve = [...curveSpots(chart, drawing.points), ...drawing.dots.flatMap((dot) => roundDot(chart, dot))];
  const poles = flagged.map(({ x }) => ({ x, y: chart.chartArea.bottom, width: FLAG_PX, height: POLE_PX }));
  const marks = [...stepRoom(spots), ...poles];
  const lines = levels(chart, drawing);
  const names = lineTexts(chart, lines, drawing, curve, marks);
  const heights = lines.map(({ y }) => y);
  const steps = stepTexts(chart, drawing, spots, { curve, lines: heights, stands: [...marks, ...names] });
  const texts = [...names, ...steps, ...aboveText(chart, range, drawing, [...marks, ...names, ...steps])];
  const words = flagTexts(chart, flagged, curve, [...stepRoom(spots), ...texts]);
  const expected = aheadText(chart, drawing).filter((each) => isFree(each, [...marks, ...texts, ...words]));
  return [...texts, ...words, ...expected];
}
