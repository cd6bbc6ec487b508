// The drawing of one pan's curve with chart.js; the only module that makes anything of that library.
import { Chart, Filler, LineController, LineElement, LinearScale, PointElement } from 'chart.js';
import type { ChartDataset, Plugin } from 'chart.js';
import { OUTLINES, OUTLINE_SIZE } from '../alarms/alarm-shape.tsx';
import type { Priority } from '../client/types.ts';
import { say } from '../language/say.ts';
import { number } from '../words/amounts.ts';
import { hoursAndMinutes } from '../words/clock.ts';
import { DOT_PX, FACE, grounded, groundOf, hatch, inksOf, labelFont, rimmed, stipple, textPx } from './chart-inks.ts';
import type { Inks } from './chart-inks.ts';
import { axisRange } from './curve-points.ts';
import type { AxisRange, CurvePoints, Point } from './curve-points.ts';
import { finishStep, stepRoom, stepSpots, stepTexts } from './curve-steps.ts';
import type { ChartText, Step } from './curve-steps.ts';
import { freePlace, isFree, labelPlaces, rowsAt, wordsInRow } from './label-places.ts';
import type { Spot, Taken } from './label-places.ts';
import { tickMoments } from './time-window.ts';

Chart.register(LineController, LineElement, PointElement, LinearScale, Filler);

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

export interface CurveChart {
  draw(drawing: Drawing): void;
  destroy(): void;
}

/** Room that the names of the lines have at least, however little of the past is shown. */
const MOST_LABEL_PX = 180;
/** So much of a line is seen before its name, px. */
const LINE_START_PX = 14;
type Line = ChartDataset<'line', { x: number; y: number | null }[]>;

function datasets({ points, dots, ghost }: Drawing, inks: Inks, context: CanvasRenderingContext2D): Line[] {
  const base = { parsing: false as const, pointRadius: 0, borderWidth: 4, spanGaps: false, tension: 0 };
  return [
    { ...base, data: points.water, borderColor: inks.water, borderDash: [2, 6] },
    { ...base, data: points.finish, borderColor: inks.finish, borderDash: [14, 7] },
    {
      ...base,
      data: points.scorch,
      borderColor: inks.scorch,
      backgroundColor: hatch(context, inks.scorch),
      fill: 'end',
    },
    { ...base, data: points.low, borderColor: inks.reading, borderWidth: 6 },
    { ...base, data: points.high, borderColor: inks.reading, backgroundColor: inks.band, fill: '-1', borderWidth: 6 },
    ...fan(points.ahead, inks, context, base),
    ...(ghost === null
      ? []
      : [{ ...base, data: ghost, order: 1, borderColor: inks.muted, borderWidth: 2, borderDash: [3, 3] }]),
    {
      ...base,
      data: dots,
      // Over the curve: the library draws the last first.
      order: -1,
      showLine: false,
      pointRadius: DOT_PX,
      pointBorderColor: inks.ground,
      pointBorderWidth: 2,
      pointBackgroundColor: inks.reading,
    },
  ];
}

/** What is expected: thin edges with dots between, and a dashed line down its middle. */
function fan(ahead: CurvePoints['ahead'], inks: Inks, context: CanvasRenderingContext2D, base: Partial<Line>): Line[] {
  if (ahead === null) return [];
  const edge = { ...base, borderColor: inks.reading, borderWidth: 2 };
  return [
    { ...edge, data: ahead.low },
    { ...edge, data: ahead.high, backgroundColor: stipple(context, inks.reading), fill: '-1' },
    { ...edge, data: ahead.middle, borderWidth: 4, borderDash: [12, 8] },
  ];
}

/** Where now is, a line from top to foot. */
function nowLine({ ctx, chartArea, scales }: Chart, inks: Inks, { now, points }: Drawing): void {
  const x = scales.x?.getPixelForValue(now) ?? -1;
  if (points.ahead === null || x < chartArea.left || x > chartArea.right) return;
  ctx.fillStyle = inks.muted;
  ctx.fillRect(x - 1, chartArea.top, 2, chartArea.bottom - chartArea.top);
}

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

const CALL_PX = 18;

/** The sign of its priority at the top for each call, and a thin line down from it. */
function callSigns(chart: Chart, inks: Inks, list: readonly CallSign[]): void {
  const { ctx, chartArea, scales } = chart;
  for (const { x: at, priority } of list) {
    const x = scales.x?.getPixelForValue(at) ?? -1;
    if (x < chartArea.left || x > chartArea.right) continue;
    const top = chartArea.top - CALL_PX - 1;
    ctx.fillStyle = priority === 'high' ? inks.scorch : inks.ink;
    ctx.save();
    ctx.translate(x - CALL_PX / 2, top);
    ctx.scale(CALL_PX / OUTLINE_SIZE, CALL_PX / OUTLINE_SIZE);
    ctx.fill(new Path2D(OUTLINES[priority]));
    ctx.restore();
    ctx.fillRect(x - 0.5, top + CALL_PX - 1, 1, chartArea.bottom - top - CALL_PX + 1);
  }
}

