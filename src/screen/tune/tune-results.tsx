// How settings would have done: a table, small charts, and the worst boils first, each a way to the moment that was worst.
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { TuneBoilRow, TuneSettingRow, TuneView } from '../../protocol/tune-messages.ts';
import { settings } from '../client/store.ts';
import { say } from '../language/say.ts';
import { openReplay } from '../replay/replay-control.ts';
import { FirstFew } from '../shell/first-few.tsx';
import { shortDay } from '../words/clock.ts';
import { SCORE_LINES, settingWords, truthWords } from '../words/tune-words.ts';
import type { ScoreLine } from '../words/tune-words.ts';
import { DotPlot } from './dot-plot.tsx';

const SHOWN_FIRST = 6;

const settingsIn = ({ patch }: TuneSettingRow): Record<string, unknown> =>
  typeof patch.settings === 'object' && patch.settings !== null ? (patch.settings as Record<string, unknown>) : {};

/** Beyond so many side by side nobody compares: a search shows how it was, what is set now, and the best that it found. */
const MOST_SHOWN = 5;

function shownOf(rows: readonly TuneSettingRow[]): readonly TuneSettingRow[] {
  if (rows.length <= MOST_SHOWN) return rows;
  const [was, now, ...rest] = rows;
  const cheapest = [...rest].sort((a, b) => (a.cost ?? Infinity) - (b.cost ?? Infinity)).slice(0, MOST_SHOWN - 2);
  return [was, now, ...cheapest].filter((row) => row !== undefined);
}

function SumTable({ rows }: { rows: readonly TuneSettingRow[] }): JSX.Element {
  return (
    <div class="wide-table" tabIndex={0} role="region" aria-label="The settings side by side">
      <table class="tune-table">
        <thead>
          <tr>
            <th>In the middle of all boils</th>
            {rows.map(({ name }) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {SCORE_LINES.map(({ label, words }) => (
            <tr key={label}>
              <th scope="row">{say(label)}</th>
              {rows.map(({ name, sum }) => (
                <td key={name}>{words(sum, settings.value)}</td>
              ))}
            </tr>
          ))}
          <tr>
            <th scope="row">That is</th>
            {rows.map((row) => (
              <td key={row.name} class="hint">
                {settingWords(settingsIn(row))}
              </td>
            ))}
          </tr>
        </tbody>
      </table>
    </div>
  );
}

const UNITS = ['min', '°Bx', 'min'];

function Charts({ rows }: { rows: readonly TuneSettingRow[] }): JSX.Element {
  const drawn = SCORE_LINES.filter(
    (line): line is ScoreLine & { value: NonNullable<ScoreLine['value']> } => line.value !== null,
  );
  return (
    <div class="dot-plots">
      {drawn.map(({ label, value }, i) => (
        <DotPlot
          key={label}
          title={say(label)}
          unit={UNITS[i] ?? ''}
          rows={rows.map(({ name, boils, sum }) => ({
            name,
            values: boils.flatMap(({ score }) => (score === null ? [] : (value(score) ?? []))),
            middle: value(sum),
          }))}
        />
      ))}
    </div>
  );
}

function WorstBoil({ row }: { row: TuneBoilRow }): JSX.Element {
  const name = row.title === '' ? 'A boil without a name' : row.title;
  return (
    <li>
      <b>
        {shortDay(row.started)}, {name}
      </b>
      : {row.worst?.words ?? row.why ?? (row.cost === null ? 'nobody measured its finish' : 'nothing went wrong')}{' '}
      <button
        type="button"
        class="moment"
        aria-label={row.worst === null ? `Replay ${name}` : `See that moment of ${name}`}
        onClick={() => void openReplay(row.boil, row.worst?.at)}
      >
        {row.worst === null ? 'Replay' : 'See that moment'}
      </button>
    </li>
  );
}

function Worst({ rows }: { rows: readonly TuneSettingRow[] }): JSX.Element | null {
  const [chosen, setChosen] = useState(0);
  const row = rows[Math.min(chosen, rows.length - 1)];
  if (row === undefined || row.boils.length === 0) return null;
  return (
    <>
      <h3>The worst boils first</h3>
      <p class="row" role="group" aria-label="Under">
        <span>under</span>
        {rows.map(({ name }, i) => (
          <button key={name} type="button" aria-pressed={row === rows[i]} onClick={() => setChosen(i)}>
            {name}
          </button>
        ))}
      </p>
      <div class="worst">
        <FirstFew
          items={row.boils}
          shown={SHOWN_FIRST}
          rest="more"
          row={(each) => <WorstBoil key={each.boil} row={each} />}
        />
      </div>
    </>
  );
}

export function TuneResults({ view }: { view: TuneView }): JSX.Element | null {
  const [first] = view.settings;
  const rows = shownOf(view.settings);
  if (first === undefined || first.done === 0) return null;
  return (
    <section class="panel" aria-label="How they would have done">
      <h2>How they would have done</h2>
      {view.stopped && <p>Stopped after {first.done} boils: what is here rests on those.</p>}
      <p>{truthWords(first.truths, first.done)}</p>
      {first.truths < first.done && (
        <p class="hint">
          {say('tune.how_to_tell')} {say('tune.still_told')}
        </p>
      )}
      {rows.length < view.settings.length && (
        <p>
          {view.settings.length} settings were tried: how it was, what is set now, and the best of the others are shown.
        </p>
      )}
      <SumTable rows={rows} />
      <Charts rows={rows} />
      <Worst rows={rows} />
      {view.problems.length > 0 && (
        <ul class="problems">
          {view.problems.map((problem) => (
            <li key={problem}>✕ {problem}</li>
          ))}
        </ul>
      )}
    </section>
  );
}
