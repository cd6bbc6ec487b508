// The three charts of a season: sap and syrup by day, the ratio over the season, fuel for each volume of syrup.
import type { JSX } from 'preact';
import type { FigureName, SeasonView } from '../../protocol/season-messages.ts';
import { settings } from '../client/store.ts';
import { chartValue, shortVolume } from '../words/figure-words.ts';
import { shortDay } from '../words/clock.ts';
import { SeasonChart } from './season-chart.tsx';

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
  const unit = shortVolume(choice);
  return (
    <div class="season-charts">
      <SeasonChart
        title="Sap and syrup by day"
        sentence={`Sap collected and syrup made on each of ${days.length} days, in ${unit}`}
        places={days.map(({ day }) => shortDay(day))}
        series={[
          {
            label: `sap collected, ${unit}, left`,
            values: days.map((day) => chartValue('sap_litres', day.sap_litres, choice)),
            kind: 'columns',
          },
          {
            label: `syrup made, ${unit}, right`,
            values: days.map((day) =>
              day.syrup_litres === 0 ? null : chartValue('syrup_litres', day.syrup_litres, choice),
            ),
            kind: 'line',
            right: true,
          },
        ]}
        unit={`sap, ${unit}`}
        rightUnit={`syrup, ${unit}`}
      />
      <SeasonChart
        title="Sap to one of syrup"
        sentence={`The ratio of sap to syrup of each of ${boils.length} boils, and what the exact balance gives`}
        places={starts}
        series={[
          { label: 'as it was', values: values('ratio'), kind: 'line' },
          { label: 'by the exact balance', values: values('exact_ratio'), kind: 'line', dashed: true },
        ]}
        unit="sap : 1"
      />
      <SeasonChart
        title={`Heat for each ${unit} of syrup`}
        sentence={`Heat in the fuel for each ${unit} of syrup, of each of ${boils.length} boils`}
        places={starts}
        series={[{ label: 'heat in the fuel', values: values('fuel_mj_per_l'), kind: 'columns' }]}
        unit={`MJ/${unit}`}
      />
    </div>
  );
}
