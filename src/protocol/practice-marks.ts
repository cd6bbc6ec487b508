// Which notes of a practice boil the practice made by itself, as it did what they say.
import type { Mark } from '../core/boil/entries.ts';
import { SIMULATED_HAND } from '../core/simulation/deeds.ts';

/** False for what a person noted, and in every boil that is not known as a practice. */
export function isByPractice(mark: Mark, header: object | null): boolean {
  const isPractice = header !== null && 'practice' in header && header.practice === true;
  return isPractice && mark.id?.startsWith(SIMULATED_HAND) === true;
}
