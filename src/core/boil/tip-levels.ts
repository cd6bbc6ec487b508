// Several tips in one pan: the one level that all of them are taken to, and the tip that the pan's rise rests on.
import { probeName, WATER } from '../pan/baseline.ts';
import { sigmaOf } from '../pan/joint-normal.ts';
import type { ProbeDoubt } from './probe-signs.ts';
import type { BoilState } from './state.ts';

/** What is kept of a tip against the others of its pan; as it begins where it hangs alone. */
export interface Beside {
  /** How much its corrected number lies over the pan's level, °C, and where that began; learnt over so many looks. */
  overC: number;
  firstC: number;
  looks: number;
  /** The pan is not read by it now. */
  leftOut: boolean;
  /** It is at odds with the others; null while it is not. */
  odd: ProbeDoubt | null;
  /** Since when an odd one lies by the others again, ms. */
  alikeFrom: number | null;
}

/** A tip that was not held against others yet. */
export const startBeside = (): Beside => ({
  overC: 0,
  firstC: 0,
  looks: 0,
  leftOut: false,
  odd: null,
  alikeFrom: null,
});

/** What is kept of a pan in which several tips hang. */
export interface PanTips {
  lookedAt: number;
  /** When they last lay together in a calm boil, and since when they lie apart, ms; null for never and for not. */
  alikeAt: number | null;
  partedAt: number | null;
  /** The one that most likely is at odds, while it is too early to say so. */
  perhaps: string | null;
  /** They lie so far apart, °C, and nobody can tell which is right: the pan is read by the highest meanwhile. */
  untold: { apartC: number; highest: string; doubt: ProbeDoubt | null } | null;
  /** How they stood some minutes ago, the older first. */
  stood: Stood[];
}

/** °C over what is theirs, in the order in which they hang in the pan; t in ms, the pan's rate then in °C/min. */
export interface Stood {
  t: number;
  rateCPerMin: number;
  celsius: (number | null)[];
}

/** A pan’s tips of which nothing is known yet. */
export const startTips = (): PanTips => ({
  lookedAt: -1,
  alikeAt: null,
  partedAt: null,
  perhaps: null,
  untold: null,
  stood: [],
});

/** A tip leads where its rise is known to this share of what the others' are: a mean with those would be worse. */
const LEADS_SHARE = 0.7;

const riseSigma = (state: BoilState, probe: string): number =>
  sigmaOf(state.water.joint, [
    [WATER, 1],
    [probeName(probe), 1],
  ]);

/** The tip that is known far better than all others of its pan; null where there is none. */
export function bestKnown(state: BoilState, pan: string): string | null {
  const known = state.panProbes[pan]!.map((probe) => ({ probe, sigma: riseSigma(state, probe) }));
  known.sort((a, b) => a.sigma - b.sigma);
  const [best, next] = known;
  return best !== undefined && (next === undefined || best.sigma < LEADS_SHARE * next.sigma) ? best.probe : null;
}

/** The probe whose error the rise of a pan rests on; null for a pan that has none. */
export function leadOf(state: BoilState, pan: string): string | null {
  const tips = state.tips[pan];
  const first = state.panProbes[pan]?.[0] ?? null;
  return tips === undefined ? first : (tips.untold?.highest ?? bestKnown(state, pan) ?? first);
}

/**
 * By how much the pan's level moves where probes are corrected anew, °C; `before` are the corrections until now. The tips
 * keep their places to each other.
 */
export function levelMovesC(state: BoilState, pan: string, before: Readonly<Record<string, number>>): number {
  const probes = state.panProbes[pan]!;
  const moved = probes.map((probe) => state.corrections[probe]! - (before[probe] ?? 0));
  if (state.tips[pan] === undefined) return moved[0] ?? 0;
  const besides = probes.map((probe) => state.probes[probe]!.beside);
  if (besides.some(({ looks }) => looks === 0)) {
    const read = moved.filter((_, i) => !besides[i]!.leftOut);
    return read.length === 0 ? 0 : read.reduce((sum, by) => sum + by, 0) / read.length;
  }
  const best = bestKnown(state, pan);
  const stands = besides.map(({ overC }, i) => overC + moved[i]!);
  const by = best === null ? stands.reduce((sum, one) => sum + one, 0) / stands.length : stands[probes.indexOf(best)]!;
  besides.forEach((beside, i) => {
    beside.overC += moved[i]! - by;
    beside.firstC += moved[i]! - by;
  });
  return by;
}
