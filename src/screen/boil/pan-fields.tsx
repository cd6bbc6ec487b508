// The fields of one pan in the form of a boil.
import type { ComponentChildren, JSX } from 'preact';
import { settings } from '../client/store.ts';
import type { Channel } from '../probes/channels.ts';
import { temperature, unitSymbols } from '../words/amounts.ts';
import type { PanDraft } from './boil-draft.ts';

function Labelled({
  label,
  unit,
  children,
}: {
  label: string;
  unit?: string;
  children: ComponentChildren;
}): JSX.Element {
  return (
    <label>
      <span>{label}</span>
      <span class="with-unit">
        {children}
        {unit !== undefined && <span>{unit}</span>}
      </span>
    </label>
  );
}

interface NumberProps {
  label: string;
  unit: string;
  value: string;
  set: (value: string) => void;
  hint?: string;
}

export function NumberInput({ label, unit, value, set, hint }: NumberProps): JSX.Element {
  return (
    <Labelled label={label} unit={unit}>
      <input
        class="number"
        inputMode="decimal"
        autoComplete="off"
        placeholder={hint}
        value={value}
        onInput={(event) => set(event.currentTarget.value)}
      />
    </Labelled>
  );
}

interface SelectProps<T extends string> {
  label: string;
  value: T;
  options: readonly (readonly [T, string])[];
  set: (value: T) => void;
}

export function Select<T extends string>({ label, value, options, set }: SelectProps<T>): JSX.Element {
  return (
    <Labelled label={label}>
      <select value={value} onChange={(event) => set(event.currentTarget.value as T)}>
        {options.map(([each, word]) => (
          <option key={each} value={each}>
            {word}
          </option>
        ))}
      </select>
    </Labelled>
  );
}

const SHAPES = [
  ['', 'not given'],
  ['round', 'round pot'],
  ['rectangular', 'flat pan with corners'],
] as const;
const HEATS = [
  ['', 'not given'],
  ['propane', 'propane'],
  ['wood', 'wood'],
  ['electric', 'electric'],
  ['other', 'other'],
] as const;

function saps(pan: PanDraft): (readonly [PanDraft['sap'], string])[] {
  const plain = [
    ['maple', 'maple'],
    ['birch', 'birch'],
  ] as const;
  return typeof pan.before.sap === 'object' ? [...plain, ['mix', 'a mix, as it was given']] : [...plain];
}

function finishes(pan: PanDraft): (readonly [PanDraft['finish'], string])[] {
  const usual = pan.sap === 'maple' ? 'the usual (66.9 °Bx)' : 'the usual (67 °Bx)';
  return [
    ['usual', usual],
    ['brix', 'a strength in °Brix'],
    ['rise', 'degrees over boiling water'],
  ];
}

function probes(pan: PanDraft, channels: readonly Channel[]): (readonly [string, string])[] {
  const list: [string, string][] = [['', 'none, I read by hand']];
  if (Array.isArray(pan.before.probe)) list.push(['many', `${pan.before.probe.length} probes, as they are`]);
  for (const each of channels) {
    const shows = each.celsius === null ? '' : `, now ${temperature(each.celsius, settings.value)}`;
    list.push([each.key, `${each.channel} on ${each.port}${shows}`]);
  }
  return list;
}

interface PanFieldsProps {
  pan: PanDraft;
  channels: Channel[];
  change: (pan: PanDraft) => void;
  chooseProbe: (key: string) => void;
  remove: (() => void) | null;
}

export function PanFields({ pan, channels, change, chooseProbe, remove }: PanFieldsProps): JSX.Element {
  const units = unitSymbols(settings.value);
  const set =
    <K extends keyof PanDraft>(field: K) =>
    (value: PanDraft[K]): void =>
      change({ ...pan, [field]: value });
  return (
    <fieldset class="pan-fields">
      <legend>{pan.name || 'Pan'}</legend>
      <div class="fields">
        <Labelled label="What you call it">
          <input value={pan.name} maxLength={40} onInput={(event) => set('name')(event.currentTarget.value)} />
        </Labelled>
        <Select label="Sap" value={pan.sap} options={saps(pan)} set={set('sap')} />
        <Select label="Probe" value={pan.probe} options={probes(pan, channels)} set={chooseProbe} />
        <Select label="Vessel" value={pan.shape} options={SHAPES} set={set('shape')} />
        {pan.shape === 'round' && (
          <NumberInput label="Width across" unit={units.length} value={pan.diameter} set={set('diameter')} />
        )}
        {pan.shape === 'rectangular' && (
          <>
            <NumberInput label="Length" unit={units.length} value={pan.length} set={set('length')} />
            <NumberInput label="Width" unit={units.length} value={pan.width} set={set('width')} />
          </>
        )}
        <Select label="Fire" value={pan.heat} options={HEATS} set={set('heat')} />
        {pan.heat !== '' && (
          <NumberInput label="Burner power, if known" unit="kW" value={pan.power} set={set('power')} />
        )}
        <Select label="It is done at" value={pan.finish} options={finishes(pan)} set={set('finish')} />
        {pan.finish !== 'usual' && (
          <NumberInput
            label="That is"
            unit={pan.finish === 'brix' ? '°Bx' : units.temperature}
            value={pan.finishAt}
            set={set('finishAt')}
          />
        )}
        <NumberInput
          label="Never hotter than"
          unit={units.temperature}
          hint="no ceiling"
          value={pan.ceiling}
          set={set('ceiling')}
        />
        <NumberInput
          label="Never shallower than"
          unit={units.length}
          hint={settings.value.length === 'mm' ? '15' : '0.6'}
          value={pan.leastDepth}
          set={set('leastDepth')}
        />
      </div>
      {remove !== null && (
        <button type="button" onClick={remove}>
          Remove this pan
        </button>
      )}
    </fieldset>
  );
}
