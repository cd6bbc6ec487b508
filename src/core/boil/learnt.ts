// What a boil taught: its density readings and checks of probes and saps, its pans' beliefs of their burners; to be kept for the next boil.
import { probeName, sapName } from '../pan/baseline.ts';
import { burnerName, ownSteam, type Steam } from '../pan/burner.ts';
import { TENDED_VARIANCE_PER_S } from '../pan/filter/predict.ts';
import { steamBefore } from '../pan/filter/start.ts';
import { independent, type JointNormal, marginal, sideBySide } from '../pan/joint-normal.ts';
import { HOUR_MS } from '../quantities/time.ts';
import type { Learnt } from './entries.ts';
import type { BoilState } from './state.ts';

/**
 * What this boil measured: the joint distribution of its probes and saps, and beside them, each by itself, what it showed
 * of its burners (logarithm of the steam at full flame, kg/s, without what it began with); null where nothing did.
 */
export function learntOf(state: BoilState): Learnt | null {
  const known = sideBySide([probesAndSaps(state), burnersOf(state)]);
  return known.names.length === 0 ? null : known;
}

function probesAndSaps(state: BoilState): JointNormal {
  const names = new Set<string>();
  for (const seen of state.water.evidence) {
    if (seen.kind === 'pressure') continue;
    names.add(probeName(seen.probe));
    if (seen.kind === 'density') names.add(sapName(seen.sap));
  }
  // Next time another thermometer may be in the hand.
  names.delete(probeName(null));
  return marginal(state.water.joint, [...names]);
}

/** A pan that came to no finish tells of its burner only once it has boiled up to so far into the boil, ms (judgement). */
const LEAST_TELLING_MS = HOUR_MS;

const wasCalledFinished = ({ history }: BoilState, pan: string): boolean =>
  history.raisings.some((one) => one.pan === pan && one.alarm === 'finish');

/** The burner of each pan that boiled. Two pans that nothing tells apart: the first counts. */
function burnersOf(state: BoilState): JointNormal {
  const shown = new Map<string, Steam>();
  for (const pan of state.header.pans ?? []) {
    const name = burnerName(pan);
    const steam = name === null || shown.has(name) ? null : steamOf(state, pan.id);
    if (name !== null && steam !== null) shown.set(name, steam);
  }
  return independent([...shown].map(([name, { lnKgPerS, share }]) => ({ name, mean: lnKgPerS, sigma: share })));
}

/**
 * What the pan's belief was when it last boiled, without what it began with, which a flame may have left since. A rise
 * tells how fast the strength climbs; only where somebody said how much was in the pan it tells how much water that is.
 */
function steamOf(state: BoilState, pan: string): Steam | null {
  const course = state.pans[pan]?.course;
  const after = course?.boiledWith ?? null;
  // What was only tried out tells of no burner.
  if ((after?.t ?? 0) < LEAST_TELLING_MS && !wasCalledFinished(state, pan)) return null;
  const design = state.designs[pan];
  if (course?.told !== true || after === null || design === undefined) return null;
  const before = steamBefore(design);
  const wandered = (TENDED_VARIANCE_PER_S * after.t) / 1000;
  return ownSteam({ ...before, share: Math.sqrt(before.share ** 2 + wandered) }, after);
}
