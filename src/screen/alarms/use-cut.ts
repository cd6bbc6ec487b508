// Counts the rows of a list that end under its foot, so that a list which scrolls says that there is more.
import type { RefObject } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';

/** A row ends on a part of a px where the page is enlarged. */
const WHOLE_PX = 2;

function cutIn(list: HTMLElement): number {
  const foot = list.getBoundingClientRect().bottom + WHOLE_PX;
  return [...list.children].filter((row) => row.getBoundingClientRect().bottom > foot).length;
}

/** How many rows are not seen to their end, followed as rows come, grow, and are scrolled; looked at again at every drawing. */
export function useCut(list: RefObject<HTMLElement | null>): number {
  const [cut, setCut] = useState(0);
  useLayoutEffect(() => {
    const element = list.current;
    if (element === null) return;
    const count = (): void => setCut(cutIn(element));
    const watch = new ResizeObserver(count);
    for (const each of [element, ...element.children]) watch.observe(each);
    element.addEventListener('scroll', count);
    return () => {
      watch.disconnect();
      element.removeEventListener('scroll', count);
    };
  });
  return cut;
}
