// Where the focus goes when another screen comes: to its heading, so that Tab and who hears the page go on from there.
import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { say } from '../language/say.ts';
import { place, route } from './routes.ts';

function focusOn(element: HTMLElement): void {
  element.tabIndex = -1;
  element.focus({ preventScroll: true });
}

/** Gives the heading of what is shown the focus; the whole view until its heading has come from the host. */
function focusView(): void {
  const view = document.querySelector<HTMLElement>('main');
  const heading = view?.querySelector('h1') ?? null;
  if (view === null || heading !== null) {
    if (heading !== null) focusOn(heading);
    return;
  }
  focusOn(view);
  const watch = new MutationObserver(() => {
    const late = view.querySelector('h1');
    // Who has gone on meanwhile is not brought back.
    const hasGone = document.activeElement !== view;
    if (late !== null && !hasGone) focusOn(late);
    if (late !== null || hasGone) watch.disconnect();
  });
  watch.observe(view, { childList: true, subtree: true });
}

/** Passes over the ways and the calls, which come first for Tab on every screen. */
export function SkipButton(): JSX.Element {
  return (
    <button type="button" class="skip" onClick={focusView}>
      {say('nav.skip')}
    </button>
  );
}

/** On each change of the address; what within the same screen still has the focus keeps it, such as a tab or a field. */
export function useArrival(): void {
  const last = useRef(route.value);
  const isFirst = useRef(true);
  useEffect(() => {
    const isOther = last.current !== route.value;
    last.current = route.value;
    if (isFirst.current) {
      isFirst.current = false;
      return;
    }
    const held = document.activeElement;
    if (isOther || held === null || held.closest('main') === null) focusView();
  }, [route.value, place.value]);
}
