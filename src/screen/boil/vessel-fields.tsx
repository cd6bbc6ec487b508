// The choice of a pan's vessel with the sizes that its shape needs, or the table of measured fills.
import type { JSX } from 'preact';
import { settings } from '../client/store.ts';
import { unitSymbols } from '../words/amounts.ts';
import { NumberInput, Select } from './inputs.tsx';
import { LEAST_ROWS, SIZES, withRow } from './vessel-draft.ts';
import type { FillRow, VesselDraft } from './vessel-draft.ts';

const SHAPES = [
  ['', 'not given'],
  ['round', 'round pot'],
  ['rectangular', 'flat pan with corners'],
  ['round-sloped', 'round with a leaning wall'],
  ['measured', 'any, measured by filling'],
] as const;

interface VesselFieldsProps {
  vessel: VesselDraft;
  set: (vessel: VesselDraft) => void;
}

export function VesselFields({ vessel, set }: VesselFieldsProps): JSX.Element {
  const { length } = unitSymbols(settings.value);
  return (
    <>
      <Select label="Vessel" value={vessel.shape} options={SHAPES} set={(shape) => set({ ...vessel, shape })} />
      {SIZES[vessel.shape].map(({ size, label }) => (
        <NumberInput
          key={size}
          label={label}
          unit={length}
          value={vessel[size]}
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
    <div class="fill-table" role="group" aria-label="Measured fills">
      <p class="hint">Pour in a known amount of water, measure how deep it stands, and again until it is full.</p>
      {vessel.fill.map((row, i) => (
        <div key={i} class="row">
          <NumberInput
            label={`Depth ${i + 1}`}
            unit={units.length}
            value={row.depth}
            set={(depth) => replace(i, [{ ...row, depth }])}
          />
          <NumberInput
            label={`Then in it ${i + 1}`}
            unit={units.volume}
            value={row.volume}
            set={(volume) => replace(i, [{ ...row, volume }])}
          />
          {vessel.fill.length > LEAST_ROWS && (
            <button type="button" aria-label={`Remove row ${i + 1}`} onClick={() => replace(i, [])}>
              Remove
            </button>
          )}
        </div>
      ))}
      <button type="button" onClick={() => set(withRow(vessel))}>
        + Another row
      </button>
    </div>
  );
}
