// What is asked once when a boil has ended: at most six things, each with what it most likely was.
import type { BoilFacts } from './boil-facts.ts';
import type { BoilFigures } from './figures.ts';
import type { BoilPage, FuelUsed } from './records.ts';

/** Likely values; null where nobody can tell. A note is asked for beside these. */
export interface EndForm {
  syrup_litres: number | null;
  syrup_brix: number | null;
  /** As many jars of the last boil's size as that syrup fills; null where no jar was filled before. */
  jars: { litres: number; count: number } | null;
  fuel: {
    kind: FuelUsed['kind'];
    /** What is asked: what the cylinder weighs now, or how much it was. */
    ask: 'after_kg' | 'kg' | 'cords' | 'kwh';
    /** What it weighed before; null where that is not known. */
    before_kg: number | null;
    likely: number | null;
  };
  /** Whether it is asked how much sap went in: where the marks tell it, nothing is. */
  asks_sap: boolean;
}

/** `figures` are those of the boil while its page is blank, `before` is the page of the boil before it. */
export function endForm(facts: BoilFacts, figures: BoilFigures, before: BoilPage): EndForm {
  const syrup = figures.syrup_litres ?? figures.expected_syrup_litres;
  const jarLitres = before.jars?.[0]?.litres ?? null;
  const count = syrup === null || jarLitres === null ? 0 : Math.floor(syrup.value / jarLitres);
  return {
    syrup_litres: syrup?.value ?? null,
    syrup_brix: figures.syrup_brix?.value ?? facts.density?.brix ?? facts.finishBrix,
    jars: count === 0 || jarLitres === null ? null : { litres: jarLitres, count },
    fuel: fuelAsked(facts, before),
    asks_sap: figures.sap_litres === null,
  };
}

function fuelAsked({ heats, cylinder }: BoilFacts, before: BoilPage): EndForm['fuel'] {
  const kind = heats[0] ?? 'propane';
  if (kind === 'wood') return { kind, ask: 'cords', before_kg: null, likely: null };
  if (kind === 'electric') return { kind, ask: 'kwh', before_kg: null, likely: null };
  const beforeKg = cylinder.firstKg ?? before.fuel?.find((one) => one.kind === kind)?.after_kg ?? null;
  // One weighing is what it was before: what it is now is not known.
  const likely = cylinder.burnedKg === null ? null : cylinder.lastKg;
  return beforeKg === null
    ? { kind, ask: 'kg', before_kg: null, likely: null }
    : { kind, ask: 'after_kg', before_kg: beforeKg, likely };
}
