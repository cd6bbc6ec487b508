// What a mark does to what is in a pan, for the screen.
export { poursInto } from '../core/boil/mark-flow.ts';
