// The fields of one pan in the plan: what it is called, its size, its fire, and whether that is for the end only.
import type { JSX } from 'preact';
import { problemInPower } from '../boil/boil-draft.ts';
import type { PanDraft } from '../boil/boil-draft.ts';
import { Labelled, NumberInput, saidOptions, Select } from '../boil/inputs.tsx';
import { heats } from '../boil/pan-fields.tsx';
import { VesselFields } from '../boil/vessel-fields.tsx';
import { settings } from '../client/store.ts';
import { say } from '../language/say.ts';
import { unitSymbols } from '../words/amounts.ts';

const LIT = [
  ['first', 'plan.lit.first'],
  ['end', 'plan.lit.end'],
] as const;

interface PlanPanProps {
  pan: PanDraft;
  change: (pan: PanDraft) => void;
  /** null for the only pan, which is lit from the start. */
  remove: (() => void) | null;
}

export function PlanPanFields({ pan, change, remove }: PlanPanProps): JSX.Element {
  return (
    <fieldset class="pan-fields">
      <legend>{pan.name || say('boil.pan')}</legend>
      <div class="fields">
        <Labelled label={say('boil.called')}>
          <input
            value={pan.name}
            maxLength={40}
            onInput={(event) => change({ ...pan, name: event.currentTarget.value })}
          />
        </Labelled>
        <VesselFields vessel={pan.vessel} set={(vessel) => change({ ...pan, vessel })} />
        <Select label={say('boil.fire')} value={pan.heat} options={heats()} set={(heat) => change({ ...pan, heat })} />
        {pan.heat !== '' && (
          <NumberInput
            label={say('boil.power')}
            unit={unitSymbols(settings.value).power}
            value={pan.power}
            wrong={problemInPower(pan, settings.value)}
            set={(power) => change({ ...pan, power })}
          />
        )}
        {remove !== null && (
          <Select
            label={say('plan.lit')}
            value={pan.before.for_end === true ? 'end' : 'first'}
            options={saidOptions(LIT)}
            set={(lit) => change({ ...pan, before: { ...pan.before, for_end: lit === 'end' ? true : undefined } })}
          />
        )}
      </div>
      {remove !== null && (
        <button type="button" onClick={remove}>
          {say('boil.remove_pan')}
        </button>
      )}
    </fieldset>
  );
}
