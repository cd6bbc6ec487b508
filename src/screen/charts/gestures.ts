// Turns drags, pinches and the wheel with Ctrl over a chart into moves and zooms; the wheel alone scrolls the page.

export interface Gestures {
  /** Later by a share of the width. */
  move(share: number): void;
  /** Longer by a factor about a place of the width, 0 to 1. */
  zoom(factor: number, anchor: number): void;
}

const WHEEL_FACTOR = 1.2;

/** Watches an element until the returned function is called. */
export function watchGestures(element: HTMLElement, gestures: Gestures): () => void {
  const held = new Map<number, number>();
  const stop = new AbortController();
  const { signal } = stop;
  const width = (): number => Math.max(1, element.clientWidth);
  const anchorAt = (clientX: number): number =>
    Math.min(1, Math.max(0, (clientX - element.getBoundingClientRect().left) / width()));

  function moveOne(event: PointerEvent): void {
    const before = held.get(event.pointerId);
    if (before === undefined) return;
    const others = [...held].filter(([id]) => id !== event.pointerId);
    const other = others[0]?.[1];
    if (other === undefined) {
      gestures.move((before - event.clientX) / width());
    } else {
      const apart = Math.abs(before - other);
      const nowApart = Math.abs(event.clientX - other);
      if (apart > 10 && nowApart > 10) gestures.zoom(apart / nowApart, anchorAt((event.clientX + other) / 2));
    }
    held.set(event.pointerId, event.clientX);
  }

  const release = (event: PointerEvent): void => void held.delete(event.pointerId);
  element.addEventListener(
    'pointerdown',
    (event) => {
      held.set(event.pointerId, event.clientX);
      element.setPointerCapture(event.pointerId);
    },
    { signal },
  );
  element.addEventListener('pointermove', moveOne, { signal });
  element.addEventListener('pointerup', release, { signal });
  element.addEventListener('pointercancel', release, { signal });
  element.addEventListener(
    'wheel',
    (event) => {
      if (!event.ctrlKey && !event.metaKey) return;
      event.preventDefault();
      gestures.zoom(event.deltaY > 0 ? WHEEL_FACTOR : 1 / WHEEL_FACTOR, anchorAt(event.clientX));
    },
    { signal, passive: false },
  );
  return () => stop.abort();
}
