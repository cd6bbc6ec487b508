// How much sap is noted as poured in, as the plan that is under way and the screen both count it.
import type { BoilView } from '../core/boil/view.ts';

/** Sap that is noted as poured in, litres; what was taken back, or is not believed, does not count. */
export const pouredLitres = (marks: BoilView['marks']): number =>
  marks.reduce(
    (sum, { mark, withdrawn, questioned }) =>
      mark.kind === 'top-up' && !withdrawn && !questioned ? sum + (mark.litres ?? 0) : sum,
    0,
  );
