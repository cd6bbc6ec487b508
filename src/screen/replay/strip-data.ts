// Asks for the strip of the replay that is open, again as more of it is read or other choices are laid over it.
import { useEffect, useState } from 'preact/hooks';
import type { ReplayStrip } from '../../protocol/replay-messages.ts';
import { ask } from '../client/store.ts';
import type { Now } from '../client/types.ts';

/** Columns: one for each two px of a laptop's width. */
const POINTS = 680;

/** The whole boil in columns; null until it was told. */
export function useStrip(now: Now): ReplayStrip | null {
  const [strip, setStrip] = useState<ReplayStrip | null>(null);
  const choices = JSON.stringify(now.replay?.choices ?? null);
  useEffect(() => {
    let isShown = true;
    ask({ replay_strip: { points: POINTS } }).then(
      (data) => isShown && setStrip(data as ReplayStrip),
      () => undefined, // The connection's own banner says it; what is drawn stays.
    );
    return () => void (isShown = false);
  }, [now.boil, choices, now.replay?.readUntil]);
  return strip;
}
