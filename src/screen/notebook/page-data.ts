// Asks the host for a view of the season, and asks again while figures are still being worked out.
import { useEffect, useState } from 'preact/hooks';
import { ask } from '../client/store.ts';
import type { Wish } from '../client/types.ts';

const AGAIN_MS = 1000;

export interface Asked<View> {
  view: View | null;
  problem: string | null;
  /** Takes an answer that came otherwise, or asks anew. */
  set: (view: View) => void;
  again: () => void;
}

/** `isWaiting` says whether the answer is still to be completed. `key` changes with what is asked. */
export function useAsked<View>(wish: Wish, key: string, isWaiting: (view: View) => boolean): Asked<View> {
  const [view, setView] = useState<View | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [count, setCount] = useState(0);
  const again = (): void => setCount((before) => before + 1);
  useEffect(() => {
    let isShown = true;
    let timer: ReturnType<typeof setTimeout> | undefined;
    ask(wish).then(
      (data) => {
        if (!isShown) return;
        setView(data as View);
        setProblem(null);
        if (isWaiting(data as View)) timer = setTimeout(again, AGAIN_MS);
      },
      (error: Error) => isShown && setProblem(error.message),
    );
    return () => {
      isShown = false;
      clearTimeout(timer);
    };
  }, [key, count]);
  return { view, problem, set: setView, again };
}
