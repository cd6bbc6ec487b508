// How warm a pan is now, as far as that is known, and in words what it showed last where it is not: plainly of then, with its age.
import type { Now, Reading, Settings } from '../client/types.ts';
import { say } from '../language/say.ts';
import { temperature } from './amounts.ts';
import { ago, standsAtItsEnd, timeOfDay } from './clock.ts';

/** °C and ms of boil time; null where the temperature is known now, or none ever was. */
export const lastHeat = ({ lastHeats }: Now, pan: string): { celsius: number; at: number } | null =>
  lastHeats.find((one) => one.pan === pan) ?? null;

/** A thermometer in the hand told of what was in the pan then: of a pan off the fire, mostly an emptied one, it tells nothing. */
export const heatNow = (reading: Reading): Reading =>
  reading.stage === 'off' && reading.probe === null ? { ...reading, temperature_c: null, rise_c: null } : reading;

/** "was 101.4 °C, 6 min ago"; "not read yet" where none ever was, and nothing of a pan off the fire: what it showed tells of then. */
export function lastHeatWords(now: Now, { pan, stage }: Pick<Reading, 'pan' | 'stage'>, settings: Settings): string {
  if (stage === 'off') return '';
  const last = lastHeat(now, pan);
  if (last === null) return say('pans.unread');
  const was = temperature(last.celsius, settings);
  if (standsAtItsEnd(now)) return say('pans.was_then', { temperature: was, time: timeOfDay(now, last.at) });
  return say('pans.was', { temperature: was, ago: ago((now.t - last.at) / 1000) });
}
