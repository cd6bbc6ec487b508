// When a pan is done, in words, with its range.
import { isTopUpAdvised } from '../../core/quantities/top-up-advice.ts';
import { counts, poursInto } from '../../protocol/mark-flow.ts';
import { settings } from '../client/store.ts';
import { say } from '../language/say.ts';
import type { MarkView, Now, Reading, Settings } from '../client/types.ts';
import { volume } from '../words/amounts.ts';
import { fromTo, timeOfDay } from '../words/clock.ts';
import { isUnseen, panName } from '../words/pan-words.ts';
import { isTooLittle, sapToCome } from '../words/planned-sap.ts';

export interface Forecast {
  headline: string;
  range: string | null;
  /** What is not for now, in small letters; else left out. */
  small?: string;
  /** What the headline tells of, where that is not the finish. */
  about?: 'top-up';
  /** The headline tells of the whole boil, so it is not to stand as large as what is said of one pan. */
  ofAll?: true;
}

/** The boil that is shown was ended: of its pans nothing is expected any more, and nobody is asked for anything. */
export const isPast = (now: Pick<Now, 'view' | 'ended'>): boolean => now.view === 'live' && now.ended;

/** Beyond this the range is wider than a time of day can say, s. */
const FAR_OFF_S = 24 * 3600;

/** Null where nothing is known, of a pan off the fire, and once the boil is over; while it runs the card says what would help. */
export function forecastWords(now: Now, reading: Reading, shown = settings.value): Forecast | null {
  const { finish_in_s: seconds, finish_low_s: low, finish_high_s: high } = reading;
  if (seconds === null || reading.stage === 'off' || isPast(now)) return null;
  if (seconds <= 0 && reading.stage === 'finished') return { headline: say('pans.done_now'), range: null };
  // It is called once it may be there with the asked probability: where that is before the middle of what is believed, or after
  // it, as with a count that is hardly known, only a look tells.
  if (seconds <= 0 || reading.stage === 'finished') return { headline: say('pans.done_check'), range: null };
  const advice = now.advice.find((one) => one.pan === reading.pan);
  if (advice?.tooLittle === true) {
    // A smaller pot is asked for once it is of use: till then more sap may come.
    const isEarly = advice.shallow === null || sapToCome(now, reading.pan) > 0;
    return isEarly ? stillFilled(now, reading, shown) : { headline: say('pans.too_little'), range: null };
  }
  if (seconds > FAR_OFF_S) return { headline: say('pans.far_off'), range: null };
  const at = (s: number): string => timeOfDay(now, now.t + s * 1000);
  const edges = low === null || high === null ? null : [at(low), at(high)];
  const time = at(seconds);
  const isDry = sapToCome(now, reading.pan) > 0;
  return {
    headline: isUnseen(reading)
      ? say('pans.by_count', { what: say(isDry ? 'next.done_dry' : 'next.done_about', { time }) })
      : say(isDry ? 'pans.done_dry' : 'pans.done_about', { time }),
    range: edges === null || edges[0] === edges[1] ? null : fromTo(edges[0]!, edges[1]!),
  };
}

/** What is next for a pan into which more is still poured: when, or how much. That it could not be finished yet is no news then. */
function stillFilled(now: Now, reading: Reading, shown: Settings): Forecast {
  const { pan, top_up_in_s: seconds } = reading;
  const small = say('pans.too_little_yet');
  if (seconds !== null && seconds < FAR_OFF_S && isTopUpAdvised(reading)) {
    const time = timeOfDay(now, now.t + seconds * 1000);
    const headline = seconds <= 0 ? say('pans.top_up_now') : say('pans.top_up_about', { time });
    return { headline, range: null, small, about: 'top-up' };
  }
  const left = sapToCome(now, pan);
  if (left <= 0) return { headline: say('pans.more_sap'), range: null, small };
  // Pan by pan nobody planned it: the same amount stands on each card, and must not be poured into each.
  return { headline: say('pans.sap_to_come', { amount: volume(left, shown, 0) }), range: null, small, ofAll: true };
}

/** A pour explains a new time of the finish so long, and only one that moved by so much, ms. */
const EXPLAINS_MS = 30 * 60_000;
const MOVED_MS = 2 * 60_000;

/** Why the finish is expected at another time than before, in a few words; null where no pour of late moved it. */
export function whyMoved(now: Now, { pan }: Reading, settings: Settings): string | null {
  if (isTooLittle(now, pan)) return null;
  const last = now.marks
    .filter((each) => counts(each) && movesContents(each, pan))
    .reduce<MarkView | null>((latest, each) => (latest === null || each.at >= latest.at ? each : latest), null);
  // What was taken out since moved it, too.
  if (last === null || !poursInto(last.mark, pan) || now.t - last.at > EXPLAINS_MS) return null;
  const change = last.corrections.findLast((each) => each.pan === pan);
  const [before, after] = [change?.before.finishAt ?? null, change?.after.finishAt ?? null];
  if (before === null || after === null || Math.abs(after - before) < MOVED_MS) return null;
  return say('pans.finish_moved', { why: pourWords(now, last, settings) });
}

const movesContents = (each: MarkView, pan: string): boolean =>
  poursInto(each.mark, pan) ||
  (each.mark.kind === 'draw-off' && each.mark.pan === pan) ||
  (each.mark.kind === 'transfer' && each.mark.from === pan);

function pourWords(now: Now, { mark, at }: MarkView, settings: Settings): string {
  const time = timeOfDay(now, at);
  const litres = 'litres' in mark ? mark.litres : undefined;
  if (litres !== undefined) return say('pans.poured_in', { amount: volume(litres, settings), time });
  return mark.kind === 'transfer'
    ? say('pans.poured_in_from', { pan: panName(now.header, mark.from), time })
    : say('pans.poured_in_some', { time });
}
