// How much syrup a boil gave and how strong it was: weighed, measured, counted in jars, drawn off, or as the pans show.
import { massOfLitres } from '../pan/filter/liquid.ts';
import { densityKgPerM3 } from '../physics/density.ts';
import { type Batch, type BoilFacts, isSyrup, SYRUP_BRIX } from './boil-facts.ts';
import { follows, known, type Known, sumOf } from './known.ts';
import type { BoilPage } from './records.ts';

/** A kitchen scale with a vessel taken off; a measuring jug; a jar filled to its mark (judgement, as shares). */
const WEIGHED_SHARE = 0.01;
export const MEASURED_SHARE = 0.03;
const JARS_SHARE = 0.02;
/** A strength that was typed for the page, and one that was only aimed at, °Bx (judgement). */
const TYPED_BRIX = 0.5;
export const AIMED_BRIX = 1.5;

export interface SyrupOut {
  litres: Known | null;
  kg: Known | null;
  brix: Known | null;
  sugarKg: Known | null;
}

const NOTHING: SyrupOut = { litres: null, kg: null, brix: null, sugarKg: null };

/**
 * How much syrup came out, litres at 20 °C, kg, °Bx and kg of sugar: by the page where it says, else by what left the
 * pans. null is not known.
 */
export function syrupOut(facts: BoilFacts, page: BoilPage): SyrupOut {
  const batches = [...facts.taken, ...facts.left].filter(isSyrup);
  const brix = brixOf(facts, page, batches);
  const amount = amountSaid(page);
  if (amount === null) return fromBatches(facts, batches, brix, page.syrup?.brix === undefined ? null : brix);
  if (amount.unit === 'kg') return byKg(amount.known, brix);
  return byLitres(amount.known, brix);
}

function amountSaid({ syrup, jars }: BoilPage): { unit: 'kg' | 'L'; known: Known } | null {
  if (syrup?.kg !== undefined) return { unit: 'kg', known: known(syrup.kg, WEIGHED_SHARE * syrup.kg, 'page') };
  if (syrup?.litres !== undefined)
    return { unit: 'L', known: known(syrup.litres, MEASURED_SHARE * syrup.litres, 'page') };
  if (jars === undefined || jars.length === 0) return null;
  const litres = jars.reduce((sum, { litres: each, count }) => sum + each * count, 0);
  return { unit: 'L', known: known(litres, JARS_SHARE * litres, 'jars') };
}

function brixOf(facts: BoilFacts, { syrup }: BoilPage, batches: readonly Batch[]): Known | null {
  if (syrup?.brix !== undefined) return known(syrup.brix, TYPED_BRIX, 'page');
  if (facts.density !== null && facts.density.before !== true && facts.density.brix >= SYRUP_BRIX)
    return known(facts.density.brix, facts.density.sigma, 'marks');
  const measured = batches.filter((batch) => batch.measured);
  if (measured.length > 0) return meanBrix(measured, 'marks');
  if (batches.length > 0) return meanBrix(batches, 'pans');
  return facts.finishBrix === null ? null : known(facts.finishBrix, AIMED_BRIX, 'usual');
}

function meanBrix(batches: readonly Batch[], from: 'marks' | 'pans'): Known {
  const masses = batches.map(({ litres, brix }) => massOfLitres(litres, brix));
  const mass = masses.reduce((sum, one) => sum + one, 0);
  const part = (index: number): number => masses[index]! / mass;
  const brix = batches.reduce((sum, one, index) => sum + one.brix * part(index), 0);
  return known(brix, Math.hypot(...batches.map(({ brixSigma }, index) => brixSigma * part(index))), from);
}

function byKg(kg: Known, brix: Known | null): SyrupOut {
  const litres = follows([kg, brix], (mass, strength) => litresOfMass(mass!, strength!));
  return { litres, kg, brix, sugarKg: sugarIn(kg, brix) };
}

function byLitres(litres: Known, brix: Known | null): SyrupOut {
  const kg = follows([litres, brix], (volume, strength) => massOfLitres(volume!, strength!));
  const sugarKg = follows([litres, brix], (volume, strength) => (massOfLitres(volume!, strength!) * strength!) / 100);
  return { litres, kg, brix, sugarKg };
}

const sugarIn = (kg: Known, brix: Known | null): Known | null =>
  follows([kg, brix], (mass, strength) => (mass! * strength!) / 100);

function litresOfMass(kg: number, brix: number): number | null {
  const density = densityKgPerM3(brix, 20);
  return density === null ? null : (1000 * kg) / density;
}

/** A strength that was typed for the page stands for all of them. Where a part of it is not known, all of it is not. */
function fromBatches(facts: BoilFacts, batches: readonly Batch[], likely: Known | null, said: Known | null): SyrupOut {
  const burnt = [...facts.taken, ...facts.left].filter((batch) => batch.burnt);
  // What burnt was thrown away: where nothing else came out, there is no syrup, and that is known.
  const isAllBurnt = batches.length === 0 && burnt.length > 0;
  if ((batches.length === 0 && !isAllBurnt) || facts.takenUntold.length > 0 || facts.leftUntold.length > 0)
    return { ...NOTHING, brix: likely };
  if (isAllBurnt) return { ...NOTHING, litres: known(0, 0, 'pans'), kg: known(0, 0, 'pans') };
  const from = batches.every(({ measured }) => measured) ? 'marks' : 'pans';
  const each = batches.map(({ litres, litresSigma, brix, brixSigma }) =>
    byLitres(known(litres, litresSigma, from), said ?? known(brix, brixSigma, from)),
  );
  const sum = (pick: (one: SyrupOut) => Known | null): Known =>
    sumOf(
      each.map(pick).filter((one) => one !== null),
      from,
    );
  return {
    litres: sum(({ litres }) => litres),
    kg: sum(({ kg }) => kg),
    brix: said ?? meanBrix(batches, from),
    sugarKg: sum(({ sugarKg }) => sugarKg),
  };
}

/** What stayed too thin for syrup, with its sugar and water. */
export interface Thin {
  batches: Batch[];
  sugarKg: Known;
  waterKg: Known;
}

/**
 * Liquid that was taken out too thin for syrup or is left in the pans unfinished, with its sugar and water; null where nobody can say
 * what is left. What was taken out and nobody can say how thick is the syrup.
 */
export function leftThin({ taken, left, leftUntold }: Pick<BoilFacts, 'taken' | 'left' | 'leftUntold'>): Thin | null {
  if (leftUntold.length > 0) return null;
  return thinOf([...taken, ...left].filter((batch) => !batch.burnt && !isSyrup(batch)));
}

/** The same of these batches alone. */
export function thinOf(thin: readonly Batch[]): Thin {
  const share = ({ litres, litresSigma }: Batch): number => litresSigma / litres;
  const sugars = thin.map((batch) => {
    const value = (massOfLitres(batch.litres, batch.brix) * batch.brix) / 100;
    return { value, sigma: value * Math.hypot(share(batch), batch.brixSigma / batch.brix) };
  });
  const waters = thin.map((batch) => {
    const value = massOfLitres(batch.litres, batch.brix) * (1 - batch.brix / 100);
    return { value, sigma: value * share(batch) };
  });
  return { batches: [...thin], sugarKg: sumOf(sugars, 'pans'), waterKg: sumOf(waters, 'pans') };
}
