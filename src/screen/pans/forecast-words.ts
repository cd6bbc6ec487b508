// When a pan is done, in words, with its range.
import { say } from '../language/say.ts';
import type { Now, Reading } from '../client/types.ts';
import { timeOfDay } from '../words/clock.ts';

export interface Forecast {
  headline: string;
  range: string | null;
}

/** Beyond this the range is wider than a time of day can say, s. */
const FAR_OFF_S = 24 * 3600;

/** Null where nothing is known; the card then says what would help. */
export function forecastWords(now: Now, reading: Reading): Forecast | null {
  const { finish_in_s: seconds, finish_low_s: low, finish_high_s: high } = reading;
  if (reading.stage === 'off') return { headline: say('pans.off'), range: null };
  if (seconds === null) return null;
  if (seconds <= 0) return { headline: say('pans.done_now'), range: null };
  if (seconds > FAR_OFF_S) return { headline: say('pans.far_off'), range: null };
  const at = (s: number): string => timeOfDay(now, now.t + s * 1000);
  const edges = low === null || high === null ? null : [at(low), at(high)];
  return {
    headline: say('pans.done_about', { time: at(seconds) }),
    range: edges === null || edges[0] === edges[1] ? null : edges.join('–'),
  };
}