/** Over the figures of the temperature axis, the uppermost of which may stand half above the lines. */
function unitLabel(chart: Chart, inks: Inks, unit: string): void {
  chart.ctx.textAlign = 'right';
  rimmed(chart.ctx, inks, unit, chart.chartArea.left - 10, chart.chartArea.top - 0.6 * textPx(chart.width));
  chart.ctx.textAlign = 'left';
}

/** How high a flag's pole is, and how far its cloth reaches, px. */
const POLE_PX = 34;
const FLAG_PX = 12;

/** Where the marks of a drawing stand along the foot, px. */
function flagSpots({ chartArea, scales }: Chart, list: readonly Flag[]): { x: number; word: string }[] {
  return list.flatMap(({ x: at, word }) => {
    const x = scales.x?.getPixelForValue(at) ?? -1;
    return x < chartArea.left || x > chartArea.right ? [] : [{ x, word }];
  });
}

/** The marks along the foot. */
function drawFlags({ ctx, chartArea }: Chart, inks: Inks, seen: readonly { x: number }[]): void {
  const top = chartArea.bottom - POLE_PX;
  ctx.fillStyle = inks.ink;
  for (const { x } of seen) {
    ctx.fillRect(x - 1, top, 2, POLE_PX);
    ctx.beginPath();
    ctx.moveTo(x, top);
    ctx.lineTo(x + FLAG_PX, top + 5);
    ctx.lineTo(x, top + 10);
    ctx.fill();
  }
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
function textsOf(
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

/** Makes the chart on a canvas; it draws what it is given. `placed` hears where the steps stand, at every drawing. */
export function curveChart(canvas: HTMLCanvasElement, placed: (spots: (Spot | null)[]) => void): CurveChart {
  let current: Drawing | null = null;
  let range: AxisRange = { least: 0, greatest: 1, above: null };
  let inks = inksOf(canvas);

  const overlay: Plugin<'line'> = {
    id: 'labels-and-flags',
    afterDatasetsDraw(chart) {
      if (current === null) return;
      chart.ctx.save();
      chart.ctx.font = `600 ${textPx(chart.width)}px ${FACE}`;
      chart.ctx.textAlign = 'left';
      chart.ctx.textBaseline = 'bottom';
      unitLabel(chart, inks, current.unit);
      const flagged = flagSpots(chart, current.flags);
      const foot = chart.chartArea.bottom - POLE_PX - textPx(chart.width) - 6;
      const spots = stepSpots(chart, current, foot);
      const texts = textsOf(chart, range, current, { spots, flagged });
      callSigns(chart, inks, current.calls);
      nowLine(chart, inks, current);
      drawFlags(chart, inks, flagged);
      for (const { word, ...place } of texts) grounded(chart.ctx, inks, word, place);
      finishStep(chart, inks, current);
      placed(spots);
      chart.ctx.restore();
    },
  };

  const chart = new Chart<'line', { x: number; y: number | null }[]>(canvas, {
    type: 'line',
    data: { datasets: [] },
    plugins: [overlay],
    options: {
      animation: false,
      parsing: false,
      normalized: true,
      responsive: true,
      maintainAspectRatio: false,
      events: [],
      // Over the topmost figure stands the unit.
      layout: { padding: { top: 48 } },
      scales: {
        x: {
          type: 'linear',
          ticks: { font: labelFont, maxRotation: 0, autoSkip: false },
          afterBuildTicks(axis) {
            const shift = current?.wallOffsetMs ?? 0;
            const most = Math.max(2, Math.floor(axis.chart.width / 110));
            axis.ticks = tickMoments(axis.min + shift, axis.max + shift, most).map((wall) => ({
              value: wall - shift,
              label: hoursAndMinutes(wall),
            }));
          },
          afterTickToLabelConversion(axis) {
            const shift = current?.wallOffsetMs ?? 0;
            for (const tick of axis.ticks) tick.label = hoursAndMinutes(tick.value + shift);
          },
        },
        y: { type: 'linear', ticks: { font: labelFont, maxTicksLimit: 6, precision: 0, includeBounds: false } },
      },
    },
  });

  function paint(): void {
    inks = inksOf(canvas);
    for (const axis of [chart.options.scales?.x, chart.options.scales?.y]) {
      if (axis?.ticks !== undefined) axis.ticks.color = inks.muted;
      if (axis !== undefined) axis.grid = { color: inks.grid };
    }
  }

  return {
    draw(drawing) {
      current = drawing;
      paint();
      range = axisRange(drawing.points, drawing.usual);
      Object.assign(chart.options.scales?.x ?? {}, { min: drawing.from, max: drawing.to });
      Object.assign(chart.options.scales?.y ?? {}, { min: range.least, max: range.greatest });
      chart.data.datasets = datasets(drawing, inks, chart.ctx);
      chart.update('none');
    },
    destroy: () => chart.destroy(),
  };
}
