// What is open or chosen on the pans ends with its boil: a form of a practice must not stand, with the keyboard in it, in a boil.
import { effect } from '@preact/signals';
import { openList, puttingAside } from '../alarms/dock-state.ts';
import { live } from '../client/store.ts';
import { asked } from '../explain/asked.ts';
import { openForm } from '../marks/open-form.ts';
import { forgetPan } from './selected-pan.ts';

/**
 * Closes all of it as soon as another boil is told, or the end of this one; returns the way to stop. A form that somebody
 * is filling in stays at the end of its boil, with its pan, until it is put away.
 */
export function endWithBoil(): () => void {
  let before: { boil: string | null; ended: boolean } | null = null;
  return effect(() => {
    const now = live.value;
    // While the host is gone, what is typed stays.
    if (now === null || (now.boil === before?.boil && now.ended === before.ended)) return;
    const staysOpen = now.ended && now.boil === before?.boil && openForm.peek() !== null;
    before = { boil: now.boil, ended: now.ended };
    puttingAside.value = null;
    openList.value = 'few';
    asked.value = null;
    if (staysOpen) return;
    openForm.value = null;
    forgetPan();
  });
}
