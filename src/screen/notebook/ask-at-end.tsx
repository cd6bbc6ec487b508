// Asks what came of a boil, once, when it has just ended.
import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import type { BoilPageView } from '../../protocol/season-messages.ts';
import type { Now } from '../client/types.ts';
import { EndOfBoilForm } from './end-form.tsx';
import { say } from '../language/say.ts';
import { useAsked } from './page-data.ts';

/** Boils that were asked about since this page was opened. */
const asked = signal<readonly string[]>([]);

function Ask({ boil }: { boil: string }): JSX.Element | null {
  const { view, problem } = useAsked<BoilPageView>({ boil_page: { boil } }, boil, ({ form }) => form === null);
  if (problem !== null || (view !== null && Object.keys(view.page).length > 0)) return null;
  // Its place is kept, so that nothing moves under a finger when it comes.
  if (view === null || view.form === null)
    return (
      <div class="pans-question">
        <section class="panel end-waits" aria-label={say('notebook.end.label')}>
          <h2>{say('notebook.end.title')}</h2>
          <p role="status">{say('notebook.end.reading')}</p>
        </section>
      </div>
    );
  const done = (): void => void (asked.value = [...asked.value, boil]);
  return (
    <div class="pans-question">
      <EndOfBoilForm view={{ ...view, form: view.form }} kept={done} later={done} />
    </div>
  );
}

export function AskAtEnd({ now }: { now: Now }): JSX.Element | null {
  const { boil, ended, mode } = now;
  if (boil === null || !ended || mode !== 'live' || asked.value.includes(boil)) return null;
  return <Ask key={boil} boil={boil} />;
}
