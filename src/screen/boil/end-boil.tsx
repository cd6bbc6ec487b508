// Ends a boil, after asking once more.
import { say } from '../language/say.ts';
import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { tell } from '../client/store.ts';
import { firstButton } from '../shell/arrival.tsx';
import { useKey } from '../shell/keys.ts';
import { scrollClear } from '../shell/scroll-clear.ts';

async function end(): Promise<void> {
  if (await tell({ end: true }, say('end.over'))) scrollTo(0, 0);
}

/** What could be pressed by mistake stands where it can be read whole. */
function Question({ leave }: { leave: () => void }): JSX.Element {
  const place = useRef<HTMLSpanElement>(null);
  useKey('Escape', leave);
  useEffect(() => {
    if (place.current !== null) scrollClear(place.current);
    firstButton(place.current);
  }, []);
  return (
    <span class="confirm" role="group" aria-label={say('end.asked')} ref={place}>
      <b>{say('end.all_out')}</b>{' '}
      {/* First what changes nothing, for it has the focus: an Enter too many must not end a boil. */}
      <button type="button" onClick={leave}>
        {say('end.no')}
      </button>{' '}
      <button type="button" class="main-button" onClick={() => void end()}>
        {say('end.yes')}
      </button>
    </span>
  );
}

export function EndBoil(): JSX.Element {
  const [asking, setAsking] = useState(false);
  if (asking) return <Question leave={() => setAsking(false)} />;
  return (
    <button type="button" onClick={() => setAsking(true)}>
      {say('end.end')}
    </button>
  );
}
