// Chooses the pan that calls, so that what is noted under a call goes to the pan that it is about; the big view shows it, too.
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

/** Who answers a call or presses its name sees its pan, where the pans are what they look at and nothing is being typed. */
export function showCalled(call: Pick<AlarmView, 'pan'> | undefined): void {
  if (call === undefined || call.pan === null || route.value !== 'pans' || isTyping()) return;
  selectPan(call.pan);
  bringIntoSight(call.pan);
}

function bringIntoSight(pan: string): void {
  const card = [...document.querySelectorAll<HTMLElement>('.card')].find(({ dataset }) => dataset['pan'] === pan);
  if (card !== undefined) scrollClear(card);
}

/**
 * Chooses the pan of the foremost unseen call, once for each raising, so that who then chooses another keeps it; returns
 * the way to stop. Not while a form is open, nor in a replay, whose pan is chosen for what was.
 */
export function followCalls(): () => void {
  let followed: readonly string[] = [];
  return effect(() => {
    const now = live.value;
    if (now === null || route.value === 'replay') return;
    const call = callsNow(now.alarms);
    const standing = now.alarms.map(alarmKey);
    const before = followed;
    followed = before.filter((key) => standing.includes(key));
    if (call === null || before.includes(alarmKey(call))) return;
    followed = [...followed, alarmKey(call)];
    if (call.pan !== null && !isTyping()) selectPan(call.pan);
  });
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
