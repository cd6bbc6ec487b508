// How much a pan's rise wanders with bubbles, superheat and stirring, learnt from the pan itself.

/** What its blocks showed: second differences over 5 s and over a minute, in which a steady climb leaves nothing. */
export interface Wander {
  /** Rises of the last two minutes, oldest first. */
  rises: number[];
  /** Means of the squares of the differences, °C². */
  short: number;
  long: number;
  /** How many differences over a minute were seen. */
  seen: number;
}

/** Before anything was seen, °C (practice: bubbles and stirring; superheat goes to 0.3 °C). */
const USUAL_C = 0.04;
const LEAST_C = 0.03;
const MOST_C = 0.2;
/** Blocks in a minute. */
const MINUTE = 12;
/** The means are over 15 minutes. */
const OVER = 180;
/** What is usual weighs as a minute and a half. */
const USUAL_WEIGHS = 18;
/** A larger difference is a splash or a pour, °C. */
const MOST_DIFFERENCE_C = 0.8;
/**
 * White noise is six times its variance in both differences; what wanders with a memory of 150 s (an Ornstein–Uhlenbeck
 * process) is 6 − 8 e^(−a) + 2 e^(−2a) of its own, a the lag over the memory: 1.54 over a minute, 0.13 over 5 s.
 */
const WANDER_LEAVES = 1.54 - 0.13;
/** The steps of a probe hide in the short difference and stand in the long one: six times a step's variance, step²/12. */
const STEP_LEAVES = 0.5;

/** Before its rise has shown anything. */
export const startWander = (): Wander => ({ rises: [], short: 0, long: 0, seen: 0 });

/** One that changes by itself from now on. */
export const copyWander = (wander: Wander): Wander => ({ ...wander, rises: [...wander.rises] });

/** A block of a steady boil, °C. */
export function noteWander(wander: Wander, riseC: number): void {
  const { rises } = wander;
  rises.push(riseC);
  if (rises.length <= 2 * MINUTE) return;
  if (rises.length > 2 * MINUTE + 1) rises.shift();
  const last = rises.length - 1;
  const share = 1 / Math.min(OVER, wander.seen + 1);
  wander.short += (squareOf(rises, last, 1) - wander.short) * share;
  wander.long += (squareOf(rises, last, MINUTE) - wander.long) * share;
  wander.seen += 1;
}

/** The boil was disturbed: what came before is no part of the same climb. */
export const breakWander = (wander: Wander): void => void (wander.rises = []);

/** Standard deviation of what wanders, °C; `stepC` is the probe's step where its noise does not smooth it, else 0. */
export function wanderOf({ short, long, seen }: Wander, stepC: number): number {
  const shown = Math.max(0, long - short - STEP_LEAVES * stepC * stepC) / WANDER_LEAVES;
  const weight = Math.min(seen, OVER);
  const variance = (USUAL_C ** 2 * USUAL_WEIGHS + shown * weight) / (USUAL_WEIGHS + weight);
  return Math.min(MOST_C, Math.max(LEAST_C, Math.sqrt(variance)));
}

function squareOf(rises: readonly number[], last: number, lag: number): number {
  const difference = rises[last]! - 2 * rises[last - lag]! + rises[last - 2 * lag]!;
  return Math.min(MOST_DIFFERENCE_C, Math.abs(difference)) ** 2;
}
