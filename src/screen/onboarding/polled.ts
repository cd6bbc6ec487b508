// Asks the host the same again and again while something is shown, and hands out its last answer.
import { useEffect, useState } from 'preact/hooks';
import { ask } from '../client/store.ts';
import type { Wish } from '../client/types.ts';

const EVERY_MS = 700;

/** The data of the last answer; null before the first. What is refused leaves the last one. */
export function usePolled<T>(wish: Wish): T | null {
  const [data, setData] = useState<T | null>(null);
  const key = JSON.stringify(wish);
  useEffect(() => {
    let isShown = true;
    const look = (): void =>
      void ask(wish).then(
        (answer) => isShown && setData(answer as T),
        () => undefined, // A board that is let go, or a link that is down, is said elsewhere.
      );
    look();
    const timer = setInterval(look, EVERY_MS);
    return () => {
      isShown = false;
      clearInterval(timer);
    };
  }, [key]);
  return data;
}
