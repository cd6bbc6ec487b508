// Pours and draw-offs: sugar and water that come and go, with what is not known of them.
import {
  addError,
  type Belief,
  blank,
  combine,
  setAlone,
  SIZE,
  SUGAR,
  TYPED,
  variance,
  WATER,
  waterOf,
} from './belief.ts';
import { waterPerSugar } from './liquid.ts';

/** Something that was poured: its mass and strength, and how well each is known, as shares. */
export interface Poured {
  massKg: number;
  brix: number;
  massShare: number;
  /** Error of this one strength alone, and the error that all strengths of this boil share. */
  brixShare: number;
  brixSharedShare: number;
}

/** Sugar of strength 0 would be no number in a logarithm: as much as rain on the sap. */
const LEAST_BRIX = 0.02;

/** The pan was empty: it holds what was poured and nothing else. */
export function fillAnew(belief: Belief, poured: Poured): void {
  const brix = Math.max(LEAST_BRIX, poured.brix);
  setAlone(belief, SUGAR, Math.log((poured.massKg * brix) / 100), 0);
  setAlone(belief, WATER, Math.log(waterPerSugar(brix)), 0);
  const u = waterPerSugar(brix);
  spoil(belief, poured, 1, (1 + u) / u);
}

/** Poured to what is there; conserves sugar and water. */
export function pourIn(belief: Belief, poured: Poured): void {
  const { x } = belief;
  const brix = Math.max(LEAST_BRIX, poured.brix);
  const there = Math.exp(x[SUGAR]!);
  const sugar = (poured.massKg * brix) / 100;
  const stays = there / (there + sugar);
  const had = waterOf(belief);
  const u = stays * had + (1 - stays) * waterPerSugar(brix);
  const water = blank();
  water[SUGAR] = (stays * (had - u)) / u;
  water[WATER] = (stays * had) / u;
  combine(belief, WATER, water);
  // The mixed water hangs on the sugar that was there, so the two rows are changed one after the other, water first.
  const amount = blank();
  amount[SUGAR] = stays;
  combine(belief, SUGAR, amount);
  x[SUGAR] = Math.log(there + sugar);
  x[WATER] = Math.log(u);
  spoil(belief, poured, 1 - stays, (1 + u) / u, ((1 - stays) * (waterPerSugar(brix) - u)) / u);
}

/**
 * Adds what is not known of a pour. `share` is its part of all sugar; `perBrix` is by which share the water per sugar falls when its
 * strength is more by one part (all of it at the same mass); `perMass` how much it grows with its mass.
 */
function spoil(belief: Belief, poured: Poured, share: number, perBrix: number, perMass = 0): void {
  const byMass = blank();
  byMass[SUGAR] = share * poured.massShare;
  byMass[WATER] = perMass * poured.massShare;
  addError(belief, byMass);
  const byBrix = blank();
  byBrix[SUGAR] = share * poured.brixShare;
  byBrix[WATER] = -share * perBrix * poured.brixShare;
  addError(belief, byBrix);
  if (poured.brixSharedShare > 0)
    hangOnTyped(belief, share * poured.brixSharedShare, -share * perBrix * poured.brixSharedShare);
}

/** The part of a strength's error that the whole boil shares hangs on TYPED. */
function hangOnTyped(belief: Belief, onSugar: number, onWater: number): void {
  const { x } = belief;
  for (const [place, by] of [
    [SUGAR, onSugar],
    [WATER, onWater],
  ] as const) {
    const weights = blank();
    weights[place] = 1;
    weights[TYPED] = by;
    x[place] = x[place]! + by * x[TYPED]!;
    combine(belief, place, weights);
  }
}

/** Litres that would be all of a pan, as it was counted, leave something in it: nobody said that it was emptied. */
export const MOST_TAKEN = 0.97;

/** So many kg are taken out as they are, known to a share; strength stays. Gives what was really taken, kg. */
export function takeOut(belief: Belief, massKg: number, massShare: number): number {
  const { x } = belief;
  const u = waterOf(belief);
  const whole = Math.exp(x[SUGAR]!) * (1 + u);
  const part = Math.min(MOST_TAKEN, massKg / whole);
  const more = part / (1 - part);
  const weights = blank();
  weights[SUGAR] = 1 + more;
  weights[WATER] = (more * u) / (1 + u);
  combine(belief, SUGAR, weights);
  x[SUGAR] = x[SUGAR]! + Math.log(1 - part);
  const error = blank();
  error[SUGAR] = more * massShare;
  addError(belief, error);
  return part * whole;
}

/** Contents known worse than this are better called not known, share. */
export const USEFUL_SHARE = 0.35;

/** Share to which the whole mass is known. */
export function massShareOf(belief: Belief): number {
  const u = waterOf(belief);
  const part = u / (1 + u);
  const { p } = belief;
  const [sugar, both, water] = [variance(belief, SUGAR), p[SUGAR * SIZE + WATER]!, variance(belief, WATER)];
  return Math.sqrt(Math.max(0, sugar + part * both + (both + part * water) * part));
}
