// One chart of a season: columns by day, or a line from boil to boil, with as few words as it takes.
import {
  BarController,
  BarElement,
  CategoryScale,
  Chart,
  LineController,
  LineElement,
  LinearScale,
  PointElement,
} from 'chart.js';
import type { ChartDataset } from 'chart.js';
import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { settings } from '../client/store.ts';
import { FACE, inksOf } from './chart-inks.ts';
import { language } from '../language/language.ts';
import { say } from '../language/say.ts';

Chart.register(BarController, BarElement, CategoryScale, LineController, LineElement, LinearScale, PointElement);

export interface SeasonSeries {
  /** In the key of the chart. */
  label: string;
  /** Where a few words do for a chart: what it is, and one of its values with its unit. */
  name: string;
  words: (value: number, place: number) => string;
  /** One for each place along the axis; null leaves a gap. */
  values: (number | null)[];
  kind: 'columns' | 'line';
  /** Has a scale of its own, on the right. */
  right?: boolean | undefined;
  dashed?: boolean | undefined;
  /** What each place is of; between two of another kind no line is drawn. */
  kinds?: readonly string[] | undefined;
}

interface SeasonChartProps {
  title: string;
  /** What a screen reader says of it, in a sentence. */
  sentence: string;
  places: readonly string[];
  series: readonly SeasonSeries[];
  unit: string;
  rightUnit?: string;
}

/** A season is looked at from nearby. */
const TEXT_PX = 15;

type Drawn = ChartDataset<'bar' | 'line', (number | null)[]>;

/** A line from one to the other says how one thing went on: sap to syrup of maple goes on as no birch. */
export const isOfOneKind = ({ kinds }: Pick<SeasonSeries, 'kinds'>, from: number, until: number): boolean =>
  kinds === undefined || kinds[from] === kinds[until];

/** Told apart by their shape and by words beside the chart, too, never by colour alone. */
function drawn(one: SeasonSeries, index: number, element: HTMLCanvasElement): Drawn {
  const inks = inksOf(element);
  const ink = index === 0 ? inks.reading : inks.finish;
  const base = { label: one.label, data: one.values, yAxisID: one.right === true ? 'right' : 'y' };
  if (one.kind === 'columns')
    return { ...base, type: 'bar', backgroundColor: ink, borderColor: ink, maxBarThickness: 14 };
  return {
    ...base,
    type: 'line',
    borderColor: ink,
    backgroundColor: ink,
    borderWidth: 3,
    ...(one.dashed === true ? { borderDash: [10, 6], pointRadius: 0 } : { pointRadius: 4 }),
    spanGaps: true,
    segment: {
      borderColor: ({ p0DataIndex, p1DataIndex }) => (isOfOneKind(one, p0DataIndex, p1DataIndex) ? ink : 'transparent'),
    },
  };
}

function draw(element: HTMLCanvasElement, { places, series, unit, rightUnit }: SeasonChartProps): Chart {
  const inks = inksOf(element);
  const font = { size: TEXT_PX, family: FACE };
  const scale = (text: string) => ({
    beginAtZero: true,
    grid: { color: inks.grid },
    ticks: { color: inks.ink, font },
    title: { display: true, text, color: inks.ink, font },
  });
  const [hasLeft, hasRight] = [false, true].map((side) =>
    knownSeries(series).some(({ right = false }) => right === side),
  );
  return new Chart(element, {
    type: 'bar',
    data: {
      labels: [...places],
      datasets: knownSeries(series).map((one) => drawn(one, series.indexOf(one), element)) as never,
    },
    options: {
      locale: language.value,
      animation: false,
      responsive: true,
      maintainAspectRatio: false,
      events: [],
      scales: {
        x: { grid: { display: false }, ticks: { color: inks.ink, font, maxTicksLimit: 12, maxRotation: 0 } },
        ...(hasLeft === true ? { y: scale(unit) } : {}),
        ...(hasRight === true
          ? { right: { ...scale(rightUnit ?? unit), position: 'right', grid: { display: false } } }
          : {}),
      },
    },
  });
}

/** Of what anything is known: only that is drawn, and only that stands in the key. */
export const knownSeries = (series: readonly SeasonSeries[]): SeasonSeries[] =>
  series.filter(({ values }) => values.some((value) => value !== null));

/** Places along the axis of which anything is known. */
export const knownPlaces = ({ places, series }: Pick<SeasonChartProps, 'places' | 'series'>): number[] =>
  places.flatMap((_, place) => (series.some(({ values }) => (values[place] ?? null) !== null) ? [place] : []));

/** Two places make a chart; one is a sentence, and none says so. */
export function SeasonChart(props: SeasonChartProps): JSX.Element {
  const known = knownPlaces(props);
  return known.length < 2 ? <InWords {...props} place={known[0] ?? null} /> : <Canvas {...props} />;
}

function InWords({ title, places, series, place }: SeasonChartProps & { place: number | null }): JSX.Element {
  const told = series.flatMap(({ name, words, values }) => {
    const value = place === null ? null : (values[place] ?? null);
    return value === null ? [] : [say('season.chart.one', { name, amount: words(value, place ?? 0) })];
  });
  return (
    <figure class="season-chart">
      <figcaption>{title}</figcaption>
      {place === null ? (
        <p class="hint">{say('season.chart.none')}</p>
      ) : (
        <p>
          <b>{places[place]}</b> {told.join(' · ')}
        </p>
      )}
    </figure>
  );
}

function Canvas(props: SeasonChartProps): JSX.Element {
  const canvas = useRef<HTMLCanvasElement>(null);
  const shown = JSON.stringify([props.places, props.series, props.unit]);
  useEffect(() => {
    const element = canvas.current;
    if (element === null) return;
    const chart = draw(element, props);
    return () => chart.destroy();
  }, [shown, settings.value.theme]);
  return (
    <figure class="season-chart">
      <figcaption>{props.title}</figcaption>
      <div class="season-chart-area" role="img" aria-label={props.sentence}>
        <canvas ref={canvas} />
      </div>
      <p class="hint">
        {knownSeries(props.series)
          .map(({ label, kind, dashed }) => `${kind === 'columns' ? '▮' : dashed === true ? '┄' : '●'} ${label}`)
          .join('   ')}
      </p>
    </figure>
  );
}
