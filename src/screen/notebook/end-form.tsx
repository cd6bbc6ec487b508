// What is asked when a boil has ended, and can be changed later: at most six fields with what was kept, or with likely values to be confirmed.
import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { BoilPage, BoilPageView, EndForm } from '../../protocol/season-messages.ts';
import { sessionSignal } from '../client/session-signal.ts';
import { sayDone, settings } from '../client/store.ts';
import { NumberInput } from '../boil/inputs.tsx';
import { unitSymbols } from '../words/amounts.ts';
import {
  endDraft,
  endDraftInHand,
  endGuesses,
  endOver,
  endRemarks,
  endTyped,
  fuelAsked,
  isAnswered,
} from './end-draft.ts';
import type { EndDraft, EndField, EndInHand } from './end-draft.ts';
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

/** What was typed for a boil and is not kept yet, by boil: whoever looks elsewhere meanwhile finds it again. */
const inHand = sessionSignal<Record<string, EndInHand>>('end-form');

/** How the form is to be read: as it was kept; else what is filled in, what is a guess, and what nobody has told yet. */
function howWords(page: BoilPage, begun: EndDraft, guesses: EndDraft): string {
  if (isAnswered(page)) return say('notebook.end.how_again');
  const holds = (draft: EndDraft): boolean =>
    Object.entries(draft).some(([field, text]) => field !== 'note' && text !== '');
  return [
    ...(holds(begun) ? [say('notebook.end.how_noted')] : []),
    ...(holds(guesses) ? [say('notebook.end.how_guess')] : []),
    say('notebook.end.how_blank'),
  ].join(' ');
}

interface EndFormProps {
  view: BoilPageView & { form: EndForm };
  /** After it was kept, and after it was put off. */
  kept: () => void;
  later: () => void;
}

export function EndOfBoilForm({ view, kept, later }: EndFormProps): JSX.Element {
  const { form, page, boil } = view;
  const fuel = fuelAsked(form, page);
  const begun = endDraft(form, page, settings.value);
  const draft = endDraftInHand(begun, inHand.value?.[boil], fuel.ask, settings.value);
  const { refuse, sentence } = useRefusal();
  const place = useRef<HTMLFormElement>(null);
  useEffect(() => place.current?.querySelector('input')?.focus(), []);
  const set = (field: EndField) => (value: string) => {
    // What was typed before in other units goes on in the units shown.
    const typed = Object.keys(inHand.value?.[boil]?.fields ?? {}) as EndField[];
    const fields = { ...Object.fromEntries(typed.map((each) => [each, draft[each]])), [field]: value };
    inHand.value = { ...inHand.value, [boil]: { fields, units: settings.value } };
  };
  const units = unitSymbols(settings.value);
  const jarsLike = say(settings.value.volume === 'litre' ? 'notebook.end.jars_like' : 'notebook.end.jars_like_gallons');

  async function keep(event: Event): Promise<void> {
    event.preventDefault();
    const typed = endTyped(draft, form, page, settings.value);
    if (!typed.ok) {
      refuse(typed.why);
      place.current?.querySelector<HTMLElement>(`[data-field="${typed.field}"] input`)?.focus();
      return;
    }
    refuse(null);
    if ((await keepPage(boil, typed.into)) === null) return;
    const { [boil]: _, ...others } = inHand.value ?? {};
    inHand.value = others;
    const isNew = JSON.stringify(typed.into(page)) !== JSON.stringify(page);
    sayDone(say(isNew ? 'notebook.end.kept' : 'notebook.end.nothing'));
    kept();
  }

  const guesses = endGuesses(form, page, settings.value);
  const hint = (field: EndField): string =>
    guesses[field] === '' ? say('words.not_known') : say('notebook.end.likely', { guess: guesses[field] });
  return (
    <form
      class="panel end-form"
      aria-label={say('notebook.end.label')}
      ref={place}
      onSubmit={(event) => void keep(event)}
    >
      <h2>{say('notebook.end.title')}</h2>
      <p>{howWords(page, begun, guesses)}</p>
      {endRemarks(form, page, settings.value).map((remark) => (
        <p key={remark}>{remark}</p>
      ))}
      <div class="fields">
        <NumberInput
          field="syrup"
          label={say('notebook.end.syrup')}
          unit={units.volume}
          value={draft.syrup}
          set={set('syrup')}
          hint={hint('syrup')}
        />
        <NumberInput
          field="strength"
          label={say('notebook.end.density')}
          unit={units.strength}
          value={draft.strength}
          set={set('strength')}
          hint={hint('strength')}
        />
        <label data-field="jars">
          <span>{say('notebook.end.jars')}</span>
          <input
            value={draft.jars}
            placeholder={guesses.jars === '' ? jarsLike : hint('jars')}
            onInput={(event) => set('jars')(event.currentTarget.value)}
          />
        </label>
        <NumberInput
          field="fuel"
          label={say(FUEL_LABELS[fuel.ask])}
          unit={fuelUnit(fuel.ask)}
          value={draft.fuel}
          set={set('fuel')}
          hint={hint('fuel')}
        />
        {form.asks_sap && (
          <NumberInput
            field="sap"
            label={say('notebook.end.sap')}
            unit={units.volume}
            value={draft.sap}
            set={set('sap')}
            hint={hint('sap')}
          />
        )}
        <label class="end-note">
          <span>{say('notebook.end.note')}</span>
          <input class="wide" value={draft.note} onInput={(event) => set('note')(event.currentTarget.value)} />
        </label>
      </div>
      <p role="status">{endOver(draft, form, settings.value)}</p>
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
