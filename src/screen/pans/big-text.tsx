// The number that is read from afar: always at its full height, narrowed where this machine's letters are wider than the card.
import type { ComponentChildren, JSX } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

/** No letter is installed by the program, and a bare Linux machine has only wide ones. */
export function BigText({ children }: { children: ComponentChildren }): JSX.Element {
  const text = useRef<HTMLSpanElement>(null);
  useLayoutEffect(() => {
    const span = text.current;
    const line = span?.parentElement;
    if (span === null || line === null || line === undefined) return;
    // The big view makes it wider and a turned phone the card narrower, though nothing new is said.
    const watch = new ResizeObserver(() => {
      const narrow = span.offsetWidth === 0 ? 1 : Math.min(1, line.clientWidth / span.offsetWidth);
      span.style.transform = narrow < 1 ? `scaleX(${narrow})` : '';
    });
    watch.observe(line);
    watch.observe(span);
    return () => watch.disconnect();
  }, []);
  return (
    <p class="big">
      <span ref={text}>{children}</span>
    </p>
  );
}
