// How much sap went into a boil, how strong it was, and how much sugar that is: from the page, the marks or the store.
import { massOfLitres } from '../pan/filter/liquid.ts';
import { type SapKindKey, sapKinds } from '../physics/sap-kinds.ts';
import type { BoilFacts, PourCounted } from './boil-facts.ts';
import { follows, known, type Known, sumOf } from './known.ts';
import type { BoilPage, Collection } from './records.ts';

/** A sum of pails is known to about this share (judgement). */
const TOTAL_SHARE = 0.05;
/**
 * Strengths of sap as they are typed: each reading's own share, and the share in which all readings of one instrument are
 * wrong together; and what is usual for a kind of sap (trade: maple 1 to 5 °Bx, about 2). The pan model takes the same.
 */
const OWN_SHARE = 0.04;
const SHARED_SHARE = 0.06;
const USUAL_SHARE = 0.4;

export interface SapIn {
  litres: Known | null;
  brix: Known | null;
  sugarKg: Known | null;
}

/** `collections` are those that were given to this boil. */
export function sapIn(facts: BoilFacts, page: BoilPage, collections: readonly Collection[]): SapIn {
  const brix = saidBrix(page) ?? storeBrix(collections);
  const usual = fromPlan(facts) ?? usualBrix(facts.saps);
  const told = page.sap?.litres;
  if (told !== undefined) {
    const pours = facts.pours.length === 0 ? null : fromPours(facts.pours, brix, usual).brix;
    return whole(known(told, TOTAL_SHARE * told, 'page'), saidBrix(page) ?? fromMarks(pours) ?? brix ?? usual);
  }
  if (facts.pours.length > 0 && facts.unnoted.length === 0) {
    const said = saidBrix(page);
    const pours = fromPours(facts.pours, brix, usual);
    return said === null ? pours : whole(pours.litres, said);
  }
  if (collections.length === 0) return { litres: null, brix, sugarKg: null };
  const parts = collections.map(({ litres }) => ({ value: litres, sigma: TOTAL_SHARE * litres }));
  return whole(sumOf(parts, 'store'), brix ?? usual);
}

/** A strength that the pours themselves tell, not what was put in where they tell none. */
const fromMarks = (brix: Known | null): Known | null => (brix?.from === 'marks' ? brix : null);

const typedSigma = (brix: number): number => Math.hypot(OWN_SHARE, SHARED_SHARE) * brix;

function saidBrix({ sap }: BoilPage): Known | null {
  return sap?.brix === undefined ? null : known(sap.brix, typedSigma(sap.brix), 'page');
}

/** By their litres, where every one of them was measured. */
function storeBrix(collections: readonly Collection[]): Known | null {
  const litres = collections.reduce((sum, one) => sum + one.litres, 0);
  if (litres === 0 || collections.some(({ brix }) => brix === undefined)) return null;
  const brix = collections.reduce((sum, one) => sum + one.litres * (one.brix ?? 0), 0) / litres;
  return known(brix, typedSigma(brix), 'store');
}

/** As the pan model takes it, too, where nobody typed another. */
const fromPlan = ({ plannedBrix: brix }: BoilFacts): Known | null =>
  brix === null ? null : known(brix, typedSigma(brix), 'plan');

/** Of one kind of sap; of several nobody can say. */
function usualBrix(saps: readonly SapKindKey[]): Known | null {
  const brix = saps.length === 1 ? sapKinds.find(({ key }) => key === saps[0])?.typicalBrix : undefined;
  return brix === undefined || brix === null ? null : known(brix, USUAL_SHARE * brix, 'usual');
}

const sugarOf = (litres: number, brix: number): number => (massOfLitres(litres, brix) * brix) / 100;

function whole(litres: Known | null, brix: Known | null): SapIn {
  return { litres, brix, sugarKg: follows([litres, brix], (a, b) => sugarOf(a!, b!)) };
}

/** `otherwise` is the strength of sap that nobody typed one for, `usual` what stands where there is none either: the plan's, or what is usual. */
function fromPours(pours: readonly PourCounted[], otherwise: Known | null, usual: Known | null): SapIn {
  const litres = sumOf(
    pours.map(({ litres: value, sigma }) => ({ value, sigma })),
    pours.some(({ from }) => from === 'seen') ? 'marks-and-seen' : 'marks',
  );
  const typed = pours.filter(({ brix }) => brix !== null);
  // A strength is carried on from pour to pour, so that either all have one or none has.
  if (typed.length === 0) return whole(litres, otherwise ?? usual);
  const sugars = typed.map(({ litres: amount, sigma, brix }) => {
    const value = sugarOf(amount, brix!);
    return { value, sigma: value * Math.hypot(sigma / amount, OWN_SHARE) };
  });
  const own = sumOf(sugars, 'worked-out');
  const sugarKg = { ...own, sigma: Math.hypot(own.sigma, SHARED_SHARE * own.value) };
  const mass = typed.reduce((sum, { litres: amount, brix }) => sum + massOfLitres(amount, brix!), 0);
  const brix = (100 * sugarKg.value) / mass;
  return { litres, brix: brix > 0 ? known(brix, typedSigma(brix), 'marks') : null, sugarKg };
}

/** Water in so many litres of a strength, kg. */
export const waterKgOf = (litres: number, brix: number): number => massOfLitres(litres, brix) * (1 - brix / 100);
