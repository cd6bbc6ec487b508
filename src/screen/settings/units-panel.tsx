// The choice of units: a row for each quantity, and three presses that choose the whole set.
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import type { JSX } from 'preact';
import type { Settings } from '../client/types.ts';
import { IMPERIAL, US, usualMetric } from '../client/unit-sets.ts';
import type { Units } from '../client/unit-sets.ts';

type UnitName = keyof Units | 'strength' | 'clock';

/** A press for all at once leaves no scale of another choice behind: the trade measures in °Brix in each of them. */
const SETS = (
  [
    ['units.metric', usualMetric(navigator.languages)],
    ['units.us', US],
    ['units.imperial', IMPERIAL],
  ] as const
).map(([word, units]) => ({ word, units: { ...units, strength: 'brix' as const } }));

type Row<Name extends UnitName = UnitName> = {
  [Key in Name]: { name: Key; word: MessageKey; options: readonly (readonly [Settings[Key], MessageKey])[] };
}[Name];

const ROWS: readonly Row[] = [
  {
    name: 'temperature',
    word: 'units.of.temperature',
    options: [
      ['C', 'units.celsius'],
      ['F', 'units.fahrenheit'],
    ],
  },
  {
    name: 'strength',
    word: 'units.of.strength',
    options: [
      ['brix', 'units.brix'],
      ['baume', 'units.baume'],
      ['sg', 'units.sg'],
    ],
  },
  {
    name: 'volume',
    word: 'units.of.volume',
    options: [
      ['litre', 'units.litre'],
      ['us-gallon', 'units.us_gallon'],
      ['imperial-gallon', 'units.imperial_gallon'],
    ],
  },
  {
    name: 'length',
    word: 'units.of.length',
    options: [
      ['mm', 'units.mm'],
      ['inch', 'units.inch'],
    ],
  },
  {
    name: 'pressure',
    word: 'units.of.pressure',
    options: [
      ['hpa', 'units.hpa'],
      ['kpa', 'units.kpa'],
      ['inhg', 'units.inhg'],
    ],
  },
  {
    name: 'mass',
    word: 'units.of.mass',
    options: [
      ['kg', 'units.kg'],
      ['pound', 'units.pound'],
    ],
  },
  {
    name: 'power',
    word: 'units.of.power',
    options: [
      ['watt', 'units.watt'],
      ['btu-per-hour', 'units.btu'],
    ],
  },
  {
    name: 'clock',
    word: 'units.of.clock',
    options: [
      ['24', 'units.clock_24'],
      ['12', 'units.clock_12'],
    ],
  },
];

/** Kilopascals are metric as well as hectopascals. */
const isMetricToo = (name: string, unit: string, { pressure }: Settings): boolean =>
  name === 'pressure' && unit !== 'inhg' && pressure !== 'inhg';

interface UnitsPanelProps {
  now: Settings;
  change: (part: Partial<Settings>) => void;
}

function UnitRow({ row, now, change }: UnitsPanelProps & { row: Row }): JSX.Element {
  return (
    <div class="unit-row" role="radiogroup" aria-labelledby={`unit-${row.name}`}>
      <span id={`unit-${row.name}`}>{say(row.word)}</span>
      <span>
        {row.options.map(([unit, word]) => (
          <label key={unit} class="check">
            <input
              type="radio"
              name={`unit-${row.name}`}
              checked={now[row.name] === unit}
              onChange={() => change({ [row.name]: unit })}
            />{' '}
            {say(word)}
          </label>
        ))}
      </span>
    </div>
  );
}

export function UnitsPanel({ now, change }: UnitsPanelProps): JSX.Element {
  const isChosen = (units: Units & Pick<Settings, 'strength'>): boolean =>
    Object.entries(units).every(([name, unit]) => now[name as UnitName] === unit || isMetricToo(name, unit, now));
  return (
    <section class="panel" aria-labelledby="units">
      <div class="units-head">
        <h2 id="units">{say('units.title')}</h2>
        <div class="row" role="group" aria-label={say('units.all')}>
          {SETS.map(({ word, units }) => (
            <button key={word} type="button" aria-pressed={isChosen(units)} onClick={() => change(units)}>
              {say(word)}
            </button>
          ))}
        </div>
      </div>
      {ROWS.map((row) => (
        <UnitRow key={row.name} row={row} now={now} change={change} />
      ))}
      <p class="hint">{say('units.clock')}</p>
    </section>
  );
}
