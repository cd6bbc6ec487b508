// The fields of one pan in the form of a boil.
import type { JSX } from 'preact';
import { settings } from '../client/store.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import type { Channel } from '../probes/channels.ts';
import { calledProbe } from '../probes/kept.ts';
import { temperature, unitSymbols } from '../words/amounts.ts';
import type { PanDraft } from './boil-draft.ts';
import { Labelled, NumberInput, Select, saidOptions } from './inputs.tsx';
import { FinishFields, LeadFields, LeastDepthField } from './limit-fields.tsx';
import type { Standing } from './limit-fields.tsx';
import { SapFields } from './sap-fields.tsx';
import { VesselFields } from './vessel-fields.tsx';

const HEATS: readonly (readonly [PanDraft['heat'], MessageKey])[] = [
  ['', 'boil.not_given'],
  ['propane', 'boil.heat.propane'],
  ['wood', 'boil.heat.wood'],
  ['electric', 'boil.heat.electric'],
  ['other', 'boil.heat.other'],
];

/** The kinds of fire to choose from. */
export const heats = (): (readonly [PanDraft['heat'], string])[] => saidOptions(HEATS);

function probes(pan: PanDraft, channels: readonly Channel[]): (readonly [string, string])[] {
  const list: [string, string][] = [['', say('boil.probe.none')]];
  if (Array.isArray(pan.before.probe))
    list.push(['many', say('boil.probe.many', { count: String(pan.before.probe.length) })]);
  for (const each of channels) {
    const said = { channel: calledProbe(each), port: each.path };
    const words =
      each.celsius === null
        ? say('boil.probe.on', { ...said })
        : say('boil.probe.on_now', { ...said, temperature: temperature(each.celsius, settings.value) });
    list.push([each.key, words]);
  }
  return list;
}

/** Something is said of what is seldom said. */
const hasMore = ({ ceiling, leastDepth, leads }: PanDraft): boolean =>
  ceiling !== '' || leastDepth !== '' || Object.values(leads).some((seconds) => seconds !== null);

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
      <legend>{pan.name || say('boil.pan')}</legend>
      <div class="fields">
        <Labelled label={say('boil.called')}>
          <input value={pan.name} maxLength={40} onInput={(event) => set('name')(event.currentTarget.value)} />
        </Labelled>
        <SapFields sap={pan.sap} set={chooseSap} />
        <Select label={say('boil.probe')} value={pan.probe} options={probes(pan, channels)} set={chooseProbe} />
        <VesselFields vessel={pan.vessel} set={set('vessel')} />
        <Select label={say('boil.fire')} value={pan.heat} options={heats()} set={set('heat')} />
        {pan.heat !== '' && (
          <NumberInput label={say('boil.power')} unit={units.power} value={pan.power} set={set('power')} />
        )}
        <FinishFields pan={pan} standing={standing} change={change} />
      </div>
      <details class="pan-more" open={standing !== null || hasMore(pan)}>
        <summary>{say('boil.more')}</summary>
        <div class="fields">
          <NumberInput
            label={say('boil.never_hotter')}
            unit={units.temperature}
            hint={say('boil.no_ceiling')}
            value={pan.ceiling}
            set={set('ceiling')}
          />
          <LeastDepthField pan={pan} standing={standing} change={change} />
          <LeadFields pan={pan} standing={standing} change={change} />
        </div>
      </details>
      {remove !== null && (
        <button type="button" onClick={remove}>
          {say('boil.remove_pan')}
        </button>
      )}
    </fieldset>
  );
}
