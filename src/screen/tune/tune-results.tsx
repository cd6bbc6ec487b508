// How settings would have done: a table, small charts, and the worst boils first, each a way to the moment that was worst.
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { TuneBoilRow, TuneSettingRow, TuneView } from '../../protocol/tune-messages.ts';
import { settings } from '../client/store.ts';
import { say, sayDrawn } from '../language/say.ts';
import { openReplay } from '../replay/replay-control.ts';
import { FirstFew } from '../shell/first-few.tsx';
import { shortDay } from '../words/clock.ts';
import {
  alikeWords,
  isMeasured,
  SCORE_LINES,
  settingWords,
  sumTitle,
  triedWords,
  truthWords,
  untoldWords,
} from '../words/tune-words.ts';
import type { ScoreLine } from '../words/tune-words.ts';
import { DotPlot } from './dot-plot.tsx';
import { hostWords } from '../language/host-words.ts';
import { boilName } from '../words/boil-name.ts';

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
    <div class="wide-table" tabIndex={0} role="region" aria-label={say('tune.side')}>
      <table class="tune-table">
        <thead>
          <tr>
            <th>{sumTitle(rows)}</th>
            {rows.map(({ name }) => (
              <th key={name} scope="col">
                {triedWords(name)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {SCORE_LINES.map(({ label, words }) => (
            <tr key={label}>
              <th scope="row">{say(label)}</th>
              {rows.map(({ name, sum }) => (
                <td key={name} data-label={triedWords(name)}>
                  {words(sum, settings.value)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** What each of the settings says, in whole lines: a column of the table may be narrow. */
function WhatTheySay({ rows }: { rows: readonly TuneSettingRow[] }): JSX.Element {
  return (
    <dl class="tune-says">
      {rows.map((row) => (
        <div key={row.name}>
          <dt>{triedWords(row.name)}</dt>
          <dd class="hint">{settingWords(settingsIn(row))}</dd>
        </div>
      ))}
    </dl>
  );
}

function Charts({ rows }: { rows: readonly TuneSettingRow[] }): JSX.Element {
  // A call that never came, in no boil and under no settings, is no figure to draw.
  const drawn = SCORE_LINES.filter(
    (line): line is ScoreLine & { value: NonNullable<ScoreLine['value']> } =>
      line.value !== null && rows.some(({ boils }) => boils.some(({ score }) => score !== null && line.value?.(score))),
  );
  return (
    <div class="dot-plots">
      {drawn.map(({ label, value, unit }) => (
        <DotPlot
          key={label}
          title={say(label)}
          unit={unit}
          rows={rows.map(({ name, boils, sum }) => ({
            name: triedWords(name),
            values: boils.flatMap(({ score }) => (score === null ? [] : (value(score) ?? []))),
            middle: value(sum),
          }))}
        />
      ))}
    </div>
  );
}

function worstOf(row: TuneBoilRow): string {
  const told = row.worst?.words ?? row.why;
  if (told !== null && told !== undefined) return hostWords(told);
  return row.cost === null ? untoldWords(row.untold, settings.value) : say('tune.nothing_wrong');
}

function WorstBoil({ row }: { row: TuneBoilRow }): JSX.Element {
  const name = boilName(row.title);
  return (
    <li>
      {sayDrawn('tune.worst_boil', {
        boil: <b>{say('tune.boil', { day: shortDay(row.started), name })}</b>,
        words: worstOf(row),
      })}{' '}
      <button
        type="button"
        class="moment"
        aria-label={say(row.worst === null ? 'tune.replay_of' : 'tune.moment_of', { name })}
        onClick={() => void openReplay(row.boil, row.worst?.at)}
      >
        {say(row.worst === null ? 'tune.replay' : 'tune.moment')}
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
      <h3>{say(row.boils.some(({ worst }) => worst !== null) ? 'tune.worst' : 'tune.each')}</h3>
      <p class="row" role="group" aria-label={say('tune.under_label')}>
        <span>{say('tune.under')}</span>
        {rows.map(({ name }, i) => (
          <button key={name} type="button" aria-pressed={row === rows[i]} onClick={() => setChosen(i)}>
            {triedWords(name)}
          </button>
        ))}
      </p>
      <div class="worst">
        <FirstFew
          items={row.boils}
          shown={SHOWN_FIRST}
          rest={(count) => say('replay.more', { count })}
          row={(each) => <WorstBoil key={each.boil} row={each} />}
        />
      </div>
    </>
  );
}

export function TuneResults({ view }: { view: TuneView }): JSX.Element | null {
  const [first] = view.settings;
  const rows = shownOf(view.settings);
  const isTold = isMeasured(view.settings);
  const alike = alikeWords(rows, settings.value);
  if (first === undefined || first.done === 0) return null;
  return (
    <section class="panel" aria-label={say('tune.done')}>
      <h2>{say('tune.done')}</h2>
      {view.stopped && <p>{say('tune.stopped', { done: first.done })}</p>}
      <p>{truthWords(first.truths, first.done, isTold)}</p>
      {first.truths < first.done && (
        <p class="hint">
          {say('tune.how_to_tell')} {say('tune.still_told')}
        </p>
      )}
      {rows.length < view.settings.length && (
        <p>{say(isTold ? 'tune.tried' : 'tune.tried_untold', { count: view.settings.length, shown: rows.length })}</p>
      )}
      <SumTable rows={rows} />
      {alike !== null && <p>{alike}</p>}
      <WhatTheySay rows={rows} />
      <Charts rows={rows} />
      <Worst rows={rows} />
      {view.problems.length > 0 && (
        <ul class="problems">
          {view.problems.map((problem) => (
            <li key={problem}>✕ {hostWords(problem)}</li>
          ))}
        </ul>
      )}
    </section>
  );
}
