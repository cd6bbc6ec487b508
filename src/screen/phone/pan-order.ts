// In which order a phone shows the pans: what calls comes first, for a phone has no room for all of them.
import type { Now, Reading } from '../client/types.ts';
import { inOrder, isAside } from '../words/alarm-words.ts';

/** Pans that call, the most urgent first and what was seen after what was not; then the others as they were set up. */
export function callingFirst({ readings, alarms }: Pick<Now, 'readings' | 'alarms'>): Reading[] {
  const calling = inOrder(alarms).filter((alarm) => alarm.condition === 'active' && !isAside(alarm));
  const pans = [...new Set(calling.map(({ pan }) => pan))];
  const called = pans.flatMap((pan) => readings.filter((reading) => reading.pan === pan));
  return [...called, ...readings.filter((reading) => !called.includes(reading))];
}
