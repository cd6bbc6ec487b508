// The sap store: what is in it and how long it keeps, what was collected, and where it went.
import type { JSX } from 'preact';
import { DateInput } from '../boil/date-input.tsx';
import { useState } from 'preact/hooks';
import type { BoilRow, CollectionShown, CollectionsView, FoundView } from '../../protocol/season-messages.ts';
import { ask, said, saps, settings } from '../client/store.ts';
import type { Wish } from '../client/types.ts';
import { NumberInput, Select } from '../boil/inputs.tsx';
import { exactStrength, mass, roundTemperature, unitSymbols, volume } from '../words/amounts.ts';
import { shortDay } from '../words/clock.ts';
import { sapKeyOf, sapKindName } from '../words/sap-words.ts';
import { useAsked } from './page-data.ts';
import { muchDoubt, newSap, nextSap, sapTyped } from './store-draft.ts';
import { areMixed, inStore, storedWords } from './store-kinds.ts';
import { useRefusal } from '../shell/refusal.tsx';
import { say } from '../language/say.ts';
import { hostWords } from '../language/host-words.ts';

const SHOWN_FIRST = 12;
/** What the notebook keeps of the trees and the place. */
const MOST_LETTERS = 200;

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

/** How cold sap is supposed to stand where nobody says it, °C (core/season/store.ts). */
const SUPPOSED_C = 4;

function Level({ store, collections }: Pick<CollectionsView, 'store' | 'collections'>): JSX.Element {
  const choice = settings.value;
  const litres = (state?: 'past' | 'use-now'): string => storedWords(collections, choice, saps.value, state);
  const isMixed = areMixed(inStore(collections), saps.value);
  const of = { collections: store.collections, days: store.oldest_days ?? 0 };
  return (
    <section class="panel" aria-label={say('store.in')}>
      <h2>{store.collections === 0 ? say('store.in') : say('store.level', { litres: litres() })}</h2>
      <p>
        {store.collections === 0
          ? say('store.nothing')
          : store.sugar_kg === null || isMixed
            ? say('store.of', of)
            : say('store.of_sugar', { ...of, mass: mass(store.sugar_kg, choice) })}
      </p>
      {store.past_litres > 0 && <p class="problem">✕ {say('store.past', { litres: litres('past') })}</p>}
      {store.use_now_litres > 0 && <p>▲ {say('store.use_now', { litres: litres('use-now') })}</p>}
      <p class="hint">{say('store.practice', { cold: roundTemperature(SUPPOSED_C, choice) })}</p>
    </section>
  );
}

function AddSap({ view, set }: { view: CollectionsView; set: Set }): JSX.Element {
  const [typed, setTyped] = useState(() => newSap(view.today));
  const { refuse, sentence } = useRefusal();
  const units = unitSymbols(settings.value);
  const field = (name: keyof typeof typed) => (value: string) => setTyped({ ...typed, [name]: value });

  // So much was asked about already, litres.
  const [asked, setAsked] = useState<number | null>(null);

  async function add(event: Event): Promise<void> {
    event.preventDefault();
    const sap = sapTyped(typed, settings.value);
    const doubt = 'why' in sap || sap.litres === asked ? null : muchDoubt(sap.litres, settings.value);
    refuse('why' in sap ? sap.why : doubt);
    setAsked(doubt === null || 'why' in sap ? null : sap.litres);
    if ('why' in sap || doubt !== null) return;
    if (await change({ keep_collection: sap }, set)) setTyped(nextSap(view.today, typed));
  }

  return (
    <form class="panel" aria-label={say('store.collected')} onSubmit={(event) => void add(event)}>
      <h2>{say('store.collected')}</h2>
      <div class="fields">
        <DateInput label={say('store.day')} value={typed.day} set={field('day')} most={view.today} required />
        <NumberInput label={say('store.how_much')} unit={units.volume} value={typed.litres} set={field('litres')} />
        <NumberInput label={say('store.its_strength')} unit={units.strength} value={typed.brix} set={field('brix')} />
        <Select
          label={say('store.sap')}
          value={typed.sap}
          options={[
            ['maple', say('store.maple')],
            ['birch', say('store.birch')],
          ]}
          set={field('sap')}
        />
        <label>
          <span>{say('store.trees')}</span>
          <input
            maxLength={MOST_LETTERS}
            value={typed.trees}
            onInput={(event) => field('trees')(event.currentTarget.value)}
          />
        </label>
        <label>
          <span>{say('store.where')}</span>
          <input
            maxLength={MOST_LETTERS}
            value={typed.stored}
            onInput={(event) => field('stored')(event.currentTarget.value)}
          />
        </label>
        <NumberInput label={say('store.cold')} unit={units.temperature} value={typed.celsius} set={field('celsius')} />
      </div>
      {sentence}
      <p>
        <button type="submit" class="main-button">
          {say('store.add')}
        </button>
      </p>
    </form>
  );
}

