// The number that is read from afar: always at its full height, narrowed where this machine's letters are wider than the card.
import type { ComponentChildren, JSX } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

/** No letter is installed by the program, and a bare Linux machine has only wide ones. */
export function BigText({ children }: { children: ComponentChildren }): JSX.Element {
  const text = useRef<HTMLSpanElement>(null);
  useLayoutEffect(() => {
    const span = text.current;
    const room = span?.parentElement?.clientWidth ?? 0;
    if (span === null || room === 0) return;
    const narrow = Math.min(1, room / span.offsetWidth);
    span.style.transform = narrow < 1 ? `scaleX(${narrow})` : '';
  });
  return (
    <p class="big">
      <span ref={text}>{children}</span>
    </p>
  );
}
