// The drawing of one pan's curve with chart.js; the only module that makes anything of that library.
import { Chart, Filler, LineController, LineElement, LinearScale, PointElement } from 'chart.js';
import type { ChartDataset, Plugin } from 'chart.js';
import { OUTLINES, OUTLINE_SIZE } from '../alarms/alarm-shape.tsx';
import type { Priority } from '../client/types.ts';
import { say } from '../language/say.ts';
import { number } from '../words/amounts.ts';
import { hoursAndMinutes } from '../words/clock.ts';
import { DOT_PX, FACE, hatch, inksOf, labelFont, rimmed, stipple, textPx } from './chart-inks.ts';
import type { Inks } from './chart-inks.ts';
import { axisRange } from './curve-points.ts';
import type { AxisRange, CurvePoints, Point } from './curve-points.ts';
import { finishStep, stepSpots, stepTexts } from './curve-steps.ts';
import type { Step, StepText } from './curve-steps.ts';
import { freePlace, labelPlaces, wordsInRow } from './label-places.ts';
import type { Spot, Taken } from './label-places.ts';
import { apartFrom } from './lines-scale.ts';
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

/** Where now is, and that what comes after it is only expected; under the words of the flags. */
function aheadLabel(chart: Chart, inks: Inks, { now, points }: Drawing): void {
  const { ctx, chartArea, scales } = chart;
  const x = scales.x?.getPixelForValue(now) ?? -1;
  if (points.ahead === null || x < chartArea.left || x > chartArea.right) return;
  ctx.fillStyle = inks.muted;
  ctx.fillRect(x - 1, chartArea.top, 2, chartArea.bottom - chartArea.top);
  const word = say('chart.expected');
  if (x + ctx.measureText(word).width + FLAG_PX + 8 <= chartArea.right)
    rimmed(ctx, inks, word, x + FLAG_PX + 4, chartArea.bottom - 4);
}

/** The one that warns first: where two have no room beside each other, the later one is left out. */
function lineLabels(chart: Chart, inks: Inks, { points, now, dots }: Drawing, stands: readonly Taken[]): void {
  const { ctx, chartArea, scales } = chart;
  const { x, y } = scales;
  if (x === undefined || y === undefined) return;
  const height = textPx(chart.width) + 3;
  const named: [string, Point[]][] = [
    [say('chart.burns'), points.scorch],
    [say('chart.done'), points.finish],
    [say('chart.boiling_water'), points.water],
  ];
  const lines = named.flatMap(([word, line]) => {
    const last = line.findLast((point) => point.y !== null)?.y ?? null;
    return last === null ? [] : [{ word, x: 0, y: y.getPixelForValue(last) - 3 }];
  });
  // Lines that lie close together have their names over each other, in their own order.
  const heights = apartFrom(lines, height, chartArea.top + height, chartArea.bottom);
  const texts = lines.map(({ word }, i) => ({ word, width: ctx.measureText(word).width, height, y: heights[i]! }));
  const curve = [...curveSpots(chart, points), ...dots.flatMap((dot) => roundDot(chart, dot))];
  const end = points.ahead === null ? chartArea.right : Math.min(chartArea.right, x.getPixelForValue(now));
  const right = Math.max(end, chartArea.left + MOST_LABEL_PX) - 8;
  const places = labelPlaces(texts, curve, chartArea.left + 8, right, stands);
  texts.forEach(({ word }, i) => {
    const place = places[i];
    if (place !== null && place !== undefined) rimmed(ctx, inks, word, place.x, place.y);
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
function aboveLabel(
  chart: Chart,
  { above }: AxisRange,
  drawing: Drawing,
  stands: readonly StepText[],
): StepText | null {
  if (above === null) return null;
  const { ctx, chartArea, scales } = chart;
  const time = hoursAndMinutes(above.x + drawing.wallOffsetMs);
  const word = say('chart.above', { most: `${number(above.y, 0)} ${drawing.unit}`, time });
  const [width, height] = [ctx.measureText(word).width, textPx(chart.width)];
  const middle = Math.min((scales.x?.getPixelForValue(above.x) ?? 0) - width / 2, chartArea.right - width - 4);
  const x = Math.max(chartArea.left + 4, middle);
  const at = (rows: number) => ({ x, y: chartArea.top + rows * height, width, height });
  return { word, ...freePlace([at(2.6), ...ABOVE_ROWS.map(at)], stands) };
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

/** The marks along the foot, with their words over the poles, where no other pole stands in them; gives the room they take. */
function flags(chart: Chart, inks: Inks, list: readonly Flag[], stands: readonly Taken[]): Taken[] {
  const { ctx, chartArea, scales } = chart;
  const top = chartArea.bottom - POLE_PX;
  const seen = list.flatMap(({ x: at, word }) => {
    const x = scales.x?.getPixelForValue(at) ?? -1;
    return x < chartArea.left || x > chartArea.right ? [] : [{ x, word, width: ctx.measureText(word).width }];
  });
  ctx.fillStyle = inks.ink;
  for (const { x } of seen) {
    ctx.fillRect(x - 1, top, 2, POLE_PX);
    ctx.beginPath();
    ctx.moveTo(x, top);
    ctx.lineTo(x + FLAG_PX, top + 5);
    ctx.lineTo(x, top + 10);
    ctx.fill();
  }
  const height = textPx(chart.width);
  const places = wordsInRow(seen, { y: top - 2, height, right: chartArea.right }, stands);
  return seen.flatMap(({ x, word, width }, i) => {
    const pole = { x, y: chartArea.bottom, width: FLAG_PX, height: POLE_PX };
    const place = places[i] ?? null;
    if (place === null) return [pole];
    rimmed(ctx, inks, word, place.x, place.y);
    return [pole, { ...place, width, height }];
  });
}

/** Where the curve runs, px. */
function curveSpots({ scales: { x, y } }: Chart, points: CurvePoints): Spot[] {
  if (x === undefined || y === undefined) return [];
  return [...points.low, ...points.high].flatMap((point) =>
    point.y === null ? [] : [{ x: x.getPixelForValue(point.x), y: y.getPixelForValue(point.y) }],
  );
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
      const spots = stepSpots(chart, current);
      const steps = stepTexts(chart, current, spots, curveSpots(chart, current.points));
      const above = aboveLabel(chart, range, current, steps);
      const texts = above === null ? steps : [...steps, above];
      const flagged = flags(chart, inks, current.flags, texts);
      lineLabels(chart, inks, current, [...texts, ...flagged]);
      callSigns(chart, inks, current.calls);
      aheadLabel(chart, inks, current);
      for (const { word, x, y } of texts) rimmed(chart.ctx, inks, word, x, y);
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
