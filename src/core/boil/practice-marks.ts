// Which notes of a practice boil the practice made by itself, as it did what they say.
import type { Mark } from './entries.ts';

/** What the ids of the marks begin with that a simulated hand makes. */
export const SIMULATED_HAND = 'hand-';

/** Whether a header is known as that of a practice. */
export const isPractice = (header: object | null): boolean =>
  header !== null && 'practice' in header && header.practice === true;

/** False for what a person noted, and in every boil that is not known as a practice. */
export function isByPractice(mark: Mark, header: object | null): boolean {
  return isPractice(header) && mark.id?.startsWith(SIMULATED_HAND) === true;
}
