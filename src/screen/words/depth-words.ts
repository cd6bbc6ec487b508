// How deep a pan stands, in words: never a figure that its vessel cannot hold.
import { rimMm } from '../../core/quantities/rim.ts';
import { counts } from '../../protocol/mark-flow.ts';
import { isByPractice } from '../../protocol/practice-marks.ts';
import type { Now, Pan, Settings } from '../client/types.ts';
import { say } from '../language/say.ts';
import { depth } from './amounts.ts';
import { timeOfDay } from './clock.ts';

/** Deeper than pots and pans on a fire are, where nobody told how high the vessel is, mm (common practice). */
export const DEEPEST_MM = 600;

/** "43 mm deep", or that it is more than the vessel holds. */
export function depthWords(mm: number, pan: Pan | null, settings: Settings): string {
  const most = (pan?.vessel === undefined ? null : rimMm(pan.vessel)) ?? DEEPEST_MM;
  return mm > most ? say('pans.over_rim') : say('pans.deep', { depth: depth(mm, settings) });
}

/** What was noted and counted is told beside the number for so long, ms: then it boiled down, and is a number of the count again (judgement). */
const BESIDE_MS = 20 * 60_000;

/**
 * "you noted 80 mm at 13:05; the count said 96 mm": both, where a depth that was noted of late is shown as another, for the
 * two were weighed against each other. null where they agree, or the contents were changed since.
 */
export function notedAndCounted(
  now: Pick<Now, 'marks' | 'header' | 't' | 'clock' | 'mode' | 'speed'>,
  pan: string,
  settings: Settings,
): string | null {
  const last = now.marks.findLast((each) => counts(each) && isOfContents(each.mark, pan));
  if (last?.mark.kind !== 'depth' || last.depths === undefined || now.t - last.at > BESIDE_MS) return null;
  const noted = depth(last.mark.mm, settings);
  if (noted === depth(last.depths.takenMm, settings)) return null;
  const counted = depth(last.depths.countedMm, settings);
  const key = isByPractice(last.mark, now.header) ? 'pans.practice_noted_counted' : 'pans.noted_counted';
  return say(key, { noted, counted, time: timeOfDay(now, last.at) });
}

function isOfContents(mark: Now['marks'][number]['mark'], pan: string): boolean {
  if (mark.kind === 'transfer') return mark.from === pan || mark.to === pan;
  return (mark.kind === 'depth' || mark.kind === 'top-up' || mark.kind === 'draw-off') && mark.pan === pan;
}
