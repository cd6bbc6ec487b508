// The drawing of one pan's curve with chart.js; the only module that makes anything of that library.
import { Chart, Filler, LineController, LineElement, LinearScale, PointElement } from 'chart.js';
import type { ChartDataset, Plugin } from 'chart.js';
import { OUTLINES, OUTLINE_SIZE } from '../alarms/alarm-shape.tsx';
import { hoursAndMinutes } from '../words/clock.ts';
import { DOT_PX, FACE, grounded, hatch, inksOf, labelFont, rimmed, stipple, textPx } from './chart-inks.ts';
import type { Inks } from './chart-inks.ts';
import { FLAG_PX, POLE_PX, textsOf } from './chart-words.ts';
import { axisRange } from './curve-points.ts';
import type { AxisRange, CurvePoints } from './curve-points.ts';
import { finishStep, stepSpots } from './curve-steps.ts';
import type { CallSign, Drawing, Flag } from './drawing.ts';
import type { Spot } from './label-places.ts';
import { tickMoments } from './time-window.ts';

Chart.register(LineController, LineElement, PointElement, LinearScale, Filler);

export interface CurveChart {
  draw(drawing: Drawing): void;
  destroy(): void;
}

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
