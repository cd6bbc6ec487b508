// Gives a kept boil another name.
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { BoilPageView } from '../../protocol/season-messages.ts';
import { say } from '../language/say.ts';
import { keepPage } from './page-words.tsx';

const MOST_LETTERS = 80;

interface RenameProps {
  view: BoilPageView;
  keep: (view: BoilPageView) => void;
}

/** A button, then a field with the name as it is; left empty, the boil is called again as when it began. */
export function Rename({ view, keep }: RenameProps): JSX.Element {
  const [typed, setTyped] = useState<string | null>(null);
  if (typed === null) {
    return (
      <p>
        <button type="button" onClick={() => setTyped(view.name)}>
          {say('notebook.rename')}
        </button>
      </p>
    );
  }
  const save = async (event: Event): Promise<void> => {
    event.preventDefault();
    const name = typed.trim();
    const kept = await keepPage(view.boil, (page) => ({ ...page, name: name === '' ? undefined : name }));
    if (kept === null) return;
    setTyped(null);
    keep(kept);
  };
  return (
    <form class="typed" onSubmit={(event) => void save(event)}>
      <label>
        <span>{say('boil.name')}</span>
        <input
          class="wide"
          value={typed}
          maxLength={MOST_LETTERS}
          ref={(field) => field?.focus()}
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      </label>
      <button type="submit">{say('notebook.rename.keep')}</button>
      <button type="button" onClick={() => setTyped(null)}>
        {say('notebook.rename.leave')}
      </button>
      <p class="hint">{say('notebook.rename.hint')}</p>
    </form>
  );
}
