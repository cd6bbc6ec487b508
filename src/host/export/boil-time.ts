// Times of a boil on the clock that hung beside the pans: the offset of its `started` holds for all of it.
import { MINUTE_MS, onTwelve } from '../../core/quantities/time.ts';
import type { Tongue } from '../../language/tongue.ts';
import type { Settings } from '../../protocol/messages.ts';

/** "2027-04-18". */
export const dayText = (started: string, t = 0): string => localIso(started, t).slice(0, 10);
/** "07:30", or "7:30 am" where that clock was chosen. */
export function timeText(started: string, t: number, { clock }: Pick<Settings, 'clock'>, tongue: Tongue): string {
  const text = localIso(started, t).slice(11, 16);
  if (clock === '24') return text;
  const { hour, half } = onTwelve(Number(text.slice(0, 2)));
  return tongue.say(half === 'am' ? 'clock.am' : 'clock.pm', { time: `${hour}${text.slice(2)}` });
}

/** Minutes from local midnight at boil time 0, for ticks on whole hours. */
export function minutesPastMidnight(started: string): number {
  const time = localIso(started, 0);
  return Number(time.slice(11, 13)) * 60 + Number(time.slice(14, 16));
}

function localIso(started: string, t: number): string {
  const found = /([+-])(\d{2}):?(\d{2})$/u.exec(started);
  const size = found === null ? 0 : Number(found[2]) * 60 + Number(found[3]);
  const offsetMs = (found?.[1] === '-' ? -size : size) * MINUTE_MS;
  return new Date(Date.parse(started) + t + offsetMs).toISOString();
}
