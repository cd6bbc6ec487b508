// How much a vessel holds up to its rim, for the screen.
export { heldLitres } from '../core/pan/held-litres.ts';
