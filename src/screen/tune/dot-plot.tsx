// A small chart of one figure: a dot for each boil, a row for each of the settings, and a stroke at the middle.
import type { JSX } from 'preact';
import { extentOf, placeIn, roomy } from '../charts/lines-scale.ts';
import type { Extent } from '../charts/lines-scale.ts';
import { plainTicks } from '../charts/nice-ticks.ts';
import { say, setApart } from '../language/say.ts';
import { useWidth } from '../shell/use-width.ts';
import { number } from '../words/amounts.ts';

interface DotPlotProps {
  title: string;
  unit: string;
  rows: { name: string; values: number[]; middle: number | null }[];
  /** What one would wish for, with its word. */
  aim?: { at: number; word: string };
}

/** px, as it is shown: letters keep their size where the picture is narrow. */
const ROW = 40;
const LEFT = 12;
/** Room of a tick's number with air beside it. */
const TICK_APART = 75;

/** Nothing where no boil has a value. */
export function DotPlot(props: DotPlotProps): JSX.Element | null {
  const { rows, aim } = props;
  const extent = extentOf([...rows.flatMap(({ values }) => values), ...(aim === undefined ? [] : [aim.at])]);
  if (extent === null || rows.every(({ values }) => values.length === 0)) return null;
  const roomier = roomy(extent);
  // What is never under nothing is not drawn as if it could be.
  return (
    <Drawn {...props} span={{ ...roomier, least: extent.least >= 0 ? Math.max(0, roomier.least) : roomier.least }} />
  );
}

function Drawn({ title, unit, rows, aim, span }: DotPlotProps & { span: Extent }): JSX.Element {
  const [frame, width] = useWidth(560);
  const x = placeIn(span, LEFT, width - LEFT);
  const bottom = 26 + rows.length * ROW;
  const ticks = plainTicks(span, Math.min(7, Math.max(2, Math.floor(width / TICK_APART))));
  const sentence = setApart(
    rows.map(({ name, values, middle }) =>
      say('tune.dot.of', {
        name,
        count: values.length,
        middle: middle === null ? say('words.not_known') : number(middle, 1),
        unit,
      }),
    ),
  );
  return (
    <figure class="dot-plot">
      <figcaption>{say('tune.dot.title', { title, unit })}</figcaption>
      <div ref={frame}>
        <svg width={width} height={bottom + 26} role="img" aria-label={say('tune.dot.sentence', { title, sentence })}>
          {ticks.map(({ at, word }) => (
            <g key={at}>
              <path class="chart-grid" d={`M${x(at)} 4V${bottom}`} />
              <text x={x(at)} y={bottom + 20} text-anchor="middle">
                {word}
              </text>
            </g>
          ))}
          {aim !== undefined && (
            <>
              <path class="chart-level" d={`M${x(aim.at)} 4V${bottom}`} />
              <text class="chart-word" x={x(aim.at) + 6} y="20">
                {aim.word}
              </text>
            </>
          )}
          {rows.map(({ name, values, middle }, i) => (
            <g key={name}>
              <text class="chart-word" x={LEFT} y={26 + i * ROW + 14}>
                {name}
              </text>
              {values.map((value, n) => (
                <circle key={n} cx={x(value)} cy={26 + i * ROW + 28} r="6" />
              ))}
              {middle !== null && <path class="dot-middle" d={`M${x(middle)} ${26 + i * ROW + 16}v24`} />}
            </g>
          ))}
        </svg>
      </div>
    </figure>
  );
}
