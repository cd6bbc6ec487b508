// Lines laid over each other, told apart by their strokes and by a number at their ends, in the colours of the theme.
import type { JSX } from 'preact';
import { useId } from 'preact/hooks';
import { AlarmShape } from '../alarms/alarm-shape.tsx';
import type { Priority } from '../client/types.ts';
import { useWidth } from '../shell/use-width.ts';
import type { Point } from './curve-points.ts';
import { textPx } from './chart-inks.ts';
import { apartFrom, extentOf, lastSeen, linePath, placeIn, roomy, seenOf } from './lines-scale.ts';
import type { Extent, Place } from './lines-scale.ts';
import { plainTicks } from './nice-ticks.ts';
import { say } from '../language/say.ts';

export interface ChartLine {
  name: string;
  /** Which stroke, 0 to 5. */
  stroke: number;
  points: Point[];
}

interface LinesChartProps {
  /** What a screen reader says of it, in a sentence. */
  sentence: string;
  lines: ChartLine[];
  /** Over the figures of the height, and under those of the width. */
  yTitle: string;
  xTitle: string;
  /** Ticks along the width with their words; round numbers where it is left out. */
  xTicks?: (extent: Extent, most: number) => { at: number; word: string }[];
  /** A level line across, with its word; under the chart where the chart is too narrow for it. */
  level?: { y: number; word: string } | null;
  /** Alarms over the lines, each row with its word. */
  rows?: { word: string; marks: { x: number; priority: Priority }[] }[];
  /** What lies beyond leaves the chart, so that the rest stays legible. */
  within?: Extent;
  height?: number;
  /** A press on the chart: at this place along, of the line nearest to it. */
  press?: (line: ChartLine, x: number) => void;
}

const EDGE = { top: 34, right: 44, left: 76 };
const ROW_PX = 32;
const SHAPE_PX = 26;
const LEAST_WIDTH = 240;

/** Whether a word would run out of the chart; letters are about half as wide as they are high (common practice). */
const isTooLong = (word: string, text: number, width: number): boolean =>
  word.length * text * 0.52 > width - EDGE.left - EDGE.right;

interface KeyedLine extends Pick<ChartLine, 'name' | 'stroke'> {
  /** Why it is not drawn, with its name; it then has no stroke. */
  notDrawn?: string | null;
}

/** A line's stroke in small, beside what it is called. */
export function Stroke({ stroke }: Pick<ChartLine, 'stroke'>): JSX.Element {
  return (
    <svg width="54" height="14" aria-hidden="true">
      <path class={`stroke stroke-${stroke}`} d="M1 7H53" />
    </svg>
  );
}

/** Strokes of these lines, beside their names. */
export function LineKey({ lines }: { lines: readonly KeyedLine[] }): JSX.Element {
  return (
    <ul class="line-key">
      {lines.map(({ name, stroke, notDrawn = null }, i) => (
        <li key={`${i} ${name}`} class={notDrawn === null ? undefined : 'not-drawn'}>
          <b>{i + 1}</b>
          {notDrawn === null && <Stroke stroke={stroke} />}
          {notDrawn ?? name}
        </li>
      ))}
    </ul>
  );
}

interface AxesProps {
  x: Extent;
  y: Extent;
  placeX: Place;
  placeY: Place;
  width: number;
  bottom: number;
  text: number;
  props: LinesChartProps;
}

function Axes({ x, y, placeX, placeY, width, bottom, text, props }: AxesProps): JSX.Element {
  const { level = null, xTicks = plainTicks, xTitle, yTitle } = props;
  const isNarrow = level !== null && isTooLong(level.word, text, width);
  const mostX = Math.max(2, Math.floor((width - EDGE.left) / (text * 4.5)));
  const right = width - EDGE.right;
  return (
    <g font-size={text}>
      {plainTicks(y, 5).map(({ at, word }) => (
        <g key={at}>
          <path class="chart-grid" d={`M${EDGE.left} ${placeY(at)}H${right}`} />
          <text x={EDGE.left - 8} y={placeY(at) + text / 3} text-anchor="end">
            {word}
          </text>
        </g>
      ))}
      {xTicks(x, mostX).map(({ at, word }) => (
        <g key={at}>
          <path class="chart-grid" d={`M${placeX(at)} ${EDGE.top}V${bottom}`} />
          <text x={placeX(at)} y={bottom + text + 4} text-anchor="middle">
            {word}
          </text>
        </g>
      ))}
      <text x={EDGE.left} y={text}>
        {yTitle}
      </text>
      <text x={right} y={bottom + 2 * text + 10} text-anchor="end">
        {xTitle}
      </text>
      {level !== null && (
        <>
          <path class="chart-level" d={`M${EDGE.left} ${placeY(level.y)}H${right}`} />
          {!isNarrow && (
            <text class="chart-word" x={EDGE.left + 8} y={placeY(level.y) - 6}>
              {level.word}
            </text>
          )}
        </>
      )}
    </g>
  );
}

