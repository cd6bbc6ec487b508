// Scrolls a thing to where neither the first line above nor the alarms below cover it.

const GAP_PX = 8;

function edge(selector: string, side: 'top' | 'bottom', otherwise: number): number {
  return document.querySelector(selector)?.getBoundingClientRect()[side] ?? otherwise;
}

/** Moves as little as it can; of a thing that is too tall the upper part is shown. */
export function scrollClear(element: Element): void {
  const above = edge('.top', 'bottom', 0) + GAP_PX;
  const below = edge('.bottom', 'top', innerHeight) - GAP_PX;
  const { top, bottom } = element.getBoundingClientRect();
  if (top < above) scrollBy(0, top - above);
  else if (bottom > below) scrollBy(0, Math.min(bottom - below, top - above));
}

/** As the `ref` of what has just appeared: it is scrolled to where it can be seen. */
export function comesIntoSight(element: Element | null): void {
  if (element !== null) scrollClear(element);
}

/** What keys bring into focus is scrolled to where it can be seen, from now on (WCAG 2.2, 2.4.11). */
export function keepFocusClear(): void {
  addEventListener('focusin', ({ target }) => {
    if (!(target instanceof Element) || target.closest('.top, .bottom') !== null) return;
    if (target.matches(':focus-visible')) scrollClear(target);
  });
}
