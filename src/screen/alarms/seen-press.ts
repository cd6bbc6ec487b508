// Which calls a press of "I have seen it" answers: what the person had before their eyes, not what came a moment ago.
import type { AlarmView } from '../client/types.ts';
import { alarmKey, firstUnseen, isAside } from '../words/alarm-words.ts';
import { isOnWay } from './one-way.ts';

/**
 * From seeing a call to the press takes at least this long (judgement: somebody in steam reads it, then finds the key).
 * What came later was not seen yet; a press that was meant for it after all leaves it calling, and is made again.
 */
export const SEEING_MS = 2500;

/** The foremost unseen call, since when it is that, which one was before it, and since when each unseen one is shown. */
export interface Foremost {
  call: AlarmView | null;
  sinceMs: number;
  before: AlarmView | null;
  shownSince: ReadonlyMap<string, number>;
}

export const NO_CALL: Foremost = { call: null, sinceMs: 0, before: null, shownSince: new Map() };

const isUnseen = (alarm: AlarmView): boolean => !alarm.answered && !isAside(alarm);

const isSame = (one: AlarmView | null, other: AlarmView | null): boolean =>
  one === other || (one !== null && other !== null && alarmKey(one) === alarmKey(other));

/** The one that a person had before their eyes before this: not one that was itself pushed away before it was seen. */
function lastSeen(last: Foremost, alarms: readonly AlarmView[], atMs: number): AlarmView | null {
  const stillCalls = alarms.some((alarm) => isUnseen(alarm) && isSame(alarm, last.before));
  return stillCalls && atMs - last.sinceMs < SEEING_MS ? last.before : last.call;
}

/** The foremost call after a look at the alarms and at those that are `shown`; atMs of a clock that never goes back. */
export function foremost(
  last: Foremost,
  alarms: readonly AlarmView[],
  shown: readonly AlarmView[],
  atMs: number,
): Foremost {
  const call = firstUnseen(alarms);
  const unseen = shown.filter(isUnseen).map(alarmKey);
  const shownSince = new Map(unseen.map((key) => [key, last.shownSince.get(key) ?? atMs]));
  if (isSame(call, last.call)) return { ...last, call, shownSince };
  return { call, sinceMs: atMs, before: lastSeen(last, alarms, atMs), shownSince };
}

/** The unseen calls of the same pan that ask for the same hand as `first`, without itself. */
export function sameHand(first: AlarmView, alarms: readonly AlarmView[]): AlarmView[] {
  if (!isOnWay(first)) return [];
  return alarms.filter(
    (alarm) =>
      alarm.pan === first.pan &&
      isOnWay(alarm) &&
      alarm.condition === 'active' &&
      isUnseen(alarm) &&
      !isSame(alarm, first),
  );
}

/**
 * What a press at atMs answers: the call that stands foremost, or nothing while that has only just pushed away one that is
 * still unseen, for the press was meant for that one, and another name on the button than over it would be taken for a fault. Calls that are over, and those of one pan that ask for the same hand, are answered together, as far as
 * they are `shown` and were so long enough: each by itself would ask for a press that tells nobody anything.
 */
export function answeredBy(
  front: Foremost,
  alarms: readonly AlarmView[],
  shown: readonly AlarmView[],
  atMs: number,
): AlarmView[] {
  const { call } = front;
  const earlier = alarms.filter(isUnseen).find((alarm) => isSame(alarm, front.before));
  if (earlier !== undefined && atMs - front.sinceMs < SEEING_MS) return [];
  if (call === null) return [];
  const others =
    call.condition === 'over'
      ? shown.filter((alarm) => isUnseen(alarm) && alarm.condition === 'over' && !isSame(alarm, call))
      : sameHand(call, shown);
  const wasSeen = (alarm: AlarmView): boolean =>
    atMs - (front.shownSince.get(alarmKey(alarm)) ?? Infinity) >= SEEING_MS;
  return [call, ...others.filter(wasSeen)];
}
