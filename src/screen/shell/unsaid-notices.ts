// Which of the host's notices are to be shown: those that nothing else on the page says in the same words.
import type { Now } from '../client/types.ts';

/** `told` is what the line of the last deed says. What the call of a lost board says, it says with more weight. */
export function unsaidNotices({ notices, alarms }: Pick<Now, 'notices' | 'alarms'>, told?: string): string[] {
  const called = alarms.flatMap(({ alarm, condition, why }) =>
    alarm === 'port-lost' && condition === 'active' ? [why] : [],
  );
  return notices.filter((sentence) => sentence !== told && !called.includes(sentence));
}
