// What went into each of the boils that are compared, what came of it and what it took, one row a boil.
import type { JSX } from 'preact';
import type { FoundView } from '../../protocol/season-messages.ts';
import { Stroke } from '../charts/lines-chart.tsx';
import { settings } from '../client/store.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import { useAsked } from '../notebook/page-data.ts';
import { addressOf } from '../shell/routes.ts';
import { BESIDE, boilWordsAmong, figureBeside } from '../words/compare-words.ts';

const find = (view: FoundView, boils: readonly string[]): FoundView['boils'] =>
  boils.flatMap((boil) => view.boils.find((row) => row.boil === boil) ?? []);

/** In the order of the boils, so that each has the number and the stroke that it has in the chart. */
export function FiguresBeside({ boils }: { boils: readonly string[] }): JSX.Element {
  // Only what is shown is waited for: a notebook may hold hundreds that nobody has added up yet.
  const { view, problem } = useAsked<FoundView>({ find: {} }, boils.join('/'), (found) =>
    find(found, boils).some(({ figures, running }) => figures === null && !running),
  );
  const rows = (view === null ? [] : find(view, boils)).map((row) => ({ ...row, pan: null }));
  return (
    <section class="panel" aria-label={say('compare.beside')}>
      <h2>{say('compare.beside')}</h2>
      {problem !== null && <p class="problem">✕ {hostWords(problem)}</p>}
      {problem === null && view === null && <p role="status">{say('season.adding')}</p>}
      {view !== null && (
        <div class="wide-table" tabIndex={0} role="region" aria-label={say('compare.beside')}>
          <table class="season-table beside-table">
            <thead>
              <tr>
                <th>{say('season.boil')}</th>
                {BESIDE.map(([name, label]) => (
                  <th key={name} scope="col">
                    {say(label)}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map((row, i) => (
                <tr key={row.boil}>
                  <th scope="row">
                    <b>{i + 1}</b> <Stroke stroke={i} />{' '}
                    <a href={addressOf('notebook', 'boil', row.boil)}>{boilWordsAmong(row, rows)}</a>
                  </th>
                  {BESIDE.map(([name, label]) => (
                    <td key={name} data-label={say(label)}>
                      {figureBeside(name, row, settings.value)}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}
