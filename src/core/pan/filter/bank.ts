// Several beliefs of one pan side by side, one for each kind of fire, weighed by how well each foretells what comes.
import type { Heat } from '../../boil/entries.ts';
import { type Belief, copyBelief, SIZE } from './belief.ts';
import type { FireKind } from './predict.ts';
import type { Fit } from './see.ts';

/** A calm flame, one in the wind, and a wood fire that is fed every ten minutes (swings by a third, trade and practice). */
export const FIRE_KINDS: readonly FireKind[] = [
  { swing: 0.03, lastsS: 300 },
  { swing: 0.08, lastsS: 240 },
  { swing: 0.24, lastsS: 400 },
];

export interface Bank {
  beliefs: Belief[];
  /** Logarithms of the weights, the greatest 0. */
  logWeights: number[];
  /** What is thought of such a fire before it was seen, and again once that is long ago. */
  usual: readonly number[];
}

/** What is thought of a fire before it was seen to burn. */
const USUAL: Record<Heat['kind'], readonly number[]> = {
  electric: [0.85, 0.1, 0.05],
  propane: [0.6, 0.34, 0.06],
  wood: [0.05, 0.35, 0.6],
  other: [0.3, 0.4, 0.3],
};

export function startBank(kind: Heat['kind'], start: (fire: FireKind) => Belief): Bank {
  const usual = USUAL[kind].map((one) => Math.log(one));
  return { beliefs: FIRE_KINDS.map(start), logWeights: [...usual], usual };
}

/** Neighbouring blocks share their errors, so what each says of the fire counts as so much of a block. */
const COUNTS = 0.25;
/** What was seen of a fire is forgotten over so many blocks: an hour. */
const FORGOTTEN_OVER = 720;
/** A belief this unlikely has lost the pan: it starts again from the likeliest one. */
const LOST = Math.log(0.01);

/** Weighs the beliefs by how each foretold what was just seen. */
export function weigh(bank: Bank, fits: readonly Fit[]): void {
  const { logWeights, usual } = bank;
  let most = -Infinity;
  for (let i = 0; i < logWeights.length; i++) {
    logWeights[i] = logWeights[i]! + (usual[i]! - logWeights[i]!) / FORGOTTEN_OVER + COUNTS * fits[i]!.logLikelihood;
    most = Math.max(most, logWeights[i]!);
  }
  const best = bank.beliefs[logWeights.indexOf(most)]!;
  for (let i = 0; i < logWeights.length; i++) {
    logWeights[i] = logWeights[i]! - most;
    if (logWeights[i]! > LOST) continue;
    logWeights[i] = LOST;
    bank.beliefs[i] = copyBelief(best);
  }
}

/** Weights that sum to 1. */
export function weightsOf({ logWeights }: Bank): number[] {
  const raw = logWeights.map(Math.exp);
  const sum = raw.reduce((one, other) => one + other, 0);
  return raw.map((one) => one / sum);
}

/** One normal distribution with the mean and covariance of all. */
export function together(bank: Bank): Belief {
  const weights = weightsOf(bank);
  const x = new Array<number>(SIZE).fill(0);
  const p = new Array<number>(SIZE * SIZE).fill(0);
  bank.beliefs.forEach((one, k) => {
    for (let i = 0; i < SIZE; i++) x[i] = x[i]! + weights[k]! * one.x[i]!;
  });
  bank.beliefs.forEach((one, k) => {
    const w = weights[k]!;
    for (let i = 0; i < SIZE; i++) {
      const di = one.x[i]! - x[i]!;
      for (let j = 0; j < SIZE; j++) {
        p[i * SIZE + j] = p[i * SIZE + j]! + w * (one.p[i * SIZE + j]! + di * (one.x[j]! - x[j]!));
      }
    }
  });
  return { x, p };
}

export const copyBank = ({ beliefs, logWeights, usual }: Bank): Bank => ({
  usual,
  beliefs: beliefs.map(copyBelief),
  logWeights: [...logWeights],
});
