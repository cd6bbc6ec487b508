// Asks back about an amount that can hardly be meant: more than any such vessel holds.
import type { Mark, Pan } from '../client/types.ts';
import { say } from '../language/say.ts';
import { DEEPEST_MM } from '../words/depth-words.ts';
import { markWords } from '../words/mark-words.ts';
import { panNamed } from '../words/pan-words.ts';
import { isFilling } from './mark-form.ts';
import type { MarkPlace } from './mark-form.ts';

/** Inside, mm²; null where the vessel is not given, or where its height is, by which the host asks. */
function areaMm2(pan: Pan | null): number | null {
  const vessel = pan?.vessel;
  if (vessel?.shape === 'round') return (Math.PI / 4) * vessel.diameter_mm ** 2;
  return vessel?.shape === 'rectangular' ? vessel.length_mm * vessel.width_mm : null;
}

/** How deep the pan would be with the mark at least, mm; null where it cannot be told or the mark puts nothing in. */
function depthWith(mark: Mark, place: MarkPlace): number | null {
  if (mark.kind === 'depth') return mark.mm;
  if (mark.kind !== 'top-up' || mark.litres === undefined) return null;
  const area = areaMm2(panNamed(place.header, mark.pan));
  if (area === null) return null;
  const before = place.now.readings.find((each) => each.pan === mark.pan)?.depth_mm ?? 0;
  return before + (mark.litres * 1_000_000) / area;
}

/** More than a pan behind a house holds, litres: a metre and a half by 70 cm, 40 cm deep (judgement). */
const MOST_AT_ONCE_L = 400;

/** Whether the mark speaks of more than such pans hold, or stands deeper in them. */
function isTooMuch(mark: Mark, place: MarkPlace): boolean {
  if ('litres' in mark && mark.litres !== undefined && mark.litres > MOST_AT_ONCE_L) return true;
  const mm = depthWith(mark, place);
  return mm !== null && mm > DEEPEST_MM;
}

/** A question for the person, or null where the mark can be noted as it is. */
export function doubtAbout(mark: Mark, place: MarkPlace): string | null {
  if (!isTooMuch(mark, place)) return null;
  return say('marks.doubt_deep', { mark: markWords(mark, place.header, place.settings, isFilling(place)) });
}
