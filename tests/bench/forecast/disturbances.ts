// Where a hand changed a pan: pours, draw-offs and flames, marked or not, found in what is true.
import type { TruthMoment } from '../../../src/core/simulation/truth.ts';
import type { Sample } from './witness.ts';

export interface Disturbance {
  t: number;
  /** Liquid came or went; otherwise the flame was changed. */
  poured: boolean;
}

/** More than the hottest pan loses to steam between two samples, L. */
const HAND_LITRES = 0.25;

export function disturbances(samples: readonly Sample[], moments: readonly TruthMoment[], pan: string): Disturbance[] {
  const found: Disturbance[] = moments
    .filter((moment) => moment.pan === pan && (moment.what === 'poured' || moment.what === 'taken-off'))
    .map(({ t }) => ({ t, poured: true }));
  samples.forEach((sample, index) => {
    const before = samples[index - 1];
    if (before === undefined) return;
    if (before.level !== sample.level) found.push({ t: sample.t, poured: false });
    if (Math.abs(sample.litres - before.litres) > HAND_LITRES) found.push({ t: sample.t, poured: true });
  });
  return found.toSorted((a, b) => a.t - b.t);
}

/** ms; -1 when there was none. */
export function lastDisturbance(disturbed: readonly Disturbance[], before: number, pouredOnly = false): number {
  return disturbed.reduce(
    (last, { t, poured }) => (t <= before && (poured || !pouredOnly) ? Math.max(last, t) : last),
    -1,
  );
}