/** The line whose point nearest along the width is nearest in height. */
function nearest(lines: readonly ChartLine[], x: number, y: number): ChartLine | null {
  let best: { line: ChartLine; away: number } | null = null;
  for (const line of lines) {
    const point = line.points.reduce<Point | null>(
      (found, each) =>
        each.y !== null && (found === null || Math.abs(each.x - x) < Math.abs(found.x - x)) ? each : found,
      null,
    );
    if (point === null || point.y === null) continue;
    const away = Math.abs(point.y - y);
    if (best === null || away < best.away) best = { line, away };
  }
  return best?.line ?? null;
}

export function LinesChart(props: LinesChartProps): JSX.Element {
  const { sentence, lines, level = null, height = 420, press, within, rows = [] } = props;
  const clip = useId();
  const [frame, measured] = useWidth(1200);
  // A page that is being left has no width for a moment.
  const width = Math.max(measured, LEAST_WIDTH);
  const text = textPx(width);
  const bottom = height - 2 * text - 16;
  const top = EDGE.top + rows.length * ROW_PX;
  const all = lines.flatMap(({ points }) => points.filter(({ y }) => y !== null));
  const x = extentOf([...all.map((point) => point.x), ...rows.flatMap(({ marks }) => marks.map((mark) => mark.x))]);
  const seen = lines.flatMap(({ points }) => {
    const extent = seenOf(
      points.map((point) => point.y),
      within,
    );
    return extent === null ? [] : [extent.least, extent.greatest];
  });
  const y = extentOf([...seen, ...(level === null ? [] : [level.y])]);
  if (x === null || y === null) return <div ref={frame}>{say('chart.nothing')}</div>;
  const [spanX, spanY] = [x, roomy(y)];
  const placeX = placeIn(spanX, EDGE.left, width - EDGE.right);
  const placeY = placeIn(spanY, bottom, top + text / 2);
  const ends = lines.map(({ points }) => lastSeen(points, spanY));
  const spots = ends.map((end) => ({
    x: placeX(end?.x ?? spanX.least),
    y: Math.max(top, placeY(end?.y ?? spanY.least)),
  }));
  const heights = apartFrom(spots, text, top, bottom);
  const pressed = (event: MouseEvent): void => {
    const box = frame.current?.getBoundingClientRect();
    if (press === undefined || box === undefined) return;
    const along = placeIn({ least: EDGE.left, greatest: width - EDGE.right }, spanX.least, spanX.greatest);
    const up = placeIn({ least: bottom, greatest: top + text / 2 }, spanY.least, spanY.greatest);
    const line = nearest(lines, along(event.clientX - box.left), up(event.clientY - box.top));
    if (line !== null) press(line, along(event.clientX - box.left));
  };
  return (
    <div class="lines-chart" ref={frame}>
      <svg width={width} height={height} role="img" aria-label={sentence} onClick={pressed}>
        <Axes {...{ x: spanX, y: spanY, placeX, placeY, width, bottom, text, props }} />
        <clipPath id={clip}>
          <rect x={EDGE.left} y={top} width={width - EDGE.left - EDGE.right} height={bottom - top} />
        </clipPath>
        <g clip-path={`url(#${clip})`}>
          {lines.map(({ name, stroke, points }, i) => (
            <path key={`${i} ${name}`} class={`stroke stroke-${stroke}`} d={linePath(points, placeX, placeY)} />
          ))}
        </g>
        {rows.map(({ word, marks }, i) => (
          <g key={word} transform={`translate(0 ${EDGE.top + i * ROW_PX})`}>
            <text class="chart-word" font-size={text} x={EDGE.left + 8} y={text}>
              {word}
            </text>
            {marks.map((mark, n) => (
              <g key={n} transform={`translate(${placeX(mark.x) - SHAPE_PX / 2} 2)`}>
                <AlarmShape priority={mark.priority} flashes={false} size={SHAPE_PX} />
              </g>
            ))}
          </g>
        ))}
        {ends.map(
          (end, i) =>
            end !== null && (
              <text
                key={i}
                class="chart-word"
                font-size={text}
                font-weight="700"
                x={Math.min(width - EDGE.right + 6, placeX(end.x) + 8)}
                y={(heights[i] ?? bottom) + text / 3}
              >
                {i + 1}
              </text>
            ),
        )}
      </svg>
      {level !== null && isTooLong(level.word, text, width) && (
        <p class="level-key">
          <svg width="54" height="14" aria-hidden="true">
            <path class="chart-level" d="M1 7H53" />
          </svg>
          {level.word}
        </p>
      )}
    </div>
  );
}
