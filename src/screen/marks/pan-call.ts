// What a pan called for, as the row of pans in a note's form shows it: the note that follows a call is mostly of its pan.
import { alarmTitle, foremost } from '../../protocol/alarm-titles.ts';
import type { AlarmView, Now, Priority } from '../client/types.ts';
import { inOrder, isAside } from '../words/alarm-words.ts';
import { hostWords } from '../language/host-words.ts';

export interface PanCall {
  priority: Priority;
  /** "Running low" */
  words: string;
}

/** Who has said that they saw a call notes something of it within this time, by their own clock, ms (judgement). */
const LATELY_MS = 2 * 60_000;

const told = ({ priority, title }: Pick<AlarmView, 'priority' | 'title'>): PanCall => ({
  priority,
  words: hostWords(title),
});

/** The worst call of a pan that stands, seen or not, else the last that was answered a short while ago; null for none. */
export function panCall(now: Now, pan: string): PanCall | null {
  const stands = now.alarms.filter((each) => each.pan === pan && each.condition === 'active' && !isAside(each));
  const worst = foremost(inOrder(stands));
  if (worst !== undefined) return told(worst);
  const latelyMs = LATELY_MS * (now.mode === 'practice' ? now.speed : 1);
  const answered = now.history.raisings.findLast(
    (each) => each.pan === pan && each.answeredAt !== null && now.t - each.answeredAt <= latelyMs,
  );
  return answered === undefined ? null : told({ priority: answered.priority, title: alarmTitle(answered.alarm) });
}
