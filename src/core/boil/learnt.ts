// What a boil's density readings and boiling checks taught of its probes and saps, to be kept for the next boil.
import { probeName, sapName } from '../pan/baseline.ts';
import { marginal } from '../pan/joint-normal.ts';
import type { Learnt, Sap } from './entries.ts';
import type { BoilState } from './state.ts';

/** A name for a sap by which the next boil knows that it is the same: `maple`, `birch`, or its shares. */
export function sapKey(sap: Sap | undefined): string {
  if (sap === undefined || typeof sap === 'string') return sap ?? 'maple';
  const { sucrose = 0, glucose = 0, fructose = 0, others = 0 } = sap;
  return [sucrose, glucose, fructose, others].map((share) => share.toFixed(3)).join('/');
}

/** The joint distribution of the probes and saps that something of this boil measured; null where nothing did. */
export function learntOf(state: BoilState): Learnt | null {
  const names = new Set<string>();
  for (const seen of state.water.evidence) {
    if (seen.kind === 'pressure') continue;
    names.add(probeName(seen.probe));
    if (seen.kind === 'density') names.add(sapName(seen.sap));
  }
  // Next time another thermometer may be in the hand.
  names.delete(probeName(null));
  const known = marginal(state.water.joint, [...names]);
  return known.names.length === 0 ? null : known;
}
