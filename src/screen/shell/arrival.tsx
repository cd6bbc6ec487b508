// Where the focus goes when another screen comes, or when what had it goes: to a heading, so that Tab and who hears the page go on from there.
import type { JSX } from 'preact';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
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

/** Whoever puts the focus elsewhere by themselves, such as a form that closes, has done so by then, ms. */
const SETTLED_MS = 100;

/** What stood round the thing that had the focus, the nearest first, while it still stood there. */
function around(element: Element): Element[] {
  const chain: Element[] = [];
  for (let each = element.parentElement; each !== null && each.closest('main') !== null; each = each.parentElement)
    chain.push(each);
  return chain;
}

/**
 * What had the focus is gone or cannot be pressed any more, and nothing has it now: the heading nearest to where it was
 * gets it, for who works by keys would begin again at the top of the page.
 */
export function useFocusKept(): void {
  useEffect(() => {
    let held: Element | null = null;
    let places: Element[] = [];
    let timer: ReturnType<typeof setTimeout> | undefined;
    const isLost = (): boolean =>
      held !== null && document.activeElement === document.body && (!held.isConnected || held.matches(':disabled'));
    const note = ({ target }: FocusEvent): void => {
      held = target instanceof Element && target.closest('main') !== null ? target : null;
      places = held === null ? [] : around(held);
    };
    // A press beside everything lets go of the focus on purpose; what is taken away loses it just before it is gone.
    const letGo = ({ target }: FocusEvent): void => {
      setTimeout(() => {
        if (target === held && held?.isConnected === true && !held.matches(':disabled, :focus')) held = null;
      });
    };
    const restore = (): void => {
      if (!isLost()) return;
      const near = places.find((each) => each.isConnected)?.querySelector<HTMLElement>('h1, h2, h3, legend');
      if (near === null || near === undefined) focusView();
      else focusOn(near);
    };
    const watch = new MutationObserver(() => {
      if (!isLost()) return;
      clearTimeout(timer);
      timer = setTimeout(restore, SETTLED_MS);
    });
    addEventListener('focusin', note);
    addEventListener('focusout', letGo);
    watch.observe(document.body, { childList: true, subtree: true, attributeFilter: ['disabled'] });
    return () => {
      clearTimeout(timer);
      watch.disconnect();
      removeEventListener('focusin', note);
      removeEventListener('focusout', letGo);
    };
  }, []);
}

/** As the `ref` of a row of buttons that ask: the first of them gets the focus as they appear. */
export const firstButton = (row: HTMLElement | null): void =>
  row?.querySelector('button')?.focus({ preventScroll: true });

/** Gives the last set of fields of a form the focus, in its first field, once what was added to it stands there. */
export function focusNewest(form: HTMLElement | null): void {
  requestAnimationFrame(() => {
    const field = [...(form?.querySelectorAll('fieldset.pan-fields') ?? [])].at(-1)?.querySelector('input');
    field?.focus();
  });
}

/** On each change of the address; what within the same screen still has the focus keeps it, such as a tab or a field. */
export function useArrival(): void {
  const last = useRef(route.value);
  const isFirst = useRef(true);
  // Before the next key can be pressed: else it would go to where the focus was, or lose what it went to.
  useLayoutEffect(() => {
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
