// Where the focus goes when another screen comes: to its heading, so that Tab and who hears the page go on from there.
import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { say } from '../language/say.ts';
import { place, route } from './routes.ts';

/** Gives the heading of what is shown the focus; the whole view where it has none yet. */
function focusView(): void {
  const view = document.querySelector<HTMLElement>('main');
  const heading = view?.querySelector('h1') ?? view;
  if (heading === null) return;
  heading.tabIndex = -1;
  heading.focus({ preventScroll: true });
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
