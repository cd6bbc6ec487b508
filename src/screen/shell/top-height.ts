// Tells the styles how high the first line with its bands is, and the foot with its calls: what stays in sight stands between them.

/** A `ref`: the height of its element is in the style property `name` from now on. */
function heightIn(name: string): (element: HTMLElement | null) => void {
  let watched: ResizeObserver | null = null;
  return (element) => {
    watched?.disconnect();
    watched = null;
    if (element === null) return;
    watched = new ResizeObserver(() =>
      document.documentElement.style.setProperty(name, `${element.getBoundingClientRect().height}px`),
    );
    watched.observe(element);
  };
}

/** As the `ref` of the first line with its bands: `--top-height` is its height from now on. */
export const tellHeight = heightIn('--top-height');

/** As the `ref` of the ways and the calls at the foot: `--bottom-height` is their height from now on. */
export const tellFootHeight = heightIn('--bottom-height');
