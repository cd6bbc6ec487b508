// What is asked once when a boil has ended: at most six things, each with what it most likely was.
import { Z80 } from '../quantities/spread.ts';
import { massOfLitres } from '../pan/filter/liquid.ts';
import { SAID_BRIX } from './batches.ts';
import { type BoilFacts, isSyrup, SYRUP_BRIX } from './boil-facts.ts';
import type { BoilFigures } from './figures.ts';
import type { BoilPage, FuelUsed } from './records.ts';
import { figureOf } from './known.ts';
import { sapIn } from './sap-in.ts';
import { AIMED_BRIX, MEASURED_SHARE } from './syrup-out.ts';

/** Likely values; null where nobody can tell. A note is asked for beside these. */
export interface EndForm {
  syrup_litres: number | null;
  syrup_brix: number | null;
  /** Which of the two somebody measured and noted; the other is a guess, and a guess that is kept is none the less one. */
  measured: { syrup: boolean; brix: boolean };
  /** Nothing shows that all of it became syrup: then what the sap could have given is not offered as what it gave. */
  broken_off: boolean;
  /** What was drawn off as syrup, measured or as the pans show, L; null where nothing was, or where one drawing-off is of nobody knows how much. */
  drawn_litres: number | null;
  /**
   * More syrup (L) of this strength (°Bx) holds more sugar than went in, beyond what both are known to; `aimed` where nobody told how
   * strong it is, and it is the least that the finish of the boil lets expect; `each_litre_of_sap` where the sap is asked for here: so
   * much for each litre of it. null where nobody can tell.
   */
  most_syrup: { litres: number; brix: number; aimed?: true; each_litre_of_sap?: true } | null;
  /** Several kinds of sap were boiled, and no draw-off says which of them became the syrup. */
  asks_draw_off: boolean;
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
  const brokenOff = figures.syrup_litres === null && !becameSyrup(facts);
  const expected = brokenOff ? null : (figures.expected_syrup_litres?.value ?? null);
  const drawn = drawnOff(facts);
  const syrup = figures.syrup_litres?.value ?? drawn ?? expected;
  const read = readBrix(facts);
  const jarLitres = before.jars?.[0]?.litres ?? null;
  const count = syrup === null || jarLitres === null ? 0 : Math.floor(syrup / jarLitres);
  const brix = read ?? figures.syrup_brix?.value ?? (brokenOff ? null : calledBrix(facts));
  return {
    syrup_litres: syrup,
    syrup_brix: brix,
    measured: {
      syrup: figures.syrup_litres === null ? drawn !== null : figures.syrup_litres.from === 'marks',
      brix: read !== null || isBrixSaid(facts),
    },
    broken_off: brokenOff,
    drawn_litres: drawnAsSyrup(facts),
    most_syrup: mostSyrup(facts, figures, read ?? figures.syrup_brix?.value ?? null),
    asks_draw_off: facts.saps.length > 1 && facts.taken.length === 0 && facts.takenUntold.length === 0,
    jars: count === 0 || jarLitres === null ? null : { litres: jarLitres, count },
    fuel: fuelAsked(facts, before),
    asks_sap: figures.sap_litres === null,
  };
}

/** What the balance of the boil's page would call too much, told where the amount is typed. */
function mostSyrup(facts: BoilFacts, figures: BoilFigures, told: number | null): EndForm['most_syrup'] {
  const isAsked = figures.sap_litres === null;
  const sap = isAsked ? figureOf(sapIn(facts, { sap: { litres: 1 } }, []).sugarKg) : figures.sap_sugar_kg;
  if (sap === null || sap.high === null) return null;
  const brix = told ?? (facts.finishBrix === null ? SYRUP_BRIX : facts.finishBrix - Z80 * AIMED_BRIX);
  const sugarPerLitre = (massOfLitres(1, brix) * brix) / 100;
  return {
    litres: sap.high / sugarPerLitre / (1 - Z80 * MEASURED_SHARE),
    brix,
    ...(told === null && { aimed: true as const }),
    ...(isAsked && { each_litre_of_sap: true as const }),
  };
}

/** Syrup is bottled from about this strength, and a birch pan may be finished thinner, so much under its finish, °Bx (practice). */
const BOTTLED_BRIX = 60;
const NEAR_FINISH_BRIX = 3;

/** The last density where it is one of the syrup, not of the sap or of what was poured together or boiled on since: it goes before what the pan model says of it. Else null. */
function readBrix({ density, finishBrix }: BoilFacts): number | null {
  const least = Math.min(BOTTLED_BRIX, (finishBrix ?? BOTTLED_BRIX) - NEAR_FINISH_BRIX);
  return density !== null && density.before !== true && density.brix >= least ? density.brix : null;
}

/** The finish where it was called. */
const calledBrix = ({ finishBrix, outcomes }: BoilFacts): number | null =>
  outcomes.includes('finished') ? finishBrix : null;

/** Whether somebody said how strong all of the syrup was that was drawn off: the model knows it no better than this, °Bx. */
function isBrixSaid({ taken, left }: BoilFacts): boolean {
  const syrup = [...taken, ...left].filter(isSyrup);
  return syrup.length > 0 && syrup.every((batch) => taken.includes(batch) && batch.brixSigma <= SAID_BRIX);
}

/**
 * What somebody measured and drew off as syrup, L: it leads over what the sap could give, though nobody can say what was
 * left in the pan. null where nothing was, or where one drawing-off was not measured.
 */
function drawnOff(facts: BoilFacts): number | null {
  return facts.taken.filter(isSyrup).every(({ measured }) => measured) ? drawnAsSyrup(facts) : null;
}

function drawnAsSyrup({ taken, takenUntold }: BoilFacts): number | null {
  const syrup = taken.filter(isSyrup);
  if (syrup.length === 0 || takenUntold.length > 0) return null;
  return syrup.reduce((sum, { litres }) => sum + litres, 0);
}

/** Some syrup was called, measured or seen, and no pan was left with less than syrup in it, or with nobody knows what. */
function becameSyrup({ outcomes, density, taken, takenUntold, left, leftUntold, boilingSeconds }: BoilFacts): boolean {
  const isThick = ({ brix, unfinished = false }: { brix: number; unfinished?: boolean }): boolean =>
    brix >= SYRUP_BRIX && !unfinished;
  // Of pans that no probe watched, their being drawn off is all that tells it.
  const byHand = boilingSeconds === null && takenUntold.length > 0;
  const called = outcomes.includes('finished') || (density !== null && isThick(density));
  const some = byHand || called || [...taken, ...left].some(isThick);
  return some && left.every(isThick) && leftUntold.length === 0;
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
