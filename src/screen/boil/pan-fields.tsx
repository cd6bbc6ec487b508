// The fields of one pan in the form of a boil.
import type { JSX } from 'preact';
import { settings } from '../client/store.ts';
import type { Channel } from '../probes/channels.ts';
import { temperature, unitSymbols } from '../words/amounts.ts';
import type { PanDraft } from './boil-draft.ts';
import { Labelled, NumberInput, Select } from './inputs.tsx';
import { FinishFields, LeadFields, LeastDepthField } from './limit-fields.tsx';
import type { Standing } from './limit-fields.tsx';
import { SapFields } from './sap-fields.tsx';
import { VesselFields } from './vessel-fields.tsx';

export const HEATS = [
  ['', 'not given'],
  ['propane', 'propane'],
  ['wood', 'wood'],
  ['electric', 'electric'],
  ['other', 'other'],
] as const;

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
  /** null where no boil runs that the pan is of. */
  standing: Standing | null;
  change: (pan: PanDraft) => void;
  chooseSap: (sap: PanDraft['sap']) => void;
  chooseProbe: (key: string) => void;
  remove: (() => void) | null;
}

export function PanFields({
  pan,
  channels,
  standing,
  change,
  chooseSap,
  chooseProbe,
  remove,
}: PanFieldsProps): JSX.Element {
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
        <SapFields sap={pan.sap} set={chooseSap} />
        <Select label="Probe" value={pan.probe} options={probes(pan, channels)} set={chooseProbe} />
        <VesselFields vessel={pan.vessel} set={set('vessel')} />
        <Select label="Fire" value={pan.heat} options={HEATS} set={set('heat')} />
        {pan.heat !== '' && (
          <NumberInput label="Burner power, if known" unit={units.power} value={pan.power} set={set('power')} />
        )}
        <FinishFields pan={pan} standing={standing} change={change} />
        <NumberInput
          label="Never hotter than"
          unit={units.temperature}
          hint="no ceiling"
          value={pan.ceiling}
          set={set('ceiling')}
        />
        <LeastDepthField pan={pan} standing={standing} change={change} />
        <LeadFields pan={pan} standing={standing} change={change} />
      </div>
      {remove !== null && (
        <button type="button" onClick={remove}>
          Remove this pan
        </button>
      )}
    </fieldset>
  );
}
