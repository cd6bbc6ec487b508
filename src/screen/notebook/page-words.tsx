// What a person writes of a boil in their own words: taste, colour, what to do otherwise, notes.
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { BoilPage, BoilPageView } from '../../protocol/season-messages.ts';
import { ask, said, tell } from '../client/store.ts';
import { say } from '../language/say.ts';

const FIELDS = [
  ['taste', 'notebook.own.taste', 'notebook.own.taste_like'],
  ['colour', 'notebook.own.colour', 'notebook.own.colour_like'],
  ['next_time', 'notebook.own.next', null],
  ['notes', 'notebook.own.notes', null],
] as const;
/** What the notebook keeps of one of them. */
const MOST_LETTERS = 10_000;
type Field = (typeof FIELDS)[number][0];

const written = (page: BoilPage): Record<Field, string> =>
  Object.fromEntries(FIELDS.map(([field]) => [field, page[field] ?? ''])) as Record<Field, string>;

export function PageWords({ view, keep }: { view: BoilPageView; keep: (view: BoilPageView) => void }): JSX.Element {
  const [words, setWords] = useState(() => written(view.page));
  const isNew = FIELDS.some(([field]) => words[field].trim() !== (view.page[field] ?? ''));

  async function save(event: Event): Promise<void> {
    event.preventDefault();
    const changed = Object.fromEntries(FIELDS.map(([field]) => [field, words[field].trim() || undefined]));
    const kept = await keepPage(view.boil, (page) => ({ ...page, ...changed }));
    if (kept !== null) keep(kept);
  }

  return (
    <form class="panel" aria-label={say('notebook.own')} onSubmit={(event) => void save(event)}>
      <h2>{say('notebook.own')}</h2>
      <div class="fields words">
        {FIELDS.map(([field, label, hint]) => (
          <label key={field}>
            <span>{say(label)}</span>
            <textarea
              class="wide"
              rows={field === 'notes' ? 4 : 2}
              maxLength={MOST_LETTERS}
              placeholder={hint === null ? '' : say(hint)}
              value={words[field]}
              onInput={(event) => setWords({ ...words, [field]: event.currentTarget.value })}
            />
          </label>
        ))}
      </div>
      <p class="row">
        <button type="submit" disabled={!isNew}>
          {say('notebook.own.keep')}
        </button>
      </p>
    </form>
  );
}

/**
 * Changes the page as it is now: something else of it may have been written meanwhile. Gives the view as it is afterwards;
 * null when it was not kept, which is then said.
 */
export async function keepPage(boil: string, change: (page: BoilPage) => BoilPage): Promise<BoilPageView | null> {
  try {
    const { page } = (await ask({ boil_page: { boil } })) as BoilPageView;
    return (await ask({ keep_page: { boil, page: change(page) } })) as BoilPageView;
  } catch (error) {
    said.value = { good: false, sentence: (error as Error).message };
    return null;
  }
}

/** Takes a photo off the page. */
export const dropPhoto = (boil: string, id: string): Promise<boolean> => tell({ drop_photo: { boil, id } });
