// Filtering and bottling, step by step, each ticked when it is done.
import type { JSX } from 'preact';
import type { BoilPageView } from '../../protocol/season-messages.ts';
import { keepPage } from './page-words.tsx';
import { say } from '../language/say.ts';
import { hostWords } from '../language/host-words.ts';

export function Bottling({ view, keep }: { view: BoilPageView; keep: (view: BoilPageView) => void }): JSX.Element {
  async function tick(id: string, isDone: boolean): Promise<void> {
    const kept = await keepPage(view.boil, (page) => {
      const { [id]: _, ...others } = page.steps ?? {};
      return { ...page, steps: isDone ? { ...others, [id]: new Date().toISOString() } : others };
    });
    if (kept !== null) keep(kept);
  }

  return (
    <section class="panel bottling" aria-label={say('notebook.bottling')}>
      <h2>{say('notebook.bottling')}</h2>
      <p>{say('notebook.bottling.how')}</p>
      <ol>
        {view.steps.map(({ id, what, caution, ticked }) => (
          <li key={id}>
            <label class="check">
              <input
                type="checkbox"
                checked={ticked !== null}
                onChange={(event) => void tick(id, event.currentTarget.checked)}
              />
              <span>{hostWords(what)}</span>
            </label>
            <p class="hint">▲ {hostWords(caution)}</p>
          </li>
        ))}
      </ol>
    </section>
  );
}
