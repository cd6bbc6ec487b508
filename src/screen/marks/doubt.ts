// Asks back about an amount that can hardly be meant: more than any such vessel holds.
import type { Mark, Pan } from '../client/types.ts';
import { say } from '../language/say.ts';
import { depth } from '../words/amounts.ts';
import { markWords } from '../words/mark-words.ts';
import { panNamed } from '../words/pan-words.ts';
import type { MarkPlace } from './mark-form.ts';

/** Deeper than pots and pans on a fire are. */
const DEEPEST_MM = 600;

/** The widest it is inside, mm²; null where the vessel is not given or only its fills are. */
function areaMm2(pan: Pan | null): number | null {
  const vessel = pan?.vessel;
  if (vessel?.shape === 'round') return (Math.PI / 4) * vessel.diameter_mm ** 2;
  if (vessel?.shape === 'round-sloped')
    return (Math.PI / 4) * Math.max(vessel.bottom_diameter_mm, vessel.top_diameter_mm) ** 2;
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

/** A question for the person, or null where the mark can be noted as it is. */
export function doubtAbout(mark: Mark, place: MarkPlace): string | null {
  const mm = depthWith(mark, place);
  if (mm === null || mm <= DEEPEST_MM) return null;
  return say('marks.doubt_deep', {
    mark: markWords(mark, place.header, place.settings),
    depth: depth(mm, place.settings),
  });
}
