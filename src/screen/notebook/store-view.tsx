// The sap store: what is in it and how long it keeps, what was collected, and where it went.
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { BoilRow, CollectionShown, CollectionsView, FoundView } from '../../protocol/season-messages.ts';
import { ask, said, settings } from '../client/store.ts';
import type { Wish } from '../client/types.ts';
import { NumberInput, Select } from '../boil/inputs.tsx';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import { exactStrength, mass, roundTemperature, unitSymbols, volume } from '../words/amounts.ts';
import { shortDay } from '../words/clock.ts';
import { useAsked } from './page-data.ts';
import { newSap, sapTyped } from './store-draft.ts';

const SHOWN_FIRST = 12;

type Set = (view: CollectionsView) => void;

/** Does it and shows the list as it is then; what went wrong is said. */
async function change(wish: Wish, set: Set): Promise<boolean> {
  try {
    set((await ask(wish)) as CollectionsView);
    return true;
  } catch (error) {
    said.value = { good: false, sentence: (error as Error).message };
    return false;
  }
}

function storeWords(store: CollectionsView['store']): string {
  const values = { n: store.collections, age: days(store.oldest_days ?? 0) };
  if (store.sugar_kg === null) return say('notebook.store.of', values);
  return say('notebook.store.of_sugar', { ...values, sugar: mass(store.sugar_kg, settings.value) });
}

function Level({ store }: Pick<CollectionsView, 'store'>): JSX.Element {
  const choice = settings.value;
  return (
    <section class="panel" aria-label={say('notebook.store.in_store')}>
      <h2>{say('notebook.store.in_store_amount', { amount: volume(store.litres, choice) })}</h2>
      <p>{store.collections === 0 ? say('notebook.store.nothing') : storeWords(store)}</p>
      {store.past_litres > 0 && (
        <p class="problem">✕ {say('notebook.store.past', { amount: volume(store.past_litres, choice) })}</p>
      )}
      {store.use_now_litres > 0 && (
        <p>▲ {say('notebook.store.use_now', { amount: volume(store.use_now_litres, choice) })}</p>
      )}
      <p class="hint">{say('notebook.store.practice')}</p>
    </section>
  );
}

const days = (n: number): string => say('notebook.store.days', { n });

function AddSap({ view, set }: { view: CollectionsView; set: Set }): JSX.Element {
  const [typed, setTyped] = useState(() => newSap(view.today));
  const [why, setWhy] = useState<string | null>(null);
  const units = unitSymbols(settings.value);
  const field = (name: keyof typeof typed) => (value: string) => setTyped({ ...typed, [name]: value });

  async function add(event: Event): Promise<void> {
    event.preventDefault();
    const sap = sapTyped(typed, settings.value);
    setWhy('why' in sap ? sap.why : null);
    if ('why' in sap) return;
    const { trees: _, litres: __, brix: ___, ...same } = typed;
    if (await change({ keep_collection: sap }, set)) setTyped(newSap(view.today, same));
  }

  return (
    <form class="panel" aria-label={say('notebook.store.collected_sap')} onSubmit={(event) => void add(event)}>
      <h2>{say('notebook.store.collected_sap')}</h2>
      <div class="fields">
        <label>
          <span>{say('notebook.store.day')}</span>
          <input
            type="date"
            value={typed.day}
            max={view.today}
            required
            onInput={(event) => field('day')(event.currentTarget.value)}
          />
        </label>
        <NumberInput
          label={say('notebook.store.how_much')}
          unit={units.volume}
          value={typed.litres}
          set={field('litres')}
        />
        <NumberInput
          label={say('notebook.store.its_strength')}
          unit={units.strength}
          value={typed.brix}
          set={field('brix')}
        />
        <Select
          label={say('notebook.store.sap')}
          value={typed.sap}
          options={[
            ['maple', say('notebook.store.maple')],
            ['birch', say('notebook.store.birch')],
          ]}
          set={field('sap')}
        />
        <label>
          <span>{say('notebook.store.trees')}</span>
          <input value={typed.trees} onInput={(event) => field('trees')(event.currentTarget.value)} />
        </label>
        <label>
          <span>{say('notebook.store.kept_where')}</span>
          <input value={typed.stored} onInput={(event) => field('stored')(event.currentTarget.value)} />
        </label>
        <NumberInput
          label={say('notebook.store.how_cold')}
          unit={units.temperature}
          value={typed.celsius}
          set={field('celsius')}
        />
      </div>
      {why !== null && (
        <p class="problem" role="alert">
          ✕ {why}
        </p>
      )}
      <p>
        <button type="submit" class="main-button">
          {say('notebook.store.add')}
        </button>
      </p>
    </form>
  );
}

