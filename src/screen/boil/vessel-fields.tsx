// The choice of a pan's vessel with the sizes that its shape needs, or the table of measured fills.
import type { JSX } from 'preact';
import { settings } from '../client/store.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import { unitSymbols } from '../words/amounts.ts';
import { NumberInput, Select, saidOptions } from './inputs.tsx';
import { LEAST_ROWS, problemInSize, SIZES, withRow } from './vessel-draft.ts';
import type { FillRow, VesselDraft } from './vessel-draft.ts';

const SHAPES: readonly (readonly [VesselDraft['shape'], MessageKey])[] = [
  ['', 'boil.shape.not_given'],
  ['round', 'boil.shape.round'],
  ['rectangular', 'boil.shape.rectangular'],
  ['round-sloped', 'boil.shape.sloped'],
  ['measured', 'boil.shape.measured'],
];

interface VesselFieldsProps {
  vessel: VesselDraft;
  set: (vessel: VesselDraft) => void;
}

export function VesselFields({ vessel, set }: VesselFieldsProps): JSX.Element {
  const { length } = unitSymbols(settings.value);
  return (
    <>
      <Select
        label={say('boil.vessel')}
        value={vessel.shape}
        options={saidOptions(SHAPES)}
        set={(shape) => set({ ...vessel, shape })}
      />
      {SIZES[vessel.shape].map(({ size, label }) => (
        <NumberInput
          key={size}
          label={say(label)}
          unit={length}
          value={vessel[size]}
          wrong={problemInSize(vessel, size, say(label), settings.value)}
          set={(typed) => set({ ...vessel, [size]: typed })}
        />
      ))}
      {vessel.shape === 'measured' && <FillTable vessel={vessel} set={set} />}
    </>
  );
}

function FillTable({ vessel, set }: VesselFieldsProps): JSX.Element {
  const units = unitSymbols(settings.value);
  const replace = (place: number, next: FillRow[]): void =>
    set({ ...vessel, fill: vessel.fill.flatMap((row, i) => (i === place ? next : [row])) });
  return (
    <div class="fill-table" role="group" aria-label={say('boil.fills')}>
      <p class="hint">{say('boil.fills.text')}</p>
      {vessel.fill.map((row, i) => (
        <div key={i} class="row">
          <NumberInput
            label={say('boil.fills.depth', { row: String(i + 1) })}
            unit={units.length}
            value={row.depth}
            set={(depth) => replace(i, [{ ...row, depth }])}
          />
          <NumberInput
            label={say('boil.fills.in_it', { row: String(i + 1) })}
            unit={units.volume}
            value={row.volume}
            set={(volume) => replace(i, [{ ...row, volume }])}
          />
          {vessel.fill.length > LEAST_ROWS && (
            <button
              type="button"
              aria-label={say('boil.fills.remove_row', { row: String(i + 1) })}
              onClick={() => replace(i, [])}
            >
              {say('boil.fills.remove')}
            </button>
          )}
        </div>
      ))}
      <button type="button" onClick={() => set(withRow(vessel))}>
        {say('boil.fills.another')}
      </button>
    </div>
  );
}
