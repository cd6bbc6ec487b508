// What a pan's model is told of the world around it: the water point for its own probe, kept fresh once a minute.
import { type Evidence, probeName, sapName, WATER } from '../pan/baseline.ts';
import { byName } from './by-name.ts';
import { sapKey } from './sap-key.ts';
import { panLimitsAt } from '../pan/limits.ts';
import { covarianceOf, meanOf, sigmaOf, type Sum } from '../pan/joint-normal.ts';
import type { Moved } from '../pan/pan-model.ts';
import type { Surroundings } from '../pan/pan-state.ts';
import { median } from '../pan/robust-statistics.ts';
import type { BoilState } from './state.ts';
import { leadOf } from './tip-levels.ts';
import { finishProbability } from './settings.ts';
import { correctionC, potEvidence, pressureEvidence, priorsOf, waterFrom, waterLater, waterWith } from './water.ts';

/** The water point is worked out anew at least so often, ms: the weather moves it 0.001 °C a minute. */
export const REFRESH_MS = 60_000;
/** A pot tells the water point so often, ms: between two of them the weather moves it 0.01 °C. */
const POT_EVERY_MS = 600_000;
/** A reference pot counts once its last minutes move less than this, °C/min. */
const POT_STEADY_C_PER_MIN = 0.05;
/** A pot further from what altitude and marks say is not boiling plain water, °C. */
const POT_PLAUSIBLE_C = 4;
/** With nothing to compare with, plain water boils over this, °C: 3000 m is 90 °C (ISO 2533). */
const POT_LEAST_C = 80;

const altitudeKnown = (state: BoilState): boolean => state.header.site?.altitude_m !== undefined;

/** Once every REFRESH_MS: the weather goes on, and a pot of plain water may tell. */
export function refreshWater(state: BoilState, t: number): Moved {
  state.waterAt = t;
  const pot = potNow(state, t);
  if (pot === null) state.water = waterLater(state.water, altitudeKnown(state), t);
  else {
    state.pots.push(pot);
    state.water = waterWith(state.water, pot, altitudeKnown(state), t);
  }
  lookAround(state);
  return pot === null ? 'weather' : 'learnt';
}

/** Everything that was seen is weighed anew: after a mark, a mark taken back, or another header. */
export function weighAnew(state: BoilState, t: number): void {
  state.waterAt = t;
  const altitudeM = state.header.site?.altitude_m ?? null;
  for (const kept of state.marks) {
    if (kept.mark.kind === 'pressure') kept.evidence = pressureEvidence(kept.mark, kept.at, altitudeM);
  }
  const noted = state.marks.flatMap(({ withdrawn, evidence }) => (withdrawn || evidence === null ? [] : [evidence]));
  const sure = new Set(
    state.marks.flatMap(({ mark, evidence }) => (mark.sure === true && evidence !== null ? [evidence] : [])),
  );
  const { water, left } = waterFrom([...noted, ...state.pots], priorsOf(state.header), t, sure);
  state.water = water;
  for (const kept of state.marks) {
    if (kept.evidence === null) continue;
    kept.wild = left.has(kept.evidence);
    kept.questioned = kept.doubted || kept.wild;
  }
  lookAround(state);
}

/** What the surest pot of plain water shows, where it is time to ask; null while none boils steadily. */
function potNow(state: BoilState, t: number): Evidence | null {
  if (t - (state.pots.at(-1)?.at ?? -Infinity) < POT_EVERY_MS) return null;
  for (const design of Object.values(state.designs)) {
    const pan = state.pans[design.id];
    const probe = leadOf(state, design.id);
    if (design.role !== 'reference' || probe === null || pan === undefined) continue;
    if (pan.track.blockValues.length < 12 || pan.track.blockTimes.at(-1)! < t - REFRESH_MS) continue;
    if (pan.rateCPerMin === null || Math.abs(pan.rateCPerMin) > POT_STEADY_C_PER_MIN) continue;
    const celsius = median(pan.track.blockValues.slice(-12));
    const expected = state.water.celsius;
    const plausible = expected === null ? celsius >= POT_LEAST_C : Math.abs(celsius - expected) <= POT_PLAUSIBLE_C;
    if (plausible) return potEvidence(probe, ownNumber(state, probe, celsius), t);
  }
  return null;
}

/** What a probe says itself where its pan is at so much, °C. */
export const ownNumber = (state: BoilState, probe: string, celsius: number): number =>
  celsius + state.probes[probe]!.beside.overC - correctionC(state.water, probe);

/** What a rise of this pan rests on: the water point and its probe's error. */
export function baseOf(state: BoilState, pan: string): Sum {
  const probe = leadOf(state, pan);
  return [
    [WATER, 1],
    [probeName(probe), 1],
  ];
}

/** The name of a pan's sap in the joint estimate. */
function sapOf(state: BoilState, pan: string): string {
  return sapName(sapKey(state.header.pans?.find(({ id }) => id === pan)?.sap));
}

/** Tells every pan's model what is known now: call after every change of the water, the header or a probe's place. */
export function lookAround(state: BoilState): void {
  state.corrections = byName(Object.keys(state.probes).map((probe) => [probe, correctionC(state.water, probe)]));
  state.around = byName(Object.keys(state.pans).map((pan) => [pan, aroundPan(state, pan)]));
}

/** One pan's. Where nobody can tell which of its tips is right, its rise is known to a spread between them. */
export function aroundPan(state: BoilState, pan: string): Surroundings {
  const { joint, celsius, pressureHpa } = state.water;
  const base = baseOf(state, pan);
  const sap: Sum = [[sapOf(state, pan), 1]];
  const sapShare = meanOf(joint, sap);
  return {
    waterC: celsius,
    waterSigmaC: Math.hypot(sigmaOf(joint, base), (state.tips[pan]?.untold?.apartC ?? 0) / Math.SQRT2),
    sapShare,
    sapShareSigma: sigmaOf(joint, sap),
    waterSapCovariance: covarianceOf(joint, base, sap),
    pressureHpa,
    limits: panLimitsAt(state.designs[pan]!, pressureHpa, sapShare, finishProbability(state.header, pan)),
  };
}
