// Where the copies of the notebook go that are made after each boil.
import { say } from '../language/say.ts';
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { about } from '../client/store.ts';
import type { Settings } from '../client/types.ts';

interface CopiesProps {
  now: Settings;
  change: (part: Partial<Settings>, done: string) => void;
}

export function CopiesPanel({ now, change }: CopiesProps): JSX.Element {
  const [typed, setTyped] = useState(now.backup_folder);
  return (
    <section class="panel" aria-labelledby="copies">
      <h2 id="copies">{say('copies.title')}</h2>
      <label>
        <span>{say('copies.folder')}</span>
        <input
          class="wide"
          value={typed}
          maxLength={1000}
          autoComplete="off"
          spellcheck={false}
          placeholder={about.value === null ? '' : `${about.value.folder}/backups`}
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      </label>
      <p class="hint">{say('copies.text')}</p>
      <button
        type="button"
        disabled={typed === now.backup_folder}
        onClick={() => change({ backup_folder: typed.trim() }, say('copies.kept'))}
      >
        {say('copies.keep')}
      </button>
    </section>
  );
}
