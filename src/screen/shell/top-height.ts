// Tells the styles how high the first line and its bands are, for what stays in sight under them.

let watched: ResizeObserver | null = null;

/** As the `ref` of the first line with its bands: `--top-height` is its height from now on. */
export function tellHeight(element: HTMLElement | null): void {
  watched?.disconnect();
  watched = null;
  if (element === null) return;
  watched = new ResizeObserver(() =>
    document.documentElement.style.setProperty('--top-height', `${element.getBoundingClientRect().height}px`),
  );
  watched.observe(element);
}
