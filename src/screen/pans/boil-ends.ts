// What is open or chosen on the pans ends with its boil: a form of a practice must not stand, with the keyboard in it, in a boil.
import { effect } from '@preact/signals';
import { openList, puttingAside } from '../alarms/dock-state.ts';
import { live } from '../client/store.ts';
import { asked } from '../explain/asked.ts';
import { openForm } from '../marks/open-form.ts';
import { forgetPan } from './selected-pan.ts';

/** Closes all of it as soon as another boil is told, or the end of this one; returns the way to stop. */
export function endWithBoil(): () => void {
  let before: string | null = null;
  return effect(() => {
    const now = live.value;
    const boil = now === null ? null : `${now.boil ?? ''} ${now.ended}`;
    // While the host is gone, what is typed stays.
    if (boil === null || boil === before) return;
    before = boil;
    openForm.value = null;
    puttingAside.value = null;
    openList.value = 'few';
    asked.value = null;
    forgetPan();
  });
}
