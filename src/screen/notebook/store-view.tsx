// The sap store: what is in it and how long it keeps, what was collected, and where it went.
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { BoilRow, CollectionShown, CollectionsView, FoundView } from '../../protocol/season-messages.ts';
import { ask, said, settings } from '../client/store.ts';
import type { Wish } from '../client/types.ts';
import { NumberInput, Select } from '../boil/inputs.tsx';
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

function Level({ store }: Pick<CollectionsView, 'store'>): JSX.Element {
  const choice = settings.value;
  const sugar = store.sugar_kg === null ? '' : `, ${mass(store.sugar_kg, choice)} of sugar in it`;
  return (
    <section class="panel" aria-label="In store">
      <h2>In store: {volume(store.litres, choice)}</h2>
      <p>
        {store.collections === 0
          ? 'Nothing is in store.'
          : `Of ${store.collections} collections${sugar}. The oldest is ${days(store.oldest_days ?? 0)} old.`}
      </p>
      {store.past_litres > 0 && (
        <p class="problem">
          ✕ {volume(store.past_litres, choice)} is older than it keeps: smell and taste before you boil it.
        </p>
      )}
      {store.use_now_litres > 0 && (
        <p>▲ {volume(store.use_now_litres, choice)} is on its last good day: boil it today.</p>
      )}
      <p class="hint">
        Common practice: birch keeps two to three days in the cold; maple is treated like milk, the colder the longer.
        Where nobody says how cold, 4 °C is supposed.
      </p>
    </section>
  );
}

const days = (count: number): string => (count === 1 ? '1 day' : `${count} days`);

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
    <form class="panel" aria-label="Sap that was collected" onSubmit={(event) => void add(event)}>
      <h2>Sap that was collected</h2>
      <div class="fields">
        <label>
          <span>Day</span>
          <input
            type="date"
            value={typed.day}
            max={view.today}
            required
            onInput={(event) => field('day')(event.currentTarget.value)}
          />
        </label>
        <NumberInput label="How much" unit={units.volume} value={typed.litres} set={field('litres')} />
        <NumberInput label="Its strength" unit={units.strength} value={typed.brix} set={field('brix')} />
        <Select
          label="Sap"
          value={typed.sap}
          options={[
            ['maple', 'Maple'],
            ['birch', 'Birch'],
          ]}
          set={field('sap')}
        />
        <label>
          <span>Which trees</span>
          <input value={typed.trees} onInput={(event) => field('trees')(event.currentTarget.value)} />
        </label>
        <label>
          <span>Kept where</span>
          <input value={typed.stored} onInput={(event) => field('stored')(event.currentTarget.value)} />
        </label>
        <NumberInput label="How cold" unit={units.temperature} value={typed.celsius} set={field('celsius')} />
      </div>
      {why !== null && (
        <p class="problem" role="alert">
          ✕ {why}
        </p>
      )}
      <p>
        <button type="submit" class="main-button">
          Add it
        </button>
      </p>
    </form>
  );
}

const STATES = { fresh: '', 'use-now': '▲ last good day', past: '✕ older than it keeps' } as const;

interface RowProps {
  one: CollectionShown;
  boils: readonly BoilRow[];
  set: Set;
}

function CollectionRow({ one, boils, set }: RowProps): JSX.Element {
  const choice = settings.value;
  const { age_days: age, keeping, ...collection } = one;
  const what = `${volume(one.litres, choice)} of ${shortDay(one.day)}`;
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
          keeping === null ? null : `${days(age)} old ${STATES[keeping.state]}`,
        ]
          .filter((text) => text !== null)
          .join(' · ')}
      </td>
      <td>
        <select
          aria-label={`Where ${what} went`}
          value={one.spoilt === true ? 'spoilt' : (one.boil ?? '')}
          onChange={(event) => give(event.currentTarget.value)}
        >
          <option value="">in store</option>
          <option value="spoilt">poured away</option>
          {boils.map(({ boil, name, started }) => (
            <option key={boil} value={boil}>
              {shortDay(started)} {name}
            </option>
          ))}
        </select>{' '}
        <button
          type="button"
          aria-label={`Take ${what} out of the list`}
          onClick={() => void change({ drop_collection: { id: one.id } }, set)}
        >
          Take out
        </button>
      </td>
    </tr>
  );
}

export function StorePart(): JSX.Element {
  const { view, problem, set } = useAsked<CollectionsView>({ collections: true }, 'store', () => false);
  const [isAll, setAll] = useState(false);
  const found = useAsked<FoundView>({ find: {} }, 'boils', () => false);
  if (problem !== null) return <p class="problem">✕ {problem}</p>;
  if (view === null) return <p>Looking into the store …</p>;
  const boils = (found.view?.boils ?? []).filter(({ practice }) => !practice);
  const shown = isAll ? view.collections : view.collections.slice(0, SHOWN_FIRST);
  return (
    <>
      <Level store={view.store} />
      <AddSap view={view} set={set} />
      {view.collections.length > 0 && (
        <section class="panel">
          <h2>Collected</h2>
          <table class="collections">
            <thead>
              <tr>
                <th>Day</th>
                <th>How much</th>
                <th>Strength</th>
                <th>Trees, kept where</th>
                <th>Age</th>
                <th>Went into</th>
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
                Show all {view.collections.length}
              </button>
            </p>
          )}
        </section>
      )}
    </>
  );
}
