// What can hardly be meant: such a mark is kept, acts on nothing and is asked about, and counts when it is said again.
import { asMeasurement, type Evidence, probeName } from '../pan/baseline.ts';
import { type JointNormal, meanOf, sigmaOf } from '../pan/joint-normal.ts';

/**
 * A density reading further than this from the probe can hardly be meant: so many standard deviations; or so many °Bx, if
 * the two truly disagree, for in thin sap a few tenths of a degree are that many °Bx.
 */
const WILD_SIGMAS = 4;
const WILD_BRIX = 6;
const DISAGREE_SIGMAS = 2;
/** A boiling check this far from the water point is no plain boiling water, °C: unchecked probes are off by 2 at most. */
const WILD_CHECK_C = 2.5;
/** With the water point known no better than this, °C, a check is questioned only where water boils nowhere so. */
const KNOWN_SIGMA_C = 1.5;
/** Plain water boils at 80 °C 6000 m up (ISO 2533) and at 102 °C under the highest pressure on record; and no thermometer is off by more. */
const ANYWHERE_C = { least: 80 - WILD_CHECK_C, most: 102 + WILD_CHECK_C };
/** The same wild number again within this is meant, ms, if the two agree to this: °Bx or °C, and °C of water point. */
export const AGAIN_WITHIN_MS = 20 * 60_000;
const AGAIN_ALIKE = 1.5;
const AGAIN_WATER_C = 0.06;
/** Twice within this is one press too many, not a second look, ms. */
export const ONE_PRESS_MS = 15_000;

/**
 * Whether something that was noted can hardly be meant, against what was known before it; `left` is what was left out so
 * far, `sure` that its person was asked and stands by it.
 */
export function isWild(seen: Evidence, joint: JointNormal, left: readonly Evidence[], sure: boolean): boolean {
  if (seen.kind === 'check' && seen.inSyrup) return true;
  return !sure && isFar(seen, joint) && !left.some((other) => saysTheSame(seen, other));
}

function isFar(seen: Evidence, joint: JointNormal): boolean {
  const { sum, value, sigma } = asMeasurement(seen);
  const off = Math.abs(value - meanOf(joint, sum));
  const known = sigmaOf(joint, sum);
  if (seen.kind === 'check') {
    if (known <= KNOWN_SIGMA_C) return off > WILD_CHECK_C;
    const shown = seen.celsius - meanOf(joint, [[probeName(seen.probe), 1]]);
    return shown < ANYWHERE_C.least || shown > ANYWHERE_C.most;
  }
  if (seen.kind === 'pressure') return seen.doubted;
  if (seen.kind !== 'density') return false;
  const sigmas = off / Math.hypot(sigma, known);
  return seen.tooStrong || sigmas > WILD_SIGMAS || (sigmas > DISAGREE_SIGMAS && off > WILD_BRIX * seen.cPerBrix);
}

/** Somebody who was asked and says the same again means it. */
function saysTheSame(one: Evidence, other: Evidence): boolean {
  const apart = Math.abs(one.at - other.at);
  return apart <= AGAIN_WITHIN_MS && apart >= ONE_PRESS_MS && isAlike(one, other);
}

/** The same number pressed twice counts once. */
export function isPressedTwice(seen: Evidence, before: readonly Evidence[]): boolean {
  return seen.kind !== 'pot' && before.some((one) => Math.abs(seen.at - one.at) < ONE_PRESS_MS && isSame(seen, one));
}

function isSame(one: Evidence, other: Evidence): boolean {
  if (one.kind === 'density' && other.kind === 'density') return one.pan === other.pan && one.brix === other.brix;
  return one.kind !== 'density' && isAlike(one, other) && 'celsius' in other && one.celsius === other.celsius;
}

function isAlike(one: Evidence, other: Evidence): boolean {
  if (one.kind === 'density' && other.kind === 'density')
    return one.pan === other.pan && Math.abs(one.brix - other.brix) <= AGAIN_ALIKE;
  if (one.kind === 'check' && other.kind === 'check')
    return one.probe === other.probe && Math.abs(one.celsius - other.celsius) <= AGAIN_ALIKE;
  if (one.kind === 'pressure' && other.kind === 'pressure')
    return Math.abs(one.celsius - other.celsius) <= AGAIN_WATER_C;
  return false;
}
