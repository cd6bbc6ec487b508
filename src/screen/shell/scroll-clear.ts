// Scrolls a thing to where neither the first line above nor the alarms below cover it.

const GAP_PX = 8;

function edge(selector: string, side: 'top' | 'bottom', otherwise: number): number {
  return document.querySelector(selector)?.getBoundingClientRect()[side] ?? otherwise;
}

/** Where the bar at the foot begins that stands over this thing: of a view's own bar, only what comes before it. */
function footOver(element: Element): number {
  const bars = [...document.querySelectorAll('.foot-bar')].filter(
    (bar) =>
      getComputedStyle(bar).bottom !== 'auto' &&
      (element.compareDocumentPosition(bar) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0,
  );
  const tops = bars.map((bar) => bar.getBoundingClientRect().top);
  return Math.min(edge('.bottom', 'top', innerHeight), ...tops);
}

/** Where the first line and its bands end, px; on a low screen the line alone stays, while it tells of a call. */
export const underTop = (): number => Math.max(0, edge('.top', 'bottom', 0), edge('.first-what', 'bottom', 0));

/** Where it can be seen begins and ends, px: on a low screen the bars go with the page, and may be out of it. */
const room = (element: Element): { above: number; below: number } => ({
  above: underTop() + GAP_PX,
  below: Math.min(innerHeight, footOver(element)) - GAP_PX,
});

/** Whether the whole of a thing can be seen where it stands. */
export function isClear(element: Element): boolean {
  const { above, below } = room(element);
  const { top, bottom } = element.getBoundingClientRect();
  return top >= above && bottom <= below;
}

/** Moves as little as it can; of a thing that is too tall the upper part is shown. */
export function scrollClear(element: Element): void {
  const { above, below } = room(element);
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
    if (!(target instanceof Element) || target.closest('.bottom') !== null) return;
    const top = target.closest('.top');
    // What goes with the page on a low screen can come to stand under the line that stays.
    if (top !== null && getComputedStyle(top).display !== 'contents') return;
    if (target.matches(':focus-visible')) scrollClear(target);
  });
}
