// Shows the pan that a call is about. Which pan is chosen no call changes: a key pressed for one pan must not note something of another.
import { effect } from '@preact/signals';
import { puttingAside } from '../alarms/dock-state.ts';
import { live } from '../client/store.ts';
import type { AlarmView } from '../client/types.ts';
import { openForm } from '../marks/open-form.ts';
import { openLimits } from '../settings/open-limits.ts';
import { route } from '../shell/routes.ts';
import { scrollClear } from '../shell/scroll-clear.ts';
import { alarmKey, callsNow } from '../words/alarm-words.ts';
import { isBig } from './big-view.tsx';
import { selectPan } from './selected-pan.ts';

/** A form stands for the pan that was chosen as it was opened. */
const isTyping = (): boolean => [openForm, openLimits, puttingAside].some((form) => form.peek() !== null);

/** Who answers a call sees its pan, where the pans are what they look at and nothing is being typed. */
export function showCalled(call: Pick<AlarmView, 'pan'> | undefined): void {
  if (call === undefined || call.pan === null || route.value !== 'pans' || isTyping()) return;
  bringIntoSight(call.pan);
}

/** Who presses the name of a call chooses its pan, and sees it. */
export function chooseCalled(call: Pick<AlarmView, 'pan'>): void {
  if (call.pan !== null && route.value === 'pans' && !isTyping()) selectPan(call.pan);
  showCalled(call);
}

function bringIntoSight(pan: string): void {
  const card = [...document.querySelectorAll<HTMLElement>('.card')].find(({ dataset }) => dataset['pan'] === pan);
  if (card !== undefined) scrollClear(card);
}

/**
 * In the big view, which is looked at from afar, brings the pan of the foremost unseen call into sight, once for each
 * raising and as the view is opened; elsewhere a call that comes moves nothing that is being read. Returns the way to stop.
 */
export function bigViewFollowsCalls(): () => void {
  let shown: string | null = null;
  return effect(() => {
    const isLooked = isBig.value && route.value === 'pans';
    const call = isLooked && live.value !== null ? callsNow(live.value.alarms) : null;
    const key = call === null ? null : alarmKey(call);
    const before = shown;
    shown = key;
    const pan = call?.pan ?? null;
    if (key === before || pan === null || isTyping()) return;
    // The call takes its room at the foot with the next picture.
    requestAnimationFrame(() => bringIntoSight(pan));
  });
}
