// How many standard deviations wide a range is: the middle 80 % that is shown, or up to any probability.

/** Standard deviations either side of the mean that hold the middle 80 % of a normal distribution. */
export const Z80 = 1.2816;

/**
 * The number of standard deviations that a normal value stays under with a probability (0 to 1, both excluded).
 * Abramowitz & Stegun 26.2.23, its six constants from memory; the test holds it to the distribution: within 0.00045.
 */
export function normalQuantile(probability: number): number {
  const tail = Math.min(probability, 1 - probability);
  const t = Math.sqrt(-2 * Math.log(tail));
  const above = 2.515517 + t * (0.802853 + t * 0.010328);
  const below = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
  return Math.sign(probability - 0.5) * (t - above / below);
}
