// Whether a mark counts, and what it does to what is in a pan, for the screen.
export { counts, poursInto } from '../core/boil/mark-flow.ts';
