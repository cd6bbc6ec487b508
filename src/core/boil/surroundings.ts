// What a pan's model is told of the world around it: the water point for its own probe, kept fresh once a minute.
import type { Surroundings } from '../pan/pan-state.ts';
import { median } from '../pan/robust-statistics.ts';
import { type BoilState, takePressure } from './state.ts';
import { type ReferencePot, riseSigmaC, waterAt } from './water.ts';

/** The water point is worked out anew at least so often, ms: the weather moves it 0.0007 °C a minute. */
const REFRESH_MS = 60_000;
/** A reference pot counts once its last minutes move less than this, °C/min. */
const POT_STEADY_C_PER_MIN = 0.05;
/** A pot further from what altitude and marks say is not boiling plain water, °C. */
const POT_PLAUSIBLE_C = 4;

export function refreshWater(state: BoilState, t: number, force: boolean): void {
  if (!force && t - state.waterAt < REFRESH_MS) return;
  state.waterAt = t;
  const altitude = state.header.site?.altitude_m ?? null;
  const marks = state.marks.filter((kept) => !kept.withdrawn);
  const without = waterAt(marks, altitude, null, t);
  const pot = referencePot(state, without.celsius);
  state.water = pot === null ? without : waterAt(marks, altitude, pot, t);
  takePressure(state);
}

function referencePot(state: BoilState, expectedC: number | null): ReferencePot | null {
  for (const design of Object.values(state.designs)) {
    const track = state.pans[design.id]?.track;
    if (design.role !== 'reference' || track === undefined || track.blockValues.length < 12) continue;
    const rate = state.pans[design.id]!.rateCPerMin;
    if (rate === null || Math.abs(rate) > POT_STEADY_C_PER_MIN) continue;
    const celsius = median(track.blockValues.slice(-12));
    if (expectedC !== null && Math.abs(celsius - expectedC) > POT_PLAUSIBLE_C) continue;
    if (expectedC === null && celsius < 80) continue;
    const checked = state.panProbes[design.id]!.some((probe) => probe in state.water.probes);
    return { celsius, sigmaC: checked ? 0.07 : 0.15 };
  }
  return null;
}

export function surroundings(state: BoilState, pan: string, t: number): Surroundings {
  const probe = state.panProbes[pan]![0] ?? null;
  return {
    waterC: state.water.celsius,
    waterSigmaC: riseSigmaC(state.water, probe, t),
    pressureHpa: state.water.pressureHpa,
    limits: state.limits[pan]!,
  };
}
