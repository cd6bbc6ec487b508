// The least sugar that a syrup holds, where nobody can say how strong it is.
import { massOfLitres } from '../pan/filter/liquid.ts';
import { SYRUP_BRIX } from './boil-facts.ts';
import type { BoilFigures } from './figures.ts';

/** At least so much sugar is in the syrup, kg: of unknown strength it is no thinner than any syrup. null where not even its amount is known. */
export function leastSugarKg({
  syrup_sugar_kg: sugar,
  syrup_litres: litres,
}: Pick<BoilFigures, 'syrup_sugar_kg' | 'syrup_litres'>): number | null {
  if (sugar !== null) return sugar.low;
  if (litres === null || litres.low === null) return null;
  return (massOfLitres(litres.low, SYRUP_BRIX) * SYRUP_BRIX) / 100;
}
