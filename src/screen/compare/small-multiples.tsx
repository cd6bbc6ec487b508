// A season in small: the curve of each boil, all on the same scales, each a way to lay it over the others.
import type { JSX } from 'preact';
import { stillRead } from '../words/still-read.ts';
import { useState } from 'preact/hooks';
import { MOST_COMPARED } from '../../protocol/compare-messages.ts';
import type { SmallCurves } from '../../protocol/compare-messages.ts';
import { HOUR_MS, lengthOfTime } from '../../core/quantities/time.ts';
import { extentOf, linePath, placeIn, seenOf } from '../charts/lines-scale.ts';
import type { Extent } from '../charts/lines-scale.ts';
import type { BoilListing } from '../client/types.ts';
import { settings } from '../client/store.ts';
import { temperature } from '../words/amounts.ts';
import { shortDay } from '../words/clock.ts';
import { hasPractice } from '../words/compare-words.ts';
import { compareBoils } from './boil-chooser.tsx';
import { useSmallCurves } from './compare-data.ts';
import { say } from '../language/say.ts';
import { hostWords } from '../language/host-words.ts';
import { boilName } from '../words/boil-name.ts';

const WIDTH = 240;
const HEIGHT = 90;
/** What boils lies between, °C: a pan that warms up, has cooled or burns is drawn at the edge. */
const BOILS = { least: 92, greatest: 110 };
const held = (celsius: number | null, { least, greatest }: Extent): number | null =>
  celsius === null ? null : Math.min(greatest, Math.max(least, celsius));

type Small = SmallCurves['boils'][number];

interface SmallProps {
  one: Small;
  x: Extent;
  y: Extent;
  chosen: readonly string[];
}

function SmallCurve({ one, x, y, chosen }: SmallProps): JSX.Element {
  const points = one.x.map((along, i) => {
    return { x: along, y: held(one.y[i] ?? null, y) };
  });
  const isChosen = chosen.includes(one.boil);
  const name = boilName(one.name);
  const toggle = (): void =>
    compareBoils(isChosen ? chosen.filter((each) => each !== one.boil) : [...chosen, one.boil]);
  return (
    <li>
      <button
        type="button"
        class="small-curve"
        aria-pressed={isChosen}
        disabled={!isChosen && chosen.length >= MOST_COMPARED}
        onClick={toggle}
      >
        <span>
          <b>{shortDay(one.started)}</b> {name}
        </span>
        {one.why !== null || one.isWorking ? (
          <small>{one.why === null ? say('compare.small.reading') : hostWords(one.why)}</small>
        ) : (
          <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
            {/* As wide as the longest boil, so that a line that ends early is not taken for one that is cut. */}
            <path class="chart-grid" d={`M0 ${HEIGHT - 1}H${WIDTH}`} />
            <path class="stroke" d={linePath(points, placeIn(x, 2, WIDTH - 2), placeIn(y, HEIGHT - 2, 4))} />
          </svg>
        )}
      </button>
    </li>
  );
}

function Scales({ x, y }: { x: Extent; y: Extent }): JSX.Element {
  const [least, greatest] = [y.least, y.greatest].map((celsius) => temperature(celsius, settings.value));
  return (
    <p class="hint">
      {least === greatest
        ? say('compare.small.once', { temperature: least ?? '' })
        : say('compare.small.scales', {
            length: lengthOfTime((x.greatest * HOUR_MS) / 1000),
            least: least ?? '',
            greatest: greatest ?? '',
          })}
    </p>
  );
}

export function SmallMultiples({ boils, chosen }: { boils: readonly BoilListing[]; chosen: readonly string[] }) {
  const [year, setYear] = useState<number | null>(null);
  const { view, problem } = useSmallCurves(year);
  const years = [...new Set(boils.filter(({ practice }) => !practice).map((each) => Number(each.started.slice(0, 4))))];
  if (problem !== null) return <p class="problem">✕ {hostWords(problem)}</p>;
  if (view === null) return <p>{say('compare.small.drawing')}</p>;
  const along = extentOf(view.boils.flatMap((one) => one.x));
  const x = along && { least: Math.min(0, along.least), greatest: along.greatest };
  const seen = view.boils.flatMap((one) => seenOf(one.y, BOILS) ?? []);
  const y = extentOf(seen.flatMap(({ least, greatest }) => [least, greatest]));
  return (
    <section class="panel" aria-label={say('compare.small.all')}>
      <h2>{say('compare.small.title', { year: String(view.year) })}</h2>
      {years.length > 1 && (
        <p class="row" role="group" aria-label={say('compare.small.season')}>
          {years.map((one) => (
            <button key={one} type="button" aria-pressed={one === view.year} onClick={() => setYear(one)}>
              {one}
            </button>
          ))}
        </p>
      )}
      {view.working > 0 && <p role="status">{stillRead(view.working)}</p>}
      {view.boils.length === 0 && <p>{say('compare.small.none')}</p>}
      {view.boils.length > 0 && hasPractice(boils, view.year) && <p class="hint">{say('compare.small.no_practice')}</p>}
      {x !== null && y !== null && <Scales x={x} y={y} />}
      <ul class="small-curves">
        {view.boils.map((one) => (
          <SmallCurve key={one.boil} one={one} x={x ?? { least: 0, greatest: 1 }} y={y ?? BOILS} chosen={chosen} />
        ))}
      </ul>
    </section>
  );
}
