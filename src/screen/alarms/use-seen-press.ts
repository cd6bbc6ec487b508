// What a press of "I have seen it" answers on the page that is open: settled when it is drawn, so that button and press say one thing.
import { useRef } from 'preact/hooks';
import type { AlarmView, Now } from '../client/types.ts';
import { answeredBy, foremost, NO_CALL } from './seen-press.ts';

export interface SeenPress {
  /** The foremost unseen call; null when all were seen or put aside. */
  front: AlarmView | null;
  answers: AlarmView[];
}

/** `shown` are the calls that this page names. To be called each time that it is drawn, whatever it draws. */
export function useSeenPress(now: Now, shown: readonly AlarmView[]): SeenPress {
  const front = useRef(NO_CALL);
  const atMs = performance.now();
  front.current = foremost(front.current, now.alarms, shown, atMs);
  return { front: front.current.call, answers: answeredBy(front.current, now.alarms, shown, atMs) };
}
