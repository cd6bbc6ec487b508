// Filtering and bottling, step by step, each ticked when it is done.
import type { JSX } from 'preact';
import type { BoilPageView } from '../../protocol/season-messages.ts';
import { keepPage } from './page-words.tsx';

export function Bottling({ view, keep }: { view: BoilPageView; keep: (view: BoilPageView) => void }): JSX.Element {
  async function tick(id: string, isDone: boolean): Promise<void> {
    const kept = await keepPage(view.boil, (page) => {
      const { [id]: _, ...others } = page.steps ?? {};
      return { ...page, steps: isDone ? { ...others, [id]: new Date().toISOString() } : others };
    });
    if (kept !== null) keep(kept);
  }

  return (
    <section class="panel bottling" aria-label="Filtering and bottling">
      <h2>Filtering and bottling</h2>
      <p>
        What people do and what to mind. It is no promise that food is safe: your food and canning authorities decide.
      </p>
      <ol>
        {view.steps.map(({ id, what, caution, ticked }) => (
          <li key={id}>
            <label class="check">
              <input
                type="checkbox"
                checked={ticked !== null}
                onChange={(event) => void tick(id, event.currentTarget.checked)}
              />
              <span>{what}</span>
            </label>
            <p class="hint">▲ {caution}</p>
          </li>
        ))}
      </ol>
    </section>
  );
}
