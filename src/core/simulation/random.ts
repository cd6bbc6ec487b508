// A seeded generator of random numbers whose state is one number, so that a simulation can be copied and made again.

/** One stream of random numbers; `word` is a 32-bit whole number. */
export interface RandomStream {
  word: number;
}

/** A stream of its own for each name, so that one more draw in one stream leaves the others as they were. */
export function randomStream(seed: number, name: string): RandomStream {
  let word = seed >>> 0;
  for (const letter of name) word = Math.imul(word ^ (letter.codePointAt(0) ?? 0), 0x01000193) >>> 0;
  return { word };
}

/** Evenly spread over 0 <= x < 1 (mulberry32; moves the stream on by one). */
export function nextUniform(stream: RandomStream): number {
  stream.word = (stream.word + 0x6d2b79f5) >>> 0;
  let mixed = Math.imul(stream.word ^ (stream.word >>> 15), 1 | stream.word);
  mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
  return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
}

/** Normally spread with mean 0 and standard deviation 1 (Box and Muller; moves the stream on by two). */
export function nextNormal(stream: RandomStream): number {
  const radius = Math.sqrt(-2 * Math.log(1 - nextUniform(stream)));
  return radius * Math.cos(2 * Math.PI * nextUniform(stream));
}

/**
 * The next value of noise that forgets itself over `memorySeconds` (an Ornstein-Uhlenbeck step),
 * with mean 0 and standard deviation `spread` in the long run.
 */
export function driftingNoise(
  before: number,
  step: { seconds: number; memorySeconds: number; spread: number },
  stream: RandomStream,
): number {
  const kept = Math.exp(-step.seconds / step.memorySeconds);
  return before * kept + step.spread * Math.sqrt(1 - kept * kept) * nextNormal(stream);
}
