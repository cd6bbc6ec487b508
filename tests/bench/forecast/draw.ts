// What a kind of boil draws from its seed: numbers between two ends, one of several, yes or no.
import { nextUniform, randomStream, type RandomStream } from '../../../src/core/simulation/random.ts';

export interface Draw {
  between(least: number, most: number): number;
  /** Spread evenly over the logarithm, for what ranges over more than a factor of three. */
  acrossScales(least: number, most: number): number;
  whole(least: number, most: number): number;
  oneOf<T>(choices: readonly T[]): T;
  chance(share: number): boolean;
}

/** The same draws for the same seed and kind. */
export function drawFor(seed: number, kind: string): Draw {
  const stream: RandomStream = randomStream(seed, `kind ${kind}`);
  const between = (least: number, most: number): number => least + (most - least) * nextUniform(stream);
  // The first numbers of streams whose seeds differ by one are alike.
  for (let skipped = 0; skipped < 5; skipped += 1) nextUniform(stream);
  return {
    between,
    acrossScales: (least, most) => Math.exp(between(Math.log(least), Math.log(most))),
    whole: (least, most) => Math.floor(between(least, most + 1)),
    oneOf: (choices) => choices[Math.floor(between(0, choices.length))]!,
    chance: (share) => nextUniform(stream) < share,
  };
}
