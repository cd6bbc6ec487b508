// The three charts of a season: sap and syrup by day, the ratio over the season, fuel for each volume of syrup.
import type { JSX } from 'preact';
import type { FigureName, SeasonView } from '../../protocol/season-messages.ts';
import { settings } from '../client/store.ts';
import { chartValue, figureWords, heatPerVolume, shortVolume } from '../words/figure-words.ts';
import { shortDay } from '../words/clock.ts';
import { SeasonChart, type SeasonSeries } from './season-chart.tsx';
import { type MessageKey, say } from '../language/say.ts';
import { number } from '../words/amounts.ts';

/** Called the same in the key and in a sentence. */
function named(key: MessageKey, series: Omit<SeasonSeries, 'label' | 'name'>): SeasonSeries {
  return { label: say(key), name: say(key), ...series };
}

export function SeasonCharts({ season }: { season: SeasonView }): JSX.Element {
  const choice = settings.value;
  const { days } = season;
  const boils = season.boils.filter(({ figures }) => figures !== null);
  const starts = boils.map(({ started }) => shortDay(started));
  const values = (name: FigureName): (number | null)[] =>
    boils.map(({ figures }) => {
      const figure = figures?.[name] ?? null;
      return figure === null ? null : chartValue(name, figure.value, choice);
    });
  const kinds = boils.map(({ saps }) => saps.join(' '));
  /** With as many digits as in the table and in the list. */
  const wordsOf = (name: FigureName) => (_value: number, place: number) =>
    figureWords(name, boils[place]?.figures?.[name] ?? null, choice);
  const unit = shortVolume(choice);
  const inUnit = (value: number): string => `${number(value, value < 1 ? 2 : 1)}\u00a0${unit}`;
  return (
    <div class="season-charts">
      <SeasonChart
        title={say('season.chart.by_day')}
        sentence={say('season.chart.by_day.sentence', { days: days.length, unit })}
        places={days.map(({ day }) => shortDay(day))}
        series={[
          {
            label: say('season.chart.sap', { unit }),
            name: say('season.chart.sap_name'),
            words: inUnit,
            values: days.map((day) => (day.sap_litres === 0 ? null : chartValue('sap_litres', day.sap_litres, choice))),
            kind: 'columns',
          },
          {
            label: say('season.chart.syrup', { unit }),
            name: say('season.chart.syrup_name'),
            words: inUnit,
            values: days.map((day) =>
              day.syrup_litres === 0 ? null : chartValue('syrup_litres', day.syrup_litres, choice),
            ),
            kind: 'line',
            right: true,
          },
        ]}
        unit={say('season.chart.sap_unit', { unit })}
        rightUnit={say('season.chart.syrup_unit', { unit })}
      />
      <SeasonChart
        title={say('season.chart.ratio')}
        sentence={say('season.chart.ratio.sentence', { boils: boils.length })}
        places={starts}
        series={[
          named('season.chart.as_it_was', { words: wordsOf('ratio'), values: values('ratio'), kind: 'line', kinds }),
          named('figure.exact_ratio', {
            words: wordsOf('exact_ratio'),
            values: values('exact_ratio'),
            kind: 'line',
            kinds,
            dashed: true,
          }),
        ]}
        unit={say('season.chart.ratio_unit')}
      />
      <SeasonChart
        title={say('season.chart.heat', { unit })}
        sentence={say('season.chart.heat.sentence', { unit, boils: boils.length })}
        places={starts}
        series={[
          named('season.chart.heat.label', {
            words: wordsOf('fuel_mj_per_l'),
            values: values('fuel_mj_per_l'),
            kind: 'columns',
          }),
        ]}
        unit={heatPerVolume(choice)}
      />
    </div>
  );
}
