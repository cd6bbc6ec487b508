// The boils that are kept: found by words, sap, days and outcome, sorted by any column, each a way to its page.
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { BoilOutcome, BoilRow, FigureName, Find, FoundView } from '../../protocol/season-messages.ts';
import { saps, settings } from '../client/store.ts';
import { Select } from '../boil/inputs.tsx';
import { openReplay } from '../replay/replay-control.ts';
import { addressOf } from '../shell/routes.ts';
import { dayAndTime } from '../words/clock.ts';
import { figureLabel, figureWords } from '../words/figure-words.ts';
import { useAsked } from './page-data.ts';

const OUTCOME_WORDS: readonly (readonly [BoilOutcome | '', string])[] = [
  ['', 'any'],
  ['finished', 'reached its finish'],
  ['past-finish', 'went past it'],
  ['scorch-risk', 'was about to burn'],
  ['burnt', 'burnt'],
  ['unfinished', 'was not finished'],
];

/** A season's worth of boils is shown at once. */
const SHOWN_FIRST = 30;

/** The columns that stand in the table. */
const COLUMNS: readonly FigureName[] = ['sap_litres', 'syrup_litres', 'ratio', 'fuel_mj_per_l'];
const SORTS: readonly (readonly [NonNullable<Find['sort']>, string])[] = [
  ['started', 'newest first'],
  ['name', 'name'],
  ...(['syrup_litres', 'sap_litres', 'ratio', 'gap_sugar_kg', 'water_off_l_per_h', 'boiling_hours'] as const).map(
    (name) => [name, figureLabel(name).toLowerCase()] as const,
  ),
  ...(['fuel_mj_per_l', 'fuel_kg_per_l', 'cost_a_jar', 'jars', 'alarms'] as const).map(
    (name) => [name, figureLabel(name).toLowerCase()] as const,
  ),
];

function Deeds({ boil, name }: { boil: string; name: string }): JSX.Element {
  return (
    <div class="row">
      <button type="button" aria-label={`Replay ${name}`} onClick={() => void openReplay(boil)}>
        Replay
      </button>
      <a class="button" aria-label={`Export ${name}`} href={`boils/${encodeURIComponent(boil)}.boil.jsonl`} download>
        Export
      </a>
    </div>
  );
}

function Row({ row }: { row: BoilRow }): JSX.Element {
  const { figures } = row;
  const name = row.name === '' ? 'A boil without a name' : row.name;
  return (
    <tr>
      <th scope="row">
        <a href={addressOf('notebook', 'boil', row.boil)}>{name}</a>
        {row.practice && <span class="tag tag-practice">practice</span>}
        {row.running && <span class="tag">running</span>}
      </th>
      <td>{dayAndTime(row.started)}</td>
      {COLUMNS.map((column) => (
        <td key={column} data-label={figureLabel(column)}>
          {figures === null ? (row.running ? '' : '…') : figureWords(column, figures[column], settings.value)}
        </td>
      ))}
      <td>
        <Deeds boil={row.boil} name={name} />
      </td>
    </tr>
  );
}

/** Names from A on; all else the newest or the greatest first, unless it is turned round. */
const isDescending = ({ sort }: Find): boolean => sort !== 'name';

interface FinderProps {
  find: Find;
  set: (find: Find) => void;
}

function Finder({ find, set }: FinderProps): JSX.Element {
  const change = (part: Partial<Find>): void => {
    const next = { ...find, ...part };
    set(Object.fromEntries(Object.entries(next).filter(([, value]) => value !== '' && value !== undefined)));
  };
  const kinds = [['', 'any'] as const, ...saps.value.map(({ key, name }) => [key, name] as const)];
  return (
    <details class="finder">
      <summary>Find and sort</summary>
      <div class="fields">
        <label>
          <span>Words in it</span>
          <input
            type="search"
            value={find.text ?? ''}
            onInput={(event) => change({ text: event.currentTarget.value })}
          />
        </label>
        <Select label="Sap" value={(find.sap ?? '') as string} options={kinds} set={(sap) => change({ sap })} />
        <label>
          <span>Pan</span>
          <input value={find.pan ?? ''} onInput={(event) => change({ pan: event.currentTarget.value })} />
        </label>
        <Select
          label="Outcome"
          value={find.outcome ?? ''}
          options={OUTCOME_WORDS}
          set={(outcome) => change({ outcome: outcome === '' ? undefined : outcome })}
        />
        <label>
          <span>From</span>
          <input type="date" value={find.from ?? ''} onInput={(event) => change({ from: event.currentTarget.value })} />
        </label>
        <label>
          <span>To</span>
          <input type="date" value={find.to ?? ''} onInput={(event) => change({ to: event.currentTarget.value })} />
        </label>
        <Select
          label="Sorted by"
          value={find.sort ?? 'started'}
          options={SORTS}
          set={(sort) => change({ sort, descending: isDescending({ sort }) })}
        />
        <label class="check">
          <input
            type="checkbox"
            checked={find.descending !== undefined && find.descending !== isDescending(find)}
            onChange={(event) => change({ descending: isDescending(find) !== event.currentTarget.checked })}
          />
          <span>The other way round</span>
        </label>
      </div>
    </details>
  );
}

export function BoilList({ stamp }: { stamp: number }): JSX.Element {
  const [find, setFind] = useState<Find>({});
  const { view, problem } = useAsked<FoundView>(
    { find },
    `${stamp} ${JSON.stringify(find)}`,
    ({ working }) => working > 0,
  );
  const [isAll, setAll] = useState(false);
  const shown = isAll ? (view?.boils ?? []) : (view?.boils ?? []).slice(0, SHOWN_FIRST);
  const isFiltered = Object.keys(find).some((key) => key !== 'sort' && key !== 'descending');
  return (
    <>
      {problem !== null && <p class="problem">✕ {problem}</p>}
      {view !== null && (view.boils.length > 0 || isFiltered) && <Finder find={find} set={setFind} />}
      {view?.boils.length === 0 && <p>{isFiltered ? 'No boil is like that.' : 'No boil is kept yet.'}</p>}
      {view !== null && view.boils.length > 0 && (
        <table class="boils">
          <thead>
            <tr>
              <th>Boil</th>
              <th>Begun</th>
              {COLUMNS.map((name) => (
                <th key={name}>{figureLabel(name)}</th>
              ))}
              <th>Open it</th>
            </tr>
          </thead>
          <tbody>
            {shown.map((row) => (
              <Row key={row.boil} row={row} />
            ))}
          </tbody>
        </table>
      )}
      {view !== null && shown.length < view.boils.length && (
        <p>
          <button type="button" onClick={() => setAll(true)}>
            Show all {view.boils.length}
          </button>
        </p>
      )}
    </>
  );
}
