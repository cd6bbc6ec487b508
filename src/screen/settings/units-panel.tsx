// The choice of units: a row for each quantity, and three presses that choose the whole set.
import type { JSX } from 'preact';
import type { Settings } from '../client/types.ts';

type Units = Pick<Settings, 'temperature' | 'volume' | 'length' | 'pressure' | 'mass' | 'power'>;
type UnitName = keyof Units | 'strength';

/** The strength is not among them: each of its scales is read everywhere. */
const SETS: { word: string; units: Units }[] = [
  {
    word: 'Metric',
    units: { temperature: 'C', volume: 'litre', length: 'mm', pressure: 'hpa', mass: 'kg', power: 'watt' },
  },
  {
    word: 'US',
    units: {
      temperature: 'F',
      volume: 'us-gallon',
      length: 'inch',
      pressure: 'inhg',
      mass: 'pound',
      power: 'btu-per-hour',
    },
  },
  {
    word: 'Imperial',
    units: {
      temperature: 'F',
      volume: 'imperial-gallon',
      length: 'inch',
      pressure: 'inhg',
      mass: 'pound',
      power: 'btu-per-hour',
    },
  },
];

type Row<Name extends UnitName = UnitName> = {
  [Key in Name]: { name: Key; word: string; options: readonly (readonly [Settings[Key], string])[] };
}[Name];

const ROWS: readonly Row[] = [
  {
    name: 'temperature',
    word: 'Temperature',
    options: [
      ['C', '°C'],
      ['F', '°F'],
    ],
  },
  {
    name: 'strength',
    word: 'Strength',
    options: [
      ['brix', '°Brix'],
      ['baume', '°Baumé'],
      ['sg', 'specific gravity'],
    ],
  },
  {
    name: 'volume',
    word: 'Volume',
    options: [
      ['litre', 'litres'],
      ['us-gallon', 'US gallons'],
      ['imperial-gallon', 'imperial gallons'],
    ],
  },
  {
    name: 'length',
    word: 'Length',
    options: [
      ['mm', 'mm and metres'],
      ['inch', 'inches and feet'],
    ],
  },
  {
    name: 'pressure',
    word: 'Air pressure',
    options: [
      ['hpa', 'hPa'],
      ['inhg', 'inches of mercury'],
    ],
  },
  {
    name: 'mass',
    word: 'Weight',
    options: [
      ['kg', 'kg'],
      ['pound', 'pounds'],
    ],
  },
  {
    name: 'power',
    word: 'Burner power',
    options: [
      ['watt', 'kW'],
      ['btu-per-hour', 'Btu/h'],
    ],
  },
];

interface UnitsPanelProps {
  now: Settings;
  change: (part: Partial<Settings>) => void;
}

function UnitRow({ row, now, change }: UnitsPanelProps & { row: Row }): JSX.Element {
  return (
    <div class="unit-row" role="radiogroup" aria-labelledby={`unit-${row.name}`}>
      <span id={`unit-${row.name}`}>{row.word}</span>
      <span>
        {row.options.map(([unit, word]) => (
          <label key={unit} class="check">
            <input
              type="radio"
              name={`unit-${row.name}`}
              checked={now[row.name] === unit}
              onChange={() => change({ [row.name]: unit })}
            />{' '}
            {word}
          </label>
        ))}
      </span>
    </div>
  );
}

export function UnitsPanel({ now, change }: UnitsPanelProps): JSX.Element {
  const isChosen = (units: Units): boolean =>
    Object.entries(units).every(([name, unit]) => now[name as keyof Units] === unit);
  return (
    <section class="panel" aria-labelledby="units">
      <div class="units-head">
        <h2 id="units">Units</h2>
        <div class="row" role="group" aria-label="All at once">
          {SETS.map(({ word, units }) => (
            <button key={word} type="button" aria-pressed={isChosen(units)} onClick={() => change(units)}>
              {word}
            </button>
          ))}
        </div>
      </div>
      {ROWS.map((row) => (
        <UnitRow key={row.name} row={row} now={now} change={change} />
      ))}
    </section>
  );
}
