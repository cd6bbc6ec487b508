// The boils that are kept: found by words, sap, days and outcome, sorted by any column, each a way to its page.
import type { JSX } from 'preact';
import { DateInput } from '../boil/date-input.tsx';
import { useRef, useState } from 'preact/hooks';
import type { BoilOutcome, BoilRow, FigureName, Find, FoundView } from '../../protocol/season-messages.ts';
import { saps, settings } from '../client/store.ts';
import { Select, saidOptions } from '../boil/inputs.tsx';
import { openReplay } from '../replay/replay-control.ts';
import { addressOf } from '../shell/routes.ts';
import { dayAndTime } from '../words/clock.ts';
import { cellWords, figureLabel, heatUnitWords, isRatioOfPart, isRatioOpen } from '../words/figure-words.ts';
import { listColumns } from './list-columns.ts';
import { useAsked } from './page-data.ts';
import { type MessageKey, say } from '../language/say.ts';
import { hostWords } from '../language/host-words.ts';
import { keepPage } from './page-words.tsx';
import { boilName } from '../words/boil-name.ts';
import { sapKindName } from '../words/sap-words.ts';

const OUTCOME_WORDS: readonly (readonly [BoilOutcome | '', MessageKey])[] = [
  ['', 'notebook.outcome.any'],
  ['finished', 'notebook.outcome.finished'],
  ['past-finish', 'notebook.outcome.past'],
  ['scorch-risk', 'notebook.outcome.scorch'],
  ['burnt', 'notebook.outcome.burnt'],
  ['unfinished', 'notebook.outcome.unfinished'],
];

/** A season's worth of boils is shown at once. */
const SHOWN_FIRST = 30;

const sorts = (): (readonly [NonNullable<Find['sort']>, string])[] => [
  ['started', say('notebook.sort.newest')],
  ['name', say('notebook.sort.name')],
  ...(['syrup_litres', 'sap_litres', 'ratio', 'gap_sugar_kg', 'water_off_l_per_h', 'boiling_hours'] as const).map(
    (name) => [name, figureLabel(name).toLowerCase()] as const,
  ),
  ...(['fuel_mj_per_l', 'fuel_kg_per_l', 'cost_a_jar', 'jars', 'alarms'] as const).map(
    (name) => [name, figureLabel(name).toLowerCase()] as const,
  ),
];

/** Puts a practice that was hidden back into the list, without the way over its page. */
async function putBack(boil: string, done: () => void): Promise<void> {
  if ((await keepPage(boil, (page) => ({ ...page, hidden: undefined }))) !== null) done();
}

interface RowProps {
  row: BoilRow;
  columns: readonly FigureName[];
  /** It is in the list for good again. */
  back: () => void;
}

function Deeds({ row: { boil, hidden }, name, back }: Omit<RowProps, 'columns'> & { name: string }): JSX.Element {
  return (
    <div class="row">
      {hidden === true && (
        <button type="button" onClick={() => void putBack(boil, back)}>
          {say('notebook.hide.again')}
        </button>
      )}
      <button type="button" aria-label={say('notebook.replay_of', { name })} onClick={() => void openReplay(boil)}>
        {say('notebook.replay')}
      </button>
      <a
        class="button"
        aria-label={say('notebook.export_of', { name })}
        href={`boils/${encodeURIComponent(boil)}.boil.jsonl`}
        download
      >
        {say('notebook.export')}
      </a>
    </div>
  );
}

