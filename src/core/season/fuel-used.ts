// How much fuel a boil took, how much heat was in it, and what it cost.
import { PROPANE_NET_MJ_PER_KG, woodNetMjPerKg } from '../physics/fuel.ts';
import { known, type Known, sumOf } from './known.ts';
import type { BoilFacts } from './boil-facts.ts';
import type { BoilPage, FuelUsed } from './records.ts';

/** Seasoned wood holds a fifth of water; a cord of it gives 15.3 million Btu (extension services, read), MJ. */
const SEASONED_MOISTURE = 0.2;
const CORD_MJ = (15.3e6 * 1055.05585262) / 1e6;
const KWH_MJ = 3.6;

/** A cylinder on a scale is weighed to about this, kg; wood in kg, cords and a meter to these shares (judgement). */
const SCALE_KG = 0.2;
const WOOD_SHARE = 0.15;
const METER_SHARE = 0.02;

export interface FuelTaken {
  kg: Known | null;
  kwh: Known | null;
  cords: Known | null;
  mj: Known | null;
  /** All of it was weighed in kg. */
  isAllKg: boolean;
  price: Known | null;
}

interface Part {
  unit: 'kg' | 'kwh' | 'cords';
  amount: Known;
  /** MJ in one unit; null where nobody can say. */
  mjEach: number | null;
}

/** The page's word, else what the weighings of the boil show. What is not known of one fuel is not known of all. */
export function fuelUsed(facts: BoilFacts, { fuel = [] }: BoilPage): FuelTaken {
  const { burnedKg } = facts.cylinder;
  const noted: Part[] =
    burnedKg === null ? [] : [{ unit: 'kg', amount: weighed(burnedKg, 'marks'), mjEach: PROPANE_NET_MJ_PER_KG }];
  const parts = fuel.length === 0 ? noted : fuel.map((one) => partOf(one));
  const prices = fuel.map(({ price }) => price);
  const all = parts.filter((part) => part !== null);
  const isKnown = all.length > 0 && all.length === parts.length;
  const of = (unit: Part['unit']): Known | null => {
    const ofUnit = all.filter((part) => part.unit === unit).map(({ amount }) => amount);
    return isKnown && ofUnit.length > 0 ? sumOf(ofUnit, ofUnit[0]!.from) : null;
  };
  return {
    kg: of('kg'),
    kwh: of('kwh'),
    cords: of('cords'),
    mj: isKnown ? heatOf(all) : null,
    isAllKg: isKnown && all.every(({ unit }) => unit === 'kg'),
    price: prices.length === 0 || prices.includes(undefined) ? null : sumPrices(prices as number[]),
  };
}

const sumPrices = (prices: readonly number[]): Known =>
  sumOf(
    prices.map((value) => ({ value, sigma: 0 })),
    'page',
  );

const weighed = (kg: number, from: 'page' | 'marks'): Known => known(kg, SCALE_KG * Math.SQRT2, from);

function partOf({ kind, kg, before_kg: before, after_kg: after, cords, kwh }: FuelUsed): Part | null {
  const wood = woodNetMjPerKg(SEASONED_MOISTURE);
  const mjEach = kind === 'propane' ? PROPANE_NET_MJ_PER_KG : kind === 'wood' ? wood : null;
  if (kind !== 'wood' && before !== undefined && after !== undefined && after <= before)
    return { unit: 'kg', amount: weighed(before - after, 'page'), mjEach };
  if (kg !== undefined) {
    const sigma = kind === 'wood' ? WOOD_SHARE * kg : SCALE_KG;
    return { unit: 'kg', amount: known(kg, sigma, 'page'), mjEach };
  }
  if (cords !== undefined) return { unit: 'cords', amount: known(cords, WOOD_SHARE * cords, 'page'), mjEach: CORD_MJ };
  if (kwh !== undefined) return { unit: 'kwh', amount: known(kwh, METER_SHARE * kwh, 'page'), mjEach: KWH_MJ };
  return null;
}

function heatOf(parts: readonly Part[]): Known | null {
  if (parts.some(({ mjEach }) => mjEach === null)) return null;
  const heats = parts.map(({ amount, mjEach }) => ({ value: amount.value * mjEach!, sigma: amount.sigma * mjEach! }));
  return sumOf(heats, 'worked-out');
}
