// When the fire of a new boil was lit, as a person says it: now, or at a time of day earlier today or yesterday.
import { DAY_MS, MINUTE_MS } from '../../core/quantities/time.ts';
import { sessionSignal } from '../client/session-signal.ts';
import type { Now } from '../client/types.ts';
import { say } from '../language/say.ts';
import { sinceMidnightMs } from '../marks/when.ts';
import { hoursAndMinutes, machineWallMs } from '../words/clock.ts';

/** `time` as it was typed; a fire of which nothing is said is lit now. */
export interface Lit {
  day: 'today' | 'yesterday';
  time: string;
}

/** Until the boil is started, or somebody clears it. */
export const typedLit = sessionSignal<Lit>('boil-lit');

/** A time at which a fire may have been lit, as an example, by the machine's clock: a practice has its own. */
export const litExample = (now: Pick<Now, 'clock'>): string => hoursAndMinutes(machineWallMs(now) - MINUTE_MS);

/** What the start command says of it, by the host's clock on the wall: "2027-04-18T07:30:00"; or what is wrong with it. */
export function litOf(lit: Lit | null, now: Now): { lit?: string } | { wrong: string } {
  if (lit === null) return {};
  const wall = machineWallMs(now);
  const sinceMidnight = sinceMidnightMs(lit.time);
  const midnight = Math.floor(wall / DAY_MS) * DAY_MS - (lit.day === 'yesterday' ? DAY_MS : 0);
  const at = midnight + (sinceMidnight ?? Infinity);
  return at <= wall
    ? { lit: new Date(at).toISOString().slice(0, 19) }
    : { wrong: say('marks.problem.time', { example: litExample(now) }) };
}
