// A season: its sums, charts and boils as a table, and all seasons side by side.
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { FigureName, SeasonTotals, SeasonView } from '../../protocol/season-messages.ts';
import { SeasonCharts } from '../charts/season-charts.tsx';
import { settings } from '../client/store.ts';
import { addressOf } from '../shell/routes.ts';
import { volume } from '../words/amounts.ts';
import { shortDay } from '../words/clock.ts';
import { figureLabel, figureWords, heatUnitWords } from '../words/figure-words.ts';
import { quotientWords, rowsOfKind, sumWords } from '../words/season-words.ts';
import { sapKindName } from '../words/sap-words.ts';
import { useAsked } from './page-data.ts';
import { say } from '../language/say.ts';
import { fileAddress } from './file-address.ts';
import { hostWords } from '../language/host-words.ts';

const SUMS = ['sap_litres', 'syrup_litres', 'syrup_kg', 'jars', 'boiling_hours', 'fuel_mj', 'cost'] as const;
const QUOTIENTS = ['ratio', 'fuel_mj_per_l', 'fuel_kg_per_l', 'water_off_l_per_h', 'cost_a_jar'] as const;
const COLUMNS: readonly FigureName[] = [
  ...(['sap_litres', 'sap_brix', 'syrup_litres', 'syrup_brix', 'ratio', 'gap_sugar_kg'] as const),
  ...(['water_off_l_per_h', 'boiling_hours', 'fuel_mj_per_l', 'cost_a_jar', 'alarms'] as const),
];

function SideBySide({ seasons }: { seasons: SeasonView['seasons'] }): JSX.Element {
  const choice = settings.value;
  const rows: [string, (totals: SeasonTotals) => string][] = [
    [say('season.boils'), ({ boils }) => String(boils)],
    [
      say('season.collected'),
      (totals) => (totals.collected_litres === 0 ? say('season.not_noted') : volume(totals.collected_litres, choice)),
    ],
    [
      say('season.poured_away'),
      (totals) => (totals.spoilt_litres === 0 ? say('season.none_away') : volume(totals.spoilt_litres, choice)),
    ],
    ...SUMS.flatMap((name): [string, (totals: SeasonTotals) => string][] => [
      [figureLabel(name), (totals) => sumWords(name, totals[name], totals.boils, choice)],
      ...(name === 'sap_litres' || name === 'syrup_litres' ? rowsOfKind(seasons, name, choice) : []),
    ]),
    ...QUOTIENTS.flatMap((name): [string, (totals: SeasonTotals) => string][] => [
      [figureLabel(name), (totals) => quotientWords(name, totals, choice)],
      ...(name === 'ratio' ? rowsOfKind(seasons, name, choice) : []),
    ]),
  ];
  return (
    <div class="wide-table" tabIndex={0} role="region" aria-label={say('season.side')}>
      <table class="side-by-side">
        <thead>
          <tr>
            <th>{say('season.season')}</th>
            {seasons.map(({ year }) => (
              <th key={year} scope="col">
                {year}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([label, words]) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              {seasons.map(({ year, totals }) => (
                <td key={year}>{words(totals)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function BoilsOfSeason({ season }: { season: SeasonView }): JSX.Element {
  // What is known of no boil at all needs no column of dashes.
  const columns = COLUMNS.filter((name) =>
    season.boils.some(({ figures }) => figures === null || figures[name] !== null),
  );
  const hasKinds = new Set(season.boils.flatMap(({ saps }) => saps)).size > 1;
  return (
    <div
      class="wide-table"
      tabIndex={0}
      role="region"
      aria-label={say('season.boils_of', { year: String(season.year) })}
    >
      <table class="season-table">
        <thead>
          <tr>
            <th>{say('season.boil')}</th>
            {columns.map((name) => (
              <th key={name} scope="col">
                {figureLabel(name)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {season.boils.map(({ boil, name, started, saps, figures }) => (
            <tr key={boil}>
              <th scope="row">
                <a href={addressOf('notebook', 'boil', boil)}>
                  {shortDay(started)} {name}
                </a>
                {hasKinds && <div class="hint">{saps.map(sapKindName).join(', ')}</div>}
              </th>
              {columns.map((column) => (
                <td key={column} data-label={figureLabel(column)}>
                  {figures === null
                    ? '…'
                    : figures[column] === null
                      ? '–'
                      : figureWords(column, figures[column], settings.value)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

export function SeasonPart(): JSX.Element {
  const [year, setYear] = useState<number | null>(null);
  const { view, problem } = useAsked<SeasonView>({ season: { year } }, String(year), ({ working }) => working > 0);
  if (problem !== null) return <p class="problem">✕ {hostWords(problem)}</p>;
  if (view === null) return <p>{say('season.adding')}</p>;
  if (view.years.length === 0) return <p>{say('season.empty')}</p>;
  return (
    <>
      <p class="row" role="group" aria-label={say('season.season')}>
        {view.years.map((one) => (
          <button key={one} type="button" aria-pressed={one === view.year} onClick={() => setYear(one)}>
            {one}
          </button>
        ))}
      </p>
      {view.working > 0 && <p role="status">{say('season.working', { boils: view.working })}</p>}
      <SeasonCharts season={view} />
      <section class="panel">
        <h2>{say('season.side')}</h2>
        <SideBySide seasons={view.seasons} />
      </section>
      <section class="panel">
        <h2>{say('season.boils_of', { year: String(view.year) })}</h2>
        <BoilsOfSeason season={view} />
        <p class="hint">
          {say('season.unknown')} {heatUnitWords(settings.value)}
        </p>
        <p>
          <a class="button" href={fileAddress('season.csv', { year: String(view.year) })} download>
            {say('season.csv')}
          </a>
        </p>
      </section>
    </>
  );
}