const STATES = { fresh: null, 'use-now': 'notebook.store.last_day', past: 'notebook.store.too_old' } as const;

function ageWords(age: number, state: keyof typeof STATES): string {
  const key = STATES[state];
  return `${say('notebook.store.age', { age: days(age) })} ${key === null ? '' : say(key)}`;
}

interface RowProps {
  one: CollectionShown;
  boils: readonly BoilRow[];
  set: Set;
}

function CollectionRow({ one, boils, set }: RowProps): JSX.Element {
  const choice = settings.value;
  const { age_days: age, keeping, ...collection } = one;
  const what = say('notebook.store.what', { amount: volume(one.litres, choice), day: shortDay(one.day) });
  const give = (to: string): void => {
    const { boil: _, spoilt: __, ...inStore } = collection;
    const given = to === '' ? inStore : to === 'spoilt' ? { ...inStore, spoilt: true } : { ...inStore, boil: to };
    void change({ keep_collection: given }, set);
  };
  return (
    <tr>
      <th scope="row">{shortDay(one.day)}</th>
      <td>{volume(one.litres, choice)}</td>
      <td>{one.brix === undefined ? '–' : exactStrength(one.brix, choice)}</td>
      <td>{[one.trees, one.stored].filter((text) => text !== undefined).join(', ')}</td>
      <td>
        {[
          one.store_celsius === undefined ? null : roundTemperature(one.store_celsius, choice),
          keeping === null ? null : ageWords(age, keeping.state),
        ]
          .filter((text) => text !== null)
          .join(' · ')}
      </td>
      <td>
        <select
          aria-label={say('notebook.store.where_went', { what })}
          value={one.spoilt === true ? 'spoilt' : (one.boil ?? '')}
          onChange={(event) => give(event.currentTarget.value)}
        >
          <option value="">{say('notebook.store.still_in')}</option>
          <option value="spoilt">{say('notebook.store.spoilt')}</option>
          {boils.map(({ boil, name, started }) => (
            <option key={boil} value={boil}>
              {shortDay(started)} {name}
            </option>
          ))}
        </select>{' '}
        <button
          type="button"
          aria-label={say('notebook.store.take_out_of', { what })}
          onClick={() => void change({ drop_collection: { id: one.id } }, set)}
        >
          {say('notebook.store.take_out')}
        </button>
      </td>
    </tr>
  );
}

export function StorePart(): JSX.Element {
  const { view, problem, set } = useAsked<CollectionsView>({ collections: true }, 'store', () => false);
  const [isAll, setAll] = useState(false);
  const found = useAsked<FoundView>({ find: {} }, 'boils', () => false);
  if (problem !== null) return <p class="problem">✕ {hostWords(problem)}</p>;
  if (view === null) return <p>{say('notebook.store.looking')}</p>;
  const boils = (found.view?.boils ?? []).filter(({ practice }) => !practice);
  const shown = isAll ? view.collections : view.collections.slice(0, SHOWN_FIRST);
  return (
    <>
      <Level store={view.store} />
      <AddSap view={view} set={set} />
      {view.collections.length > 0 && (
        <section class="panel">
          <h2>{say('notebook.store.collected')}</h2>
          <table class="collections">
            <thead>
              <tr>
                <th>{say('notebook.store.day')}</th>
                <th>{say('notebook.store.how_much')}</th>
                <th>{say('notebook.store.column.strength')}</th>
                <th>{say('notebook.store.column.trees')}</th>
                <th>{say('notebook.store.column.age')}</th>
                <th>{say('notebook.store.column.went')}</th>
              </tr>
            </thead>
            <tbody>
              {shown.map((one) => (
                <CollectionRow key={one.id} one={one} boils={boils} set={set} />
              ))}
            </tbody>
          </table>
          {shown.length < view.collections.length && (
            <p>
              <button type="button" onClick={() => setAll(true)}>
                {say('notebook.show_all', { n: view.collections.length })}
              </button>
            </p>
          )}
        </section>
      )}
    </>
  );
}
