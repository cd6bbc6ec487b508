// A count that ran dry, or nearly so, in a pan that somebody then measures: its sugar is there, and how much water is left is seen anew.
import { addVariance, type Belief, setAlone, SUGAR, variance, WATER, waterOf } from './filter/belief.ts';
import { brixOfWaterPerSugar, litresOf, massOfLitres } from './filter/liquid.ts';

/**
 * Water known worse than this, standard deviation of its logarithm, and so far under what was measured, in the same
 * logarithm, was counted to nothing: a step back from there along its slopes would end anywhere, hundreds of litres.
 */
const LOST_SIGMA = 1;
const LOST_FAR = 1;
/** Water is then as open as in a pan of which nobody spoke (see filter/start.ts). */
const OPEN_SHARE = 0.7;
/** Either less boiled away or something was poured in that nobody noted: the sugar is open by this share (judgement). */
const SUGAR_OPENS = 0.3;
/** Less water than this is left in no pan that somebody still measures, kg/kg: 80 °Bx. */
const LEAST_U = 0.25;

/**
 * Call before a measurement that shows so much water per sugar, kg/kg. Where the count had run dry, the water is then about
 * as shown, tied to nothing, and the sugar that was noted stays, for boiling takes none of it.
 */
export function endDryCount(belief: Belief, u: number): void {
  const isDry = Math.sqrt(variance(belief, WATER)) > LOST_SIGMA && Math.log(u / waterOf(belief)) > LOST_FAR;
  if (!isDry) return;
  setAlone(belief, WATER, Math.log(u), OPEN_SHARE ** 2);
  addVariance(belief, SUGAR, SUGAR, SUGAR_OPENS ** 2);
}

/** The water per sugar at which the sugar that is believed fills so many litres (at 20 °C); null where it is too much sugar for them. */
export function waterFilling({ x }: Belief, litres: number): number | null {
  const sugar = Math.exp(x[SUGAR]!);
  if (litresOf(sugar, LEAST_U) >= litres) return null;
  let u = LEAST_U;
  // The density hardly hangs on the strength: a few rounds are far nearer than any stick.
  for (let round = 0; round < ROUNDS; round++)
    u = Math.max(LEAST_U, massOfLitres(litres, brixOfWaterPerSugar(u)) / sugar - 1);
  return u;
}

const ROUNDS = 6;
