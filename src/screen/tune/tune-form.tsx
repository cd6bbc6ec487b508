// Which boils are to be run again, and under which settings, side by side.
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { SEARCHED } from '../../protocol/tune-messages.ts';
import { settings, tell } from '../client/store.ts';
import type { BoilListing } from '../client/types.ts';
import { BoilTicks } from '../notebook/boil-ticks.tsx';
import { useRefusal } from '../shell/refusal.tsx';
import { changedTried, anotherTried, firstTried, MOST_TRIED, patchOf, problemInTried, TRIED } from './tune-draft.ts';
import type { FieldChoice, TriedSettings } from './tune-draft.ts';
import { say } from '../language/say.ts';
import { fieldWords } from '../words/tune-words.ts';

interface FieldProps {
  choice: FieldChoice;
  one: TriedSettings;
  set: (one: TriedSettings) => void;
}

function Field({ choice: { field, label, options }, one, set }: FieldProps): JSX.Element {
  const value = one[field];
  const shown =
    value === null || options.some(([each]) => each === value)
      ? options
      : [...options, [value, () => fieldWords(field, value)] as const];
  return (
    <label>
      <span>{say(label)}</span>
      <select
        value={value === null ? '' : String(value)}
        onChange={({ currentTarget: { value: chosen } }) =>
          set(changedTried(one, field, chosen === '' ? null : Number(chosen)))
        }
      >
        <option value="">{say('tune.as_was')}</option>
        {shown.map(([each, word]) => (
          <option key={each} value={String(each)}>
            {word()}
          </option>
        ))}
      </select>
    </label>
  );
}

interface TriedProps {
  one: TriedSettings;
  set: (one: TriedSettings) => void;
  remove: (() => void) | null;
}

function Tried({ one, set, remove }: TriedProps): JSX.Element {
  return (
    <fieldset class="tried">
      <legend>{one.name || say('tune.nameless')}</legend>
      <label>
        <span>{say('tune.called')}</span>
        <input value={one.name} maxLength={40} onInput={(event) => set({ ...one, name: event.currentTarget.value })} />
      </label>
      {TRIED.map((choice) => (
        <Field key={choice.field} choice={choice} one={one} set={set} />
      ))}
      {remove !== null && (
        <button type="button" onClick={remove}>
          {say('tune.take_away')}
        </button>
      )}
    </fieldset>
  );
}

interface RunAgainProps {
  boils: readonly BoilListing[];
  left: readonly string[];
  set: (left: string[]) => void;
}

/** All are ticked at first: those that somebody takes out are remembered. */
function RunAgain({ boils, left, set }: RunAgainProps): JSX.Element {
  const count = boils.length - left.length;
  return (
    <details class="finder">
      <summary>{say('tune.count', { count, boils: boils.length })}</summary>
      <p class="row">
        <button type="button" onClick={() => set([])}>
          {say('tune.all')}
        </button>
        <button type="button" onClick={() => set(boils.map(({ boil }) => boil))}>
          {say('tune.none')}
        </button>
      </p>
      <BoilTicks
        boils={boils}
        ticked={boils.map(({ boil }) => boil).filter((boil) => !left.includes(boil))}
        toggle={(boil) => set(left.includes(boil) ? left.filter((each) => each !== boil) : [...left, boil])}
      />
    </details>
  );
}

interface TuneFormProps {
  /** Those that are over. */
  boils: readonly BoilListing[];
  /** The one boil that is asked about, or null for all. */
  only: string | null;
}

export function TuneForm({ boils, only }: TuneFormProps): JSX.Element {
  const others = boils.map(({ boil }) => boil).filter((boil) => boil !== only);
  const practice = boils.filter((each) => each.practice).map(({ boil }) => boil);
  const [left, setLeft] = useState<string[]>(only === null ? practice : others);
  const [tried, setTried] = useState<TriedSettings[]>(() => firstTried(settings.value));
  const { refuse, sentence } = useRefusal();
  const chosen = boils.map(({ boil }) => boil).filter((boil) => !left.includes(boil));
  const replace = (place: number, next: TriedSettings[]): void =>
    setTried(tried.flatMap((each, i) => (i === place ? next : [each])));

  async function run(event: Event): Promise<void> {
    event.preventDefault();
    const wrong = problemInTried(tried, chosen.length);
    refuse(wrong);
    if (wrong !== null) return;
    const asked = tried.map((each) => ({ name: each.name.trim(), patch: patchOf(each) }));
    await tell({ tune_start: { boils: chosen, settings: asked, search: [] } });
  }

  async function search(): Promise<void> {
    refuse(chosen.length === 0 ? say('tune.choose_one') : null);
    if (chosen.length > 0) await tell({ tune_start: { boils: chosen, settings: [], search: [...SEARCHED] } });
  }

  return (
    <form class="panel" aria-label={say('tune.title_how')} onSubmit={(event) => void run(event)} noValidate>
      <h2>{say('tune.title_how')}</h2>
      <p class="hint">{say('tune.how')}</p>
      <RunAgain boils={boils} left={left} set={setLeft} />
      <div class="tried-list">
        {tried.map((one, i) => (
          <Tried
            key={i}
            one={one}
            set={(next) => replace(i, [next])}
            remove={tried.length > 1 ? () => replace(i, []) : null}
          />
        ))}
      </div>
      {sentence}
      <p class="row">
        <button type="submit" class="main-button">
          {say('tune.run')}
        </button>
        {tried.length < MOST_TRIED && (
          <button type="button" onClick={() => setTried([...tried, anotherTried(tried)])}>
            {say('tune.add')}
          </button>
        )}
        <button type="button" onClick={() => void search()}>
          {say('tune.search')}
        </button>
      </p>
    </form>
  );
}
