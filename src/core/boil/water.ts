// The water point at these pans now: from altitude, typed pressures, boiling checks and a reference pot, and what a check says of its probe.
import { byName } from './by-name.ts';
import type { Mark } from './entries.ts';
import { saturationPressureHpa, saturationTemperatureCelsius } from '../physics/water-point.ts';
import {
  stationPressureFromAltimeterHpa,
  stationPressureFromAltitudeHpa,
  stationPressureFromSeaLevelHpa,
} from '../physics/station-pressure.ts';

/** A mark that stands, and when it happened, ms. */
export interface StandingMark {
  at: number;
  mark: Mark;
}

export interface Water {
  /** °C; null when neither altitude nor pressure nor a check is known. */
  celsius: number | null;
  sigmaC: number;
  pressureHpa: number | null;
  origin: { kind: 'altitude' | 'pressure' | 'check' | 'reference-pot' | 'nothing'; at: number | null };
  /** What is added to each checked probe's number, and how well its rise is then known. */
  probes: Record<string, { correctionC: number; checkedAt: number }>;
}

export interface ReferencePot {
  celsius: number;
  sigmaC: number;
}

/** Weather about the standard atmosphere, °C of water point (1 sigma; ± 0.6 at 95 %: about ± 20 hPa). */
const ALTITUDE_SIGMA_C = 0.3;
/** A front moves 1–2 hPa/h; at 0.028 °C/hPa this much an hour. */
const WEATHER_C_PER_H = 0.042;
/** How far an unchecked probe is off, °C (1 sigma): between the classes of common thermocouples and platinum. */
const PROBE_SIGMA_C = 0.5;
/** A reading in boiling water: superheat, depth, resolution, °C. */
const CHECK_SIGMA_C = 0.08;
/** hPa by how the pressure was typed: own barometer, airfield setting, weather page. */
const PRESSURE_SIGMA_HPA = { station: 0.7, altimeter: 1, 'sea-level': 1.5 } as const;
const C_PER_HPA = 0.028;
/** What was seen today stands alone while it is known to this, °C of water point. */
const SURE_SEEN_C = 0.2;
/** A typed pressure is taken as sure at a check when it is known to this, °C of water point. */
const SURE_PRESSURE_C = 0.15;

interface Candidate {
  celsius: number;
  sigmaC: number;
  origin: Water['origin'];
}

/** The water point at t (ms) from all marks that stand. `altitudeM` null when the site's altitude is not known. */
export function waterAt(
  marks: readonly StandingMark[],
  altitudeM: number | null,
  pot: ReferencePot | null,
  t: number,
): Water {
  const pressures = marks.flatMap((kept) => pressureCandidate(kept, altitudeM));
  const altitude = altitudeCandidate(altitudeM);
  const probes: Water['probes'] = byName();
  let told = null as Candidate | null;
  for (const { at, mark } of marks) {
    if (mark.kind !== 'water-check') continue;
    const typed = nearest(pressures, at);
    if (typed !== null && typed.sigmaC < SURE_PRESSURE_C) {
      // A pressure that was typed near the check knows the water point: the rest is the probe's.
      probes[mark.probe] = { correctionC: typed.celsius - mark.celsius, checkedAt: at };
      continue;
    }
    const split = splitCheck(mark.celsius, fuse([altitude, typed]));
    probes[mark.probe] = { correctionC: split.correctionC, checkedAt: at };
    told = { celsius: split.waterC, sigmaC: split.waterSigmaC, origin: { kind: 'check', at } };
  }
  if (told !== null)
    told = { ...told, sigmaC: Math.min(ALTITUDE_SIGMA_C, Math.hypot(told.sigmaC, agedC(t - told.origin.at!))) };
  const today = [nearest(pressures, t), potCandidate(pot, t)];
  const seen = fuse([told, ...today]);
  // Altitude knows nothing of the weather: it only stands in while nothing surer was seen.
  const fused = seen !== null && seen.sigmaC < SURE_SEEN_C ? seen : fuse([told ?? altitude, ...today]);
  if (fused === null) {
    return { celsius: null, sigmaC: Infinity, pressureHpa: null, origin: { kind: 'nothing', at: null }, probes };
  }
  return { ...fused, pressureHpa: saturationPressureHpa(fused.celsius), probes };
}

