// Several probes in one pan: what they show together, and which one is at odds with the others.
import { median } from '../pan/robust-statistics.ts';
import { type Recent, recentSince } from './recent.ts';

export interface Compared {
  /** Their mean, without the odd one, °C. */
  meanC: number;
  /** Between the highest and the lowest, °C. */
  apartC: number;
  /** The probe that is at odds with the others, or lies where no liquid of this pan can; null where nobody can tell. */
  odd: string | null;
}

export interface Tip {
  probe: string;
  recent: Recent;
  /** What is added to make it true, °C. */
  correctionC: number;
  /** Why it cannot be right already; null for no doubt. */
  doubted: boolean;
}

const LOOKED_AT_MS = 30_000;
const ENOUGH_NUMBERS = 5;
/** Two tips in one boiling pan differ by less than this once both are right, °C (depth and classes; common practice). */
export const APART_C = 1;

/** Compares them at t (ms); `leastC`: colder than this no tip in the liquid can be now, °C. Null below two that are heard. */
export function compareTips(tips: readonly Tip[], leastC: number | null, t: number): Compared | null {
  const seen = tips.flatMap(({ probe, recent, correctionC, doubted }) => {
    const { values } = recentSince(recent, t - LOOKED_AT_MS);
    return values.length < ENOUGH_NUMBERS ? [] : [{ probe, doubted, celsius: median(values) + correctionC }];
  });
  if (seen.length < 2) return null;
  const all = seen.map(({ celsius }) => celsius);
  const apartC = Math.max(...all) - Math.min(...all);
  const odd = apartC < APART_C ? null : oddOf(seen, leastC);
  const rest = seen.filter(({ probe }) => probe !== odd).map(({ celsius }) => celsius);
  return { meanC: rest.reduce((sum, one) => sum + one, 0) / rest.length, apartC, odd };
}

function oddOf(
  seen: readonly { probe: string; doubted: boolean; celsius: number }[],
  leastC: number | null,
): string | null {
  const doubted = seen.filter((one) => one.doubted);
  if (doubted.length === 1) return doubted[0]!.probe;
  const tooCold = leastC === null ? [] : seen.filter(({ celsius }) => celsius < leastC);
  if (tooCold.length === 1) return tooCold[0]!.probe;
  // Of two that both may be right nobody can tell; of three the one far from the middle.
  if (seen.length < 3) return null;
  const middle = median(seen.map(({ celsius }) => celsius));
  const far = seen.filter(({ celsius }) => Math.abs(celsius - middle) >= APART_C);
  return far.length === 1 ? far[0]!.probe : null;
}
