// The best past boil of a pan that boils now, to be drawn thin behind it; asked for anew each minute, and only while it is wanted.
import { signal } from '@preact/signals';
import { useEffect, useState } from 'preact/hooks';
import type { Ghost } from '../../protocol/compare-messages.ts';
import { ask } from '../client/store.ts';
import type { Now } from '../client/types.ts';

const AGAIN_MS = 60_000;
const POINTS = 600;

/** Whether it is wanted, on every chart. */
export const showsGhost = signal(true);

/** null in a replay, while it is not wanted, and where no past boil fits. */
export function useGhost(now: Now, pan: string): Ghost | null {
  const [ghost, setGhost] = useState<Ghost | null>(null);
  const isWanted = showsGhost.value && now.view === 'live' && now.boil !== null && !now.ended;
  useEffect(() => {
    setGhost(null);
    if (!isWanted) return;
    let isShown = true;
    const look = (): void =>
      void ask({ ghost: { boil: null, pan, points: POINTS } }).then(
        (data) => isShown && setGhost((data as Ghost | null | undefined) ?? null),
        () => undefined, // Nothing is lost: it is looked for again.
      );
    look();
    const timer = setInterval(look, AGAIN_MS);
    return () => {
      isShown = false;
      clearInterval(timer);
    };
  }, [isWanted, now.boil, pan]);
  return ghost;
}