const STATES = { fresh: null, 'use-now': 'store.last_day', past: 'store.older' } as const;

const stateWords = (state: keyof typeof STATES): string => {
  const key = STATES[state];
  return key === null ? '' : say(key);
};

interface RowProps {
  one: CollectionShown;
  boils: readonly BoilRow[];
  /** Something that is shown is still in store: what was boiled or poured away ages no more. */
  hasAge: boolean;
  /** More than one kind of sap is shown. */
  hasKind: boolean;
  set: Set;
}

function CollectionRow({ one, boils, hasAge, hasKind, set }: RowProps): JSX.Element {
  const choice = settings.value;
  const { age_days: age, keeping, ...collection } = one;
  const what = say('store.what', { litres: volume(one.litres, choice), day: shortDay(one.day) });
  const give = (to: string): void => {
    const { boil: _, spoilt: __, ...inStore } = collection;
    const given = to === '' ? inStore : to === 'spoilt' ? { ...inStore, spoilt: true } : { ...inStore, boil: to };
    void change({ keep_collection: given }, set);
  };
  return (
    <tr>
      <th scope="row">{shortDay(one.day)}</th>
      {hasKind && <td>{sapKindName(sapKeyOf(one.sap, saps.value))}</td>}
      <td>{volume(one.litres, choice)}</td>
      <td>{one.brix === undefined ? '–' : exactStrength(one.brix, choice)}</td>
      <td>
        {[
          one.trees,
          one.stored,
          one.store_celsius === undefined ? undefined : roundTemperature(one.store_celsius, choice),
        ]
          .filter((text) => text !== undefined)
          .join(', ')}
      </td>
      {hasAge && <td>{keeping !== null && say('store.age', { days: age, state: stateWords(keeping.state) })}</td>}
      <td>
        <select
          aria-label={say('store.where_went', { what })}
          value={one.spoilt === true ? 'spoilt' : (one.boil ?? '')}
          onChange={(event) => give(event.currentTarget.value)}
        >
          <option value="">{say('store.in_store')}</option>
          <option value="spoilt">{say('store.poured_away')}</option>
          {boils.map(({ boil, name, started }) => (
            <option key={boil} value={boil}>
              {shortDay(started)} {name}
            </option>
          ))}
        </select>{' '}
        <button
          type="button"
          aria-label={say('store.take_out_of', { what })}
          onClick={() => void change({ drop_collection: { id: one.id } }, set)}
        >
          {say('store.take_out')}
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
  if (view === null) return <p>{say('store.looking')}</p>;
  const boils = (found.view?.boils ?? []).filter(({ practice }) => !practice);
  const shown = isAll ? view.collections : view.collections.slice(0, SHOWN_FIRST);
  const hasKind = areMixed(shown, saps.value);
  const hasAge = shown.some(({ keeping }) => keeping !== null);
  return (
    <>
      <Level store={view.store} collections={view.collections} />
      <AddSap view={view} set={set} />
      {view.collections.length > 0 && (
        <section class="panel">
          <h2>{say('store.list')}</h2>
          <table class="collections">
            <thead>
              <tr>
                <th>{say('store.day')}</th>
                {hasKind && <th>{say('store.sap')}</th>}
                <th>{say('store.how_much')}</th>
                <th>{say('store.strength')}</th>
                <th>{say('store.trees_where')}</th>
                {hasAge && <th>{say('store.age_head')}</th>}
                <th>{say('store.went')}</th>
              </tr>
            </thead>
            <tbody>
              {shown.map((one) => (
                <CollectionRow key={one.id} one={one} boils={boils} hasAge={hasAge} hasKind={hasKind} set={set} />
              ))}
            </tbody>
          </table>
          {shown.length < view.collections.length && (
            <p>
              <button type="button" onClick={() => setAll(true)}>
                {say('notebook.show_all', { count: view.collections.length })}
              </button>
            </p>
          )}
        </section>
      )}
    </>
  );
}
