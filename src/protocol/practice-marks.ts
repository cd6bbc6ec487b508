// Which notes of a practice boil the practice made by itself, for the screen.
export { isByPractice } from '../core/boil/practice-marks.ts';
