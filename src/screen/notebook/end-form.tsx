// What is asked once when a boil has ended: at most six fields with likely values, to be confirmed, changed or put off.
import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { BoilPageView, EndForm } from '../../protocol/season-messages.ts';
import { settings } from '../client/store.ts';
import { NumberInput } from '../boil/inputs.tsx';
import { unitSymbols } from '../words/amounts.ts';
import { endDraft, endTyped } from './end-draft.ts';
import type { EndDraft, EndField } from './end-draft.ts';
import { keepPage } from './page-words.tsx';

const FUEL_LABELS: Record<EndForm['fuel']['ask'], string> = {
  after_kg: 'The cylinder weighs now',
  kg: 'Fuel that was used',
  cords: 'Wood that was used',
  kwh: 'Current that was used',
};

function fuelUnit(ask: EndForm['fuel']['ask']): string {
  if (ask === 'cords') return 'cords';
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
  const [draft, setDraft] = useState<EndDraft>(() => endDraft(form, settings.value));
  const [wrong, setWrong] = useState<{ field: EndField; why: string } | null>(null);
  const place = useRef<HTMLFormElement>(null);
  useEffect(() => place.current?.querySelector('input')?.focus(), []);
  const set = (field: EndField) => (value: string) => setDraft((before) => ({ ...before, [field]: value }));
  const units = unitSymbols(settings.value);

  async function keep(event: Event): Promise<void> {
    event.preventDefault();
    const typed = endTyped(draft, form, page, settings.value);
    if (!typed.ok) {
      setWrong(typed);
      return;
    }
    setWrong(null);
    if ((await keepPage(boil, (now) => ({ ...now, ...typed.page }))) !== null) kept();
  }

  const hint = 'not known';
  return (
    <form class="panel end-form" aria-label="What came of it" ref={place} onSubmit={(event) => void keep(event)}>
      <h2>What came of it?</h2>
      <p>Filled in as it most likely was. Leave empty what nobody knows; all of it can be changed later.</p>
      <div class="fields">
        <NumberInput label="Syrup" unit={units.volume} value={draft.syrup} set={set('syrup')} hint={hint} />
        <NumberInput
          label="Its density"
          unit={units.strength}
          value={draft.strength}
          set={set('strength')}
          hint={hint}
        />
        <label>
          <span>Jars</span>
          <input
            value={draft.jars}
            placeholder="12 x 250 mL"
            onInput={(event) => set('jars')(event.currentTarget.value)}
          />
        </label>
        <NumberInput
          label={FUEL_LABELS[form.fuel.ask]}
          unit={fuelUnit(form.fuel.ask)}
          value={draft.fuel}
          set={set('fuel')}
          hint={hint}
        />
        {form.sap !== null && (
          <NumberInput
            label="All sap that went in"
            unit={units.volume}
            value={draft.sap}
            set={set('sap')}
            hint={hint}
          />
        )}
        <label class="end-note">
          <span>A note</span>
          <input class="wide" value={draft.note} onInput={(event) => set('note')(event.currentTarget.value)} />
        </label>
      </div>
      {wrong !== null && (
        <p class="problem" role="alert">
          ✕ {wrong.why}
        </p>
      )}
      <p class="row">
        <button type="submit" class="main-button">
          Keep this
        </button>
        <button type="button" onClick={later}>
          Later
        </button>
      </p>
    </form>
  );
}
