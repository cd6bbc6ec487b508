// A past boil under other choices: a form over its set-up, tried by a press, and what the calls would have been.
import type { JSX } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { FinishFields, LeadFields, LeastDepthField } from '../boil/limit-fields.tsx';
import { NumberInput } from '../boil/inputs.tsx';
import { SapFields } from '../boil/sap-fields.tsx';
import { VesselFields } from '../boil/vessel-fields.tsx';
import { saps, settings, tell } from '../client/store.ts';
import type { Header, Now } from '../client/types.ts';
import { KeyButton } from '../shell/key-button.tsx';
import { scrollClear } from '../shell/scroll-clear.ts';
import { unitSymbols } from '../words/amounts.ts';
import { panName } from '../words/pan-words.ts';
import { probesOf } from '../words/replay-words.ts';
import { choicesDraft, patchOf, problemInChoices, withPan } from './choices-draft.ts';
import type { ChoicesDraft } from './choices-draft.ts';
import { DifferencesPanel } from './differences-panel.tsx';
import { useRefusal } from '../shell/refusal.tsx';
import { say } from '../language/say.ts';

interface FieldsProps {
  draft: ChoicesDraft;
  header: Header;
  pan: string;
  set: (draft: ChoicesDraft) => void;
}

function PanChoices({ draft, header, pan: id, set }: FieldsProps): JSX.Element | null {
  const pan = draft.boil.pans.find(({ before }) => before.id === id);
  if (pan === undefined) return null;
  const change = (next: typeof pan): void => set(withPan(draft, next));
  const fields = { pan, standing: null, change };
  const units = unitSymbols(settings.value);
  return (
    <fieldset class="pan-fields">
      <legend>{panName(header, id)}</legend>
      <div class="fields">
        <FinishFields {...fields} />
        <LeastDepthField {...fields} />
        <LeadFields {...fields} />
        <SapFields sap={pan.sap} set={(sap) => change({ ...pan, sap })} />
        <VesselFields vessel={pan.vessel} set={(vessel) => change({ ...pan, vessel })} />
        {probesOf(header, id).map((probe) => (
          <NumberInput
            key={probe}
            label={say('replay.choice.offset', { probe })}
            unit={units.temperature}
            value={draft.offsets[probe] ?? ''}
            set={(typed) => set({ ...draft, offsets: { ...draft.offsets, [probe]: typed } })}
          />
        ))}
      </div>
    </fieldset>
  );
}

function Form({ header, pan, close }: { header: Header; pan: string; close: () => void }): JSX.Element {
  const [typed, setTyped] = useState<ChoicesDraft | null>(null);
  const { refuse, sentence } = useRefusal();
  const draft = typed ?? choicesDraft(header, settings.value, saps.value);

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const wrong = problemInChoices(draft, settings.value);
    const patch = wrong === null ? patchOf(draft, header, settings.value, saps.value) : null;
    refuse(wrong ?? (patch === null ? say('replay.choice.none') : null));
    if (patch !== null && (await tell({ replay_choices: { patch } }))) close();
  }

  return (
    <form aria-label={say('replay.choice.title')} onSubmit={(event) => void submit(event)} noValidate>
      <p class="hint">{say('replay.choice.how')}</p>
      <PanChoices draft={draft} header={header} pan={pan} set={setTyped} />
      <div class="fields">
        <NumberInput
          label={say('replay.choice.height')}
          unit={unitSymbols(settings.value).height}
          value={draft.boil.altitude}
          set={(altitude) => setTyped({ ...draft, boil: { ...draft.boil, altitude } })}
        />
      </div>
      {sentence}
      <p class="row">
        <button type="submit" class="main-button">
          {say('replay.choice.try')}
        </button>
        <button type="button" onClick={close}>
          {say('replay.choice.leave')}
        </button>
      </p>
    </form>
  );
}

export function ChoicesPanel({ now, pan }: { now: Now; pan: string }): JSX.Element | null {
  const [isOpen, setOpen] = useState(false);
  const isOther = (now.replay?.choices ?? null) !== null;
  const panel = useRef<HTMLElement>(null);
  // It may lie under the fold: what a key opened, or what came of it, is brought into sight.
  useLayoutEffect(() => {
    const element = panel.current;
    if (element === null || !(isOpen || isOther)) return;
    scrollClear(element);
    if (isOpen) element.querySelector<HTMLElement>('form select, form input')?.focus({ preventScroll: true });
  }, [isOpen, isOther]);
  if (now.header === null) return null;
  return (
    <section ref={panel} class="panel choices" aria-labelledby="other-choices">
      <div class="row">
        <h2 id="other-choices">{isOther ? say('replay.choice.with') : say('replay.choice.what_if')}</h2>
        {!isOpen && (
          <KeyButton letter="C" act={() => setOpen(true)}>
            {say('replay.choice.title')}
          </KeyButton>
        )}
        {isOther && (
          <button type="button" onClick={() => void tell({ replay_choices: { patch: null } })}>
            {say('replay.choice.as_it_was')}
          </button>
        )}
      </div>
      {isOpen && <Form key={pan} header={now.header} pan={pan} close={() => setOpen(false)} />}
      {isOther && <DifferencesPanel now={now} pan={pan} />}
    </section>
  );
}
