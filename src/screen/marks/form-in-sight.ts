// Where the page and the keyboard stand while a note's form is open, and after it.
import { useLayoutEffect, useRef } from 'preact/hooks';
import { isClear, scrollClear } from '../shell/scroll-clear.ts';
import type { MarkForm } from './mark-form.ts';

/** Where fingers press, a field in which one types would bring up a keyboard over the amounts. */
const isTouched = (): boolean => matchMedia('(pointer: coarse)').matches;

/** The keyboard where one types: Enter then notes what was typed, and no amount that nobody chose. */
export function focusFront(form: HTMLElement, pressFirst: boolean): void {
  const typed = isTouched()
    ? null
    : (form.querySelector<HTMLElement>('.typed input.number') ?? form.querySelector<HTMLElement>('.typed input'));
  const first =
    (pressFirst ? form.querySelector<HTMLElement>('.quicks') : typed) ??
    form.querySelector<HTMLElement>('.quicks button, .typed input, .typed select') ??
    form.querySelector('button');
  first?.focus({ preventScroll: true });
}

/** A call that comes while it is open takes its room at the foot: what is being filled in is moved clear of it. */
export function useClearOfCalls(top: { current: HTMLElement | null }): void {
  useLayoutEffect(() => {
    const foot = document.querySelector('.bottom');
    if (foot === null) return;
    let height = foot.clientHeight;
    const watch = new ResizeObserver(() => {
      const before = height;
      height = foot.clientHeight;
      const form = top.current;
      if (form === null || height <= before) return;
      scrollClear(form);
      const field = document.activeElement;
      if (field !== null && form.contains(field)) scrollClear(field);
    });
    watch.observe(foot);
    return () => watch.disconnect();
  }, []);
}

/** Into view, and the page back to where it stood once the form is closed; before the next key, which may be a digit for it. */
export function useFront(top: { current: HTMLElement | null }, pressFirst: boolean): void {
  useLayoutEffect(() => {
    if (top.current === null) return;
    const stood = scrollY;
    scrollClear(top.current);
    focusFront(top.current, pressFirst);
    return () => scrollTo(0, stood);
  }, []);
}

/** When a form closes, the keyboard goes back to the button that opens it; where that is out of sight, to the pan. */
export function useReturn(panel: { current: HTMLElement | null }, open: MarkForm | null): void {
  const before = useRef<MarkForm | null>(null);
  useLayoutEffect(() => {
    const closed = open === null ? before.current : null;
    before.current = open;
    if (closed === null || document.activeElement !== document.body) return;
    const button = panel.current?.querySelector<HTMLElement>(`[aria-keyshortcuts="${closed.key}"]`) ?? null;
    const name = document.querySelector<HTMLElement>('.card-name[aria-pressed="true"]');
    (button !== null && isClear(button) ? button : (name ?? button))?.focus({ preventScroll: true });
  }, [open]);
}
