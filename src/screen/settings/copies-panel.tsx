// Where the copies of the notebook go that are made after each boil.
import { say } from '../language/say.ts';
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { about, tell } from '../client/store.ts';
import type { Settings } from '../client/types.ts';

/** What was refused stays as it was typed, to be put right: so nothing is shown as kept before the host says that it is. */
const keep = (folder: string): void => void tell({ settings: { backup_folder: folder } }, say('copies.kept'));

export function CopiesPanel({ now }: { now: Settings }): JSX.Element {
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
      <button type="button" disabled={typed === now.backup_folder} onClick={() => keep(typed.trim())}>
        {say('copies.keep')}
      </button>
    </section>
  );
}
