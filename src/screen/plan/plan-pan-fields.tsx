// The fields of one pan in the plan: what it is called, its size, and its fire.
import type { JSX } from 'preact';
import type { PanDraft } from '../boil/boil-draft.ts';
import { Labelled, NumberInput, Select } from '../boil/inputs.tsx';
import { heats } from '../boil/pan-fields.tsx';
import { VesselFields } from '../boil/vessel-fields.tsx';
import { settings } from '../client/store.ts';
import { say } from '../language/say.ts';
import { unitSymbols } from '../words/amounts.ts';

interface PlanPanProps {
  pan: PanDraft;
  change: (pan: PanDraft) => void;
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
            set={(power) => change({ ...pan, power })}
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
