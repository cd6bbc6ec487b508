// What is asked when a boil has ended, and can be changed later: at most six fields with what was kept, or with likely values to be confirmed.
import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { BoilPageView, EndForm } from '../../protocol/season-messages.ts';
import { settings } from '../client/store.ts';
import { NumberInput } from '../boil/inputs.tsx';
import { unitSymbols } from '../words/amounts.ts';
import { endDraft, endTyped, fuelAsked, isAnswered } from './end-draft.ts';
import type { EndDraft, EndField } from './end-draft.ts';
import { keepPage } from './page-words.tsx';
import { useRefusal } from '../shell/refusal.tsx';
import { type MessageKey, say } from '../language/say.ts';

const FUEL_LABELS: Record<EndForm['fuel']['ask'], MessageKey> = {
  after_kg: 'notebook.end.after_kg',
  kg: 'notebook.end.kg',
  cords: 'notebook.end.cords',
  kwh: 'notebook.end.kwh',
};

function fuelUnit(ask: EndForm['fuel']['ask']): string {
  if (ask === 'cords') return say('notebook.end.unit_cords');
  if (ask === 'kwh') return 'kWh';
  return settings.value.mass === 'pound' ? 'lb' : 'kg';
}

interface EndFormProps {
  view: BoilPageView & { form: EndForm };
  /** After it was kept, and after it was put off. */
  kept: () => void;
  later: () => void;
}

export function EndOfBoilForm({ view, kept, later }: EndFormProps): JSX.Element {
  const { form, page, boil } = view;
  const [draft, setDraft] = useState<EndDraft>(() => endDraft(form, page, settings.value));
  const { refuse, sentence } = useRefusal();
  const place = useRef<HTMLFormElement>(null);
  useEffect(() => place.current?.querySelector('input')?.focus(), []);
  const set = (field: EndField) => (value: string) => setDraft((before) => ({ ...before, [field]: value }));
  const units = unitSymbols(settings.value);
  const fuel = fuelAsked(form, page);

  async function keep(event: Event): Promise<void> {
    event.preventDefault();
    const typed = endTyped(draft, form, page, settings.value);
    if (!typed.ok) {
      refuse(typed.why);
      return;
    }
    refuse(null);
    if ((await keepPage(boil, typed.into)) !== null) kept();
  }

  const hint = say('words.not_known');
  return (
    <form
      class="panel end-form"
      aria-label={say('notebook.end.label')}
      ref={place}
      onSubmit={(event) => void keep(event)}
    >
      <h2>{say('notebook.end.title')}</h2>
      <p>{say(isAnswered(page) ? 'notebook.end.how_again' : 'notebook.end.how')}</p>
      {form.broken_off && !isAnswered(page) && <p>{say('notebook.end.broken_off')}</p>}
      <div class="fields">
        <NumberInput
          label={say('notebook.end.syrup')}
          unit={units.volume}
          value={draft.syrup}
          set={set('syrup')}
          hint={hint}
        />
        <NumberInput
          label={say('notebook.end.density')}
          unit={units.strength}
          value={draft.strength}
          set={set('strength')}
          hint={hint}
        />
        <label>
          <span>{say('notebook.end.jars')}</span>
          <input
            value={draft.jars}
            placeholder={say(
              settings.value.volume === 'litre' ? 'notebook.end.jars_like' : 'notebook.end.jars_like_gallons',
            )}
            onInput={(event) => set('jars')(event.currentTarget.value)}
          />
        </label>
        <NumberInput
          label={say(FUEL_LABELS[fuel.ask])}
          unit={fuelUnit(fuel.ask)}
          value={draft.fuel}
          set={set('fuel')}
          hint={hint}
        />
        {form.asks_sap && (
          <NumberInput
            label={say('notebook.end.sap')}
            unit={units.volume}
            value={draft.sap}
            set={set('sap')}
            hint={hint}
          />
        )}
        <label class="end-note">
          <span>{say('notebook.end.note')}</span>
          <input class="wide" value={draft.note} onInput={(event) => set('note')(event.currentTarget.value)} />
        </label>
      </div>
      {sentence}
      <p class="row">
        <button type="submit" class="main-button">
          {say('notebook.end.keep')}
        </button>
        <button type="button" onClick={later}>
          {say('notebook.end.later')}
        </button>
      </p>
    </form>
  );
}