function Row({ row, columns, back }: RowProps): JSX.Element {
  const { figures } = row;
  const name = boilName(row.name);
  return (
    <tr>
      <th scope="row">
        <a href={addressOf('notebook', 'boil', row.boil)}>{name}</a>
        {row.practice && <span class="tag tag-practice">{say('notebook.practice')}</span>}
        {row.running && <span class="tag">{say('notebook.running')}</span>}
        {row.hidden && <span class="tag">{say('notebook.hidden')}</span>}
      </th>
      <td>{dayAndTime(row.started)}</td>
      {columns.map((column) => (
        <td key={column} data-label={figureLabel(column)}>
          {figures === null
            ? row.running
              ? ''
              : '…'
            : cellWords(column, figures[column], row.practice, settings.value)}
        </td>
      ))}
      <td>
        <Deeds row={row} name={name} back={back} />
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
  const kinds = [
    ['', say('notebook.outcome.any')] as const,
    ...saps.value.map(({ key }) => [key, sapKindName(key)] as const),
  ];
  return (
    <details class="finder">
      <summary>{say('notebook.find')}</summary>
      <div class="fields">
        <label>
          <span>{say('notebook.find.words')}</span>
          <input
            type="search"
            value={find.text ?? ''}
            onInput={(event) => change({ text: event.currentTarget.value })}
          />
        </label>
        <Select
          label={say('notebook.find.sap')}
          value={(find.sap ?? '') as string}
          options={kinds}
          set={(sap) => change({ sap })}
        />
        <label>
          <span>{say('notebook.find.pan')}</span>
          <input value={find.pan ?? ''} onInput={(event) => change({ pan: event.currentTarget.value })} />
        </label>
        <Select
          label={say('notebook.find.outcome')}
          value={find.outcome ?? ''}
          options={saidOptions(OUTCOME_WORDS)}
          set={(outcome) => change({ outcome: outcome === '' ? undefined : outcome })}
        />
        <DateInput label={say('notebook.find.from')} value={find.from ?? ''} set={(from) => change({ from })} />
        <DateInput label={say('notebook.find.to')} value={find.to ?? ''} set={(to) => change({ to })} />
        <Select
          label={say('notebook.find.sorted')}
          value={find.sort ?? 'started'}
          options={sorts()}
          set={(sort) => change({ sort, descending: isDescending({ sort }) })}
        />
        <label class="check">
          <input
            type="checkbox"
            checked={find.descending !== undefined && find.descending !== isDescending(find)}
            onChange={(event) => change({ descending: isDescending(find) !== event.currentTarget.checked })}
          />
          <span>{say('notebook.find.reversed')}</span>
        </label>
      </div>
    </details>
  );
}

export function BoilList({ stamp }: { stamp: number }): JSX.Element {
  const [find, setFind] = useState<Find>({});
  const [putBacks, setPutBack] = useState(0);
  const { view, problem } = useAsked<FoundView>(
    { find },
    `${stamp} ${putBacks} ${JSON.stringify(find)}`,
    ({ working }) => working > 0,
  );
  const [isAll, setAll] = useState(false);
  const [withHidden, setWithHidden] = useState(false);
  const found = view?.boils ?? [];
  const listed = withHidden ? found : found.filter(({ hidden }) => hidden !== true);
  const hidden = found.filter((row) => row.hidden === true).length;
  const shown = isAll ? listed : listed.slice(0, SHOWN_FIRST);
  const columns = listColumns(shown);
  const mayFind = useRef(false);
  const isFiltered = Object.keys(find).some((key) => key !== 'sort' && key !== 'descending');
  // Once there it stays: the answer to a word that finds nothing still stands when the word is rubbed out.
  mayFind.current ||= isFiltered || (view !== null && view.boils.length > 0);
  return (
    <>
      {problem !== null && <p class="problem">✕ {hostWords(problem)}</p>}
      {mayFind.current && <Finder find={find} set={setFind} />}
      {view !== null && found.length === 0 && <p>{isFiltered ? say('notebook.none_like') : say('notebook.none')}</p>}
      {shown.length > 0 && (
        <table class="boils">
          <thead>
            <tr>
              <th>{say('notebook.boil')}</th>
              <th>{say('notebook.begun')}</th>
              {columns.map((name) => (
                <th key={name}>{figureLabel(name)}</th>
              ))}
              <th>{say('notebook.open')}</th>
            </tr>
          </thead>
          <tbody>
            {shown.map((row) => (
              <Row key={row.boil} row={row} columns={columns} back={() => setPutBack(putBacks + 1)} />
            ))}
          </tbody>
        </table>
      )}
      {columns.includes('fuel_mj_per_l') && shown.some(({ figures }) => (figures?.fuel_mj_per_l ?? null) !== null) && (
        <p class="hint">{heatUnitWords(settings.value)}</p>
      )}
      {shown.some(({ figures }) => figures !== null && isRatioOfPart(figures)) && (
        <p class="hint">{say('notebook.ratio_of_part')}</p>
      )}
      {shown.some(({ figures }) => figures !== null && isRatioOpen(figures)) && (
        <p class="hint">{say('notebook.ratio_unknown')}</p>
      )}
      {shown.length < listed.length && (
        <p>
          <button type="button" onClick={() => setAll(true)}>
            {say('notebook.show_all', { count: listed.length })}
          </button>
        </p>
      )}
      {hidden > 0 && (
        <p class="row">
          {say('notebook.hidden_are', { count: hidden })}
          <button type="button" onClick={() => setWithHidden(!withHidden)}>
            {withHidden ? say('notebook.hidden_leave') : say('notebook.hidden_show', { count: hidden })}
          </button>
        </p>
      )}
    </>
  );
}
