// How much of a boil's sap went into what was finished: what stayed thin in a pan made no syrup.
import { follows, type Known } from './known.ts';

interface Parts {
  sapLitres: Known | null;
  sapSugarKg: Known | null;
  /** Sugar in what stayed too thin for syrup; null where nobody can say what is left. */
  leftSugarKg: Known | null;
  syrupSugarKg: Known | null;
}

/**
 * Litres of sap less the share whose sugar stayed thin; all of it where nothing is known to have stayed. null where that
 * share is not known, and where more sugar is told than went in: then what stayed thin was finished elsewhere, or never was.
 */
export function finishedSap({ sapLitres, sapSugarKg, leftSugarKg, syrupSugarKg }: Parts): Known | null {
  if (leftSugarKg === null || leftSugarKg.value === 0) return sapLitres;
  const over = follows([syrupSugarKg, leftSugarKg, sapSugarKg], (syrup, left, sap) => syrup! + left! - sap!);
  if (over !== null && over.value > 2 * over.sigma) return null;
  return follows([sapLitres, leftSugarKg, sapSugarKg], (litres, left, sap) =>
    left! < sap! ? litres! * (1 - left! / sap!) : null,
  );
}