/** Standard uncertainty of a rise read with this probe, °C: a check ties probe and water point together. */
export function riseSigmaC(water: Water, probe: string | null, t: number): number {
  const check = probe === null ? undefined : water.probes[probe];
  if (check === undefined) return Math.sqrt(water.sigmaC ** 2 + PROBE_SIGMA_C ** 2);
  const seenSince = water.origin.kind === 'pressure' || water.origin.kind === 'reference-pot';
  const weather = seenSince ? water.sigmaC : agedC(t - check.checkedAt);
  return Math.sqrt(CHECK_SIGMA_C ** 2 + weather ** 2);
}

function agedC(ms: number): number {
  return (WEATHER_C_PER_H * Math.abs(ms)) / 3_600_000;
}

function altitudeCandidate(altitudeM: number | null): Candidate | null {
  const pressure = altitudeM === null ? null : stationPressureFromAltitudeHpa(altitudeM);
  const celsius = pressure === null ? null : saturationTemperatureCelsius(pressure);
  return celsius === null ? null : { celsius, sigmaC: ALTITUDE_SIGMA_C, origin: { kind: 'altitude', at: null } };
}

/** Station pressure that a pressure mark means, hPa; null when it needs an altitude that is not known. */
export function stationPressureOf(mark: Mark & { kind: 'pressure' }, altitudeM: number | null): number | null {
  if ((mark.at ?? 'station') === 'station') return mark.hpa;
  if (altitudeM === null) return null;
  if (mark.at === 'altimeter') return stationPressureFromAltimeterHpa(mark.hpa, altitudeM);
  return stationPressureFromSeaLevelHpa(mark.hpa, altitudeM, mark.outdoor_celsius ?? 5);
}

function pressureCandidate({ at, mark }: StandingMark, altitudeM: number | null): Candidate[] {
  if (mark.kind !== 'pressure') return [];
  const pressure = stationPressureOf(mark, altitudeM);
  const celsius = pressure === null ? null : saturationTemperatureCelsius(pressure);
  if (celsius === null) return [];
  return [{ celsius, sigmaC: PRESSURE_SIGMA_HPA[mark.at ?? 'station'] * C_PER_HPA, origin: { kind: 'pressure', at } }];
}

/** The typed pressure nearest in time, its uncertainty grown by the weather between. */
function nearest(pressures: readonly Candidate[], t: number): Candidate | null {
  let best: Candidate | null = null;
  for (const one of pressures) {
    const sigmaC = Math.hypot(one.sigmaC, agedC(t - (one.origin.at ?? t)));
    if (best === null || sigmaC <= best.sigmaC) best = { ...one, sigmaC };
  }
  return best;
}

function potCandidate(pot: ReferencePot | null, t: number): Candidate | null {
  return pot === null ? null : { ...pot, origin: { kind: 'reference-pot', at: t } };
}

/** Inverse-variance mean; the surest one gives its name. */
function fuse(candidates: readonly (Candidate | null)[]): Candidate | null {
  let weights = 0;
  let sum = 0;
  let surest: Candidate | null = null;
  for (const one of candidates) {
    if (one === null) continue;
    const weight = 1 / one.sigmaC ** 2;
    weights += weight;
    sum += weight * one.celsius;
    if (surest === null || one.sigmaC < surest.sigmaC) surest = one;
  }
  return surest === null ? null : { celsius: sum / weights, sigmaC: 1 / Math.sqrt(weights), origin: surest.origin };
}

/**
 * A reading in boiling water is water point plus probe error; the difference from what was expected is shared out
 * by how unsure each of the two was. With no expectation all of it is water point.
 */
function splitCheck(
  readC: number,
  base: Candidate | null,
): { correctionC: number; waterC: number; waterSigmaC: number } {
  if (base === null) return { correctionC: 0, waterC: readC, waterSigmaC: PROBE_SIGMA_C };
  const off = readC - base.celsius;
  const total = PROBE_SIGMA_C ** 2 + base.sigmaC ** 2;
  return {
    correctionC: -(PROBE_SIGMA_C ** 2 / total) * off,
    waterC: base.celsius + (base.sigmaC ** 2 / total) * off,
    waterSigmaC: base.sigmaC * Math.sqrt(1 - base.sigmaC ** 2 / total),
  };
}
