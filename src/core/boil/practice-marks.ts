// Which notes of a practice boil the practice made by itself, as it did what they say.
import type { Mark } from './entries.ts';

/** What the ids of the marks begin with that a simulated hand makes. */
export const SIMULATED_HAND = 'hand-';

/** False for what a person noted, and in every boil that is not known as a practice. */
export function isByPractice(mark: Mark, header: object | null): boolean {
  const isPractice = header !== null && 'practice' in header && header.practice === true;
  return isPractice && mark.id?.startsWith(SIMULATED_HAND) === true;
}
