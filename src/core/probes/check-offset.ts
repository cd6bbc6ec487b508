// How much a probe shows too much, from what it showed in boiling water and in ice water.

/** What a probe showed where it is known how warm it was; sigmas are 1 σ, all in °C. */
export interface Seen {
  shownC: number;
  sigmaC: number;
  trueC: number;
  trueSigmaC: number;
}

export interface ProbeError {
  /** How much its bare number is too high near the boil, °C. */
  tooHighC: number;
  sigmaC: number;
}

/**
 * An error at 0 °C is not the error at 100 °C: the class of a platinum probe allows 0.3 °C at 0 °C and 0.8 °C at 100 °C
 * (IEC 60751 class B, 0.3 + 0.005 |t|, from memory), so between them it may differ by this (1 σ, judgement).
 */
const ICE_TO_BOIL_SIGMA_C = 0.3;
/** Crushed ice in water that is stirred stands this near to 0 °C (1 σ; common practice). */
export const ICE_SIGMA_C = 0.1;

/** A check less sure than this tells no more than is known of a probe that nobody checked, °C (1 σ; see boil/water.ts). */
const MOST_SIGMA_C = 0.6;

/** Whether a check is sure enough to tell anything of its probe; one whose uncertainty is no number is not. */
export const isSure = (seen: Pick<Seen, 'sigmaC' | 'trueSigmaC'>): boolean =>
  Math.hypot(seen.sigmaC, seen.trueSigmaC) <= MOST_SIGMA_C;

/** Both where both were seen and are sure enough, each by how sure it is; null where none is. */
export function errorFrom(boiling: Seen | null, ice: Seen | null): ProbeError | null {
  const seen = [
    ...(boiling === null || !isSure(boiling) ? [] : [{ ...errorOf(boiling), more: 0 }]),
    ...(ice === null || !isSure(ice) ? [] : [{ ...errorOf(ice), more: ICE_TO_BOIL_SIGMA_C }]),
  ];
  if (seen.length === 0) return null;
  let weight = 0;
  let sum = 0;
  for (const { tooHighC, sigmaC, more } of seen) {
    const one = 1 / Math.max(1e-6, sigmaC ** 2 + more ** 2);
    weight += one;
    sum += one * tooHighC;
  }
  return { tooHighC: sum / weight, sigmaC: Math.sqrt(1 / weight) };
}

const errorOf = ({ shownC, sigmaC, trueC, trueSigmaC }: Seen): ProbeError => ({
  tooHighC: shownC - trueC,
  sigmaC: Math.hypot(sigmaC, trueSigmaC),
});
