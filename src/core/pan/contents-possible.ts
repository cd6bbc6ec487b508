// The most that a pan can hold, by its rim and by the sugar that was noted: a forecast that rests on more would come hours too late.
import type { Course } from './course.ts';
import type { PanDesign } from './setup.ts';
import { type Belief, SUGAR, variance, waterOf } from './filter/belief.ts';
import { HOT_VOLUME, litresOf } from './filter/liquid.ts';
import { heldLitres } from './held-litres.ts';

/** More than so many times the sugar that was noted is no pour that somebody forgot, but an amount that nobody knows (judgement). */
const MOST_TIMES = 3;
/** Sugar known worse than this, standard deviation of its logarithm, was measured by nobody. */
export const UNTOLD_SUGAR = 0.5;
/** A rim is measured to this share, and foam stands over it. */
const OVER_RIM = 1.2;

/** Whether more sugar is believed than stands up to the rim, or than a multiple of all that was noted where nobody measured the amount. */
export const isMoreThanPossible = (now: Belief, course: Course, design: PanDesign): boolean =>
  now.x[SUGAR]! > Math.min(mostByRim(now, design), mostByNotes(now, course));

function mostByRim(now: Belief, { vessel }: PanDesign): number {
  const litres = heldLitres(vessel);
  return litres === null ? Infinity : Math.log((OVER_RIM * litres) / HOT_VOLUME / litresOf(1, waterOf(now)));
}

function mostByNotes(now: Belief, { notedSugar }: Course): number {
  if (notedSugar === null || Math.sqrt(variance(now, SUGAR)) <= UNTOLD_SUGAR) return Infinity;
  return notedSugar.ln + Math.log(MOST_TIMES);
}
