// How deep a pan stands, in words: never a figure that its vessel cannot hold.
import { rimMm } from '../../core/quantities/rim.ts';
import type { Pan, Settings } from '../client/types.ts';
import { say } from '../language/say.ts';
import { depth } from './amounts.ts';

/** Deeper than pots and pans on a fire are, where nobody told how high the vessel is, mm (common practice). */
export const DEEPEST_MM = 600;

/** "43 mm deep", or that it is more than the vessel holds. */
export function depthWords(mm: number, pan: Pan | null, settings: Settings): string {
  const most = (pan?.vessel === undefined ? null : rimMm(pan.vessel)) ?? DEEPEST_MM;
  return mm > most ? say('pans.over_rim') : say('pans.deep', { depth: depth(mm, settings) });
}
