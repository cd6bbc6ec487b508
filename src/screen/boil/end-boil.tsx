// Ends a boil, after asking once more.
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { tell } from '../client/store.ts';
import { useKey } from '../shell/keys.ts';

export function EndBoil(): JSX.Element {
  const [asking, setAsking] = useState(false);
  useKey(asking ? 'Escape' : null, () => setAsking(false));
  if (!asking) {
    return (
      <button type="button" onClick={() => setAsking(true)}>
        End this boil
      </button>
    );
  }
  return (
    <span class="confirm" role="group" aria-label="End this boil?">
      <b>All pans off and all fires out?</b>{' '}
      <button type="button" class="main-button" onClick={() => void tell({ end: true }, 'The boil is over and kept.')}>
        Yes, end it
      </button>{' '}
      <button type="button" onClick={() => setAsking(false)}>
        No, go on
      </button>
    </span>
  );
}
