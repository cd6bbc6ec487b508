// When a pan is done, in words, with its range.
import { say } from '../language/say.ts';
import type { Now, Reading } from '../client/types.ts';
import { timeOfDay } from '../words/clock.ts';
import { sapToCome } from '../words/planned-sap.ts';

export interface Forecast {
  headline: string;
  range: string | null;
}

/** The boil that is shown was ended: of its pans nothing is expected any more, and nobody is asked for anything. */
export const isPast = (now: Pick<Now, 'view' | 'ended'>): boolean => now.view === 'live' && now.ended;

/** Beyond this the range is wider than a time of day can say, s. */
const FAR_OFF_S = 24 * 3600;

/** Null where nothing is known, of a pan off the fire, and once the boil is over; while it runs the card says what would help. */
export function forecastWords(now: Now, reading: Reading): Forecast | null {
  const { finish_in_s: seconds, finish_low_s: low, finish_high_s: high } = reading;
  if (seconds === null || reading.stage === 'off' || isPast(now)) return null;
  if (seconds <= 0) return { headline: say('pans.done_now'), range: null };
  // It is called once it may be there with the asked probability, a little before the middle of what is believed: one word for both.
  if (reading.stage === 'finished') return { headline: say('pans.done_check'), range: null };
  if (seconds > FAR_OFF_S) return { headline: say('pans.far_off'), range: null };
  const at = (s: number): string => timeOfDay(now, now.t + s * 1000);
  const edges = low === null || high === null ? null : [at(low), at(high)];
  return {
    headline: say(sapToCome(now) > 0 ? 'pans.done_dry' : 'pans.done_about', { time: at(seconds) }),
    range: edges === null || edges[0] === edges[1] ? null : edges.join('–'),
  };
}
