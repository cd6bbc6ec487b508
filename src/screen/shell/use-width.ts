// The width of an element, followed as it changes.
import type { RefObject } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';

/** px; `first` until it is measured. */
export function useWidth(first: number): [RefObject<HTMLDivElement | null>, number] {
  const element = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(first);
  useLayoutEffect(() => {
    if (element.current === null) return;
    const watch = new ResizeObserver(([entry]) => entry !== undefined && setWidth(entry.contentRect.width));
    watch.observe(element.current);
    return () => watch.disconnect();
  }, []);
  return [element, width];
}
