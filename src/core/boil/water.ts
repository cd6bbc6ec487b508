// The water point at these pans now and what is known of each probe and sap, from everything that was noted and the pots of plain water.
import {
  type Baseline,
  baselineAt,
  CHECK_SIGMA_C,
  type Evidence,
  type Expected,
  HAND_READ_SIGMA_C,
  POT_SIGMA_C,
  type Priors,
  probeName,
  sapName,
  see,
  startBaseline,
  WATER,
} from '../pan/baseline.ts';
import { type JointNormal, meanOf, sigmaOf, type Sum } from '../pan/joint-normal.ts';
import { saturationPressureHpa, saturationTemperatureCelsius } from '../physics/water-point.ts';
import {
  stationPressureFromAltimeterHpa,
  stationPressureFromAltitudeHpa,
  stationPressureFromSeaLevelHpa,
} from '../physics/station-pressure.ts';
import { formatTyped } from '../quantities/format.ts';
import { pressureDoubt } from '../physics/pressure-doubt.ts';
import { modelShareOfRise } from '../physics/strength-uncertainty.ts';
import { sugarShares } from '../physics/sugar-shares.ts';
import type { Header, Mark, Sap, Sensor } from './entries.ts';
import { sapKey } from './sap-key.ts';
import { isPressedTwice, isWild } from './questioned.ts';
import { HOUR_MS } from '../quantities/time.ts';

export interface WaterOrigin {
  kind: 'altitude' | 'pressure' | 'check' | 'reference-pot' | 'nothing';
  /** ms */
  at: number | null;
}

export interface Water {
  /** °C; null when neither altitude nor pressure nor a check is known. */
  celsius: number | null;
  sigmaC: number;
  pressureHpa: number | null;
  origin: WaterOrigin;
  /** Water point, probes and saps now. */
  joint: JointNormal;
  /** The same when something was last seen, and what that was. */
  seen: Baseline;
  evidence: Evidence[];
}

/** How far an unchecked probe is off, °C (1 σ): from the classes of trade.md, Probes; a plain number may come from any of them. */
function probeSigmaC(sensor: Sensor | undefined): number {
  if (sensor?.kind === 'thermocouple') return 0.9;
  return sensor?.kind === 'rtd' ? 0.3 : 0.6;
}
/** Whoever boils plain water as the reference trusts the probe in it, °C (common practice). */
const REFERENCE_SIGMA_C = 0.15;
/** A kitchen or dial thermometer, °C (common practice). */
const HAND_SIGMA_C = 0.8;
/** hPa by how the pressure was typed: own barometer, airfield setting, weather page (common practice). */
const PRESSURE_SIGMA_HPA = { station: 0.7, altimeter: 1, 'sea-level': 1.5 } as const;
const C_PER_HPA = 0.0277;
/** Known worse than this, °C, the water point is better called not known. */
const USEFUL_SIGMA_C = 1.5;

/**
 * Acids and minerals that nobody told of raise a birch syrup by another 0 to 6 % (physics.md 4.4, with 75 g/mol assumed);
 * 4 to 10 % of them were found on its sugar (Kallio & Ahtonen 1987, abstract), and far less in maple.
 */
const UNTOLD_OTHERS_SHARE = 0.03;

/** By which share the rise of a sap that nobody measured may be off (1 σ): the model's error, and acids nobody told of. */
function sapSigma(sap: Sap | undefined): number {
  const shares = sugarShares(sap ?? 'maple');
  const untold = shares.others === undefined ? UNTOLD_OTHERS_SHARE * (1 - shares.sucrose) : 0;
  return Math.hypot(modelShareOfRise(shares), untold);
}

/** What is expected of water point, probes and saps of a header before anything is seen. */
export function priorsOf(header: Header): Priors {
  const altitudeM = header.site?.altitude_m;
  const pressure = altitudeM === undefined ? null : stationPressureFromAltitudeHpa(altitudeM);
  const trusted = (header.pans ?? []).filter(({ role }) => role === 'reference').flatMap(({ probe }) => probe ?? []);
  const probes = (header.probes ?? []).map(({ id, offset_c, sensor }): Expected => {
    const sigma = trusted.includes(id) ? REFERENCE_SIGMA_C : probeSigmaC(sensor);
    return { name: probeName(id), mean: -(offset_c ?? 0), sigma };
  });
  const saps = new Map((header.pans ?? []).map(({ sap }) => [sapName(sapKey(sap)), sapSigma(sap)]));
  return {
    altitudeWaterC: pressure === null ? null : saturationTemperatureCelsius(pressure),
    expected: [
      ...probes,
      { name: probeName(null), mean: 0, sigma: HAND_SIGMA_C },
      ...[...saps].map(([name, sigma]) => ({ name, mean: 0, sigma })),
    ],
    learnt: header.learnt ?? null,
  };
}

/**
 * Water point, probes and saps at t (ms) from all evidence, in any order. What can hardly be meant is left out and
 * counted up in `left`, unless it is among what somebody is `sure` of.
 */
export function waterFrom(
  evidence: readonly Evidence[],
  priors: Priors,
  t: number,
  sure: ReadonlySet<Evidence> = new Set(),
): { water: Water; left: ReadonlySet<Evidence> } {
  let seen = startBaseline(priors);
  const taken: Evidence[] = [];
  const left: Evidence[] = [];
  for (const one of [...evidence].sort((a, b) => a.at - b.at)) {
    if (isPressedTwice(one, taken)) continue;
    if (isWild(one, baselineAt(seen, one.at), left, sure.has(one))) left.push(one);
    else {
      seen = see(seen, one);
      taken.push(one);
    }
  }
  const water = waterNow({ seen, evidence: taken }, priors.altitudeWaterC !== null, t);
  return { water, left: new Set(left) };
}

/** The same with one more thing seen, at t (ms), not before the others. */
export function waterWith(water: Water, fresh: Evidence, altitudeKnown: boolean, t: number): Water {
  const after = { seen: see(water.seen, fresh), evidence: [...water.evidence, fresh] };
  return waterNow(after, altitudeKnown, t);
}

/** The same at a later t (ms), less sure by what the weather may have done. */
export function waterLater(water: Water, altitudeKnown: boolean, t: number): Water {
  return waterNow(water, altitudeKnown, t);
}

function waterNow(
  { seen, evidence }: { seen: Baseline; evidence: Evidence[] },
  altitudeKnown: boolean,
  t: number,
): Water {
  const joint = baselineAt(seen, t);
  const sum: Sum = [[WATER, 1]];
  const sigmaC = sigmaOf(joint, sum);
  const celsius = sigmaC <= USEFUL_SIGMA_C ? meanOf(joint, sum) : null;
  return {
    celsius,
    sigmaC,
    pressureHpa: celsius === null ? null : saturationPressureHpa(celsius),
    origin: celsius === null ? { kind: 'nothing', at: null } : originOf(evidence, altitudeKnown, t),
    joint,
    seen,
    evidence,
  };
}

/** How the water point's uncertainty grows with the age of what was seen, °C an hour: 1.5 hPa/h, to name the best source by. */
const AGES_C_PER_H = 0.042;

/** What the water point rests on most: the surest and newest. A check is as sure as it is for its own probe. */
function originOf(evidence: readonly Evidence[], altitudeKnown: boolean, t: number): WaterOrigin {
  let best: WaterOrigin = { kind: altitudeKnown ? 'altitude' : 'nothing', at: null };
  let least = Infinity;
  for (const { kind, at, sigmaC } of evidence) {
    if (kind === 'density') continue;
    const sure = Math.hypot(sigmaC, (AGES_C_PER_H * (t - at)) / HOUR_MS);
    if (sure > least) continue;
    least = sure;
    best = { kind: kind === 'pot' ? 'reference-pot' : kind, at };
  }
  return best;
}

/** What is added to a probe's bare number to make it true, °C; the header's offset is in it. */
export const correctionC = (water: Water, probe: string | null): number =>
  -meanOf(water.joint, [[probeName(probe), 1]]);

/** Station pressure that a pressure mark means, hPa; null when it needs an altitude that is not known. */
export function stationPressureOf(mark: Mark & { kind: 'pressure' }, altitudeM: number | null): number | null {
  if ((mark.at ?? 'station') === 'station') return mark.hpa;
  if (altitudeM === null) return null;
  if (mark.at === 'altimeter') return stationPressureFromAltimeterHpa(mark.hpa, altitudeM);
  return stationPressureFromSeaLevelHpa(mark.hpa, altitudeM, mark.outdoor_celsius ?? USUAL_OUTDOOR_C);
}

/** Outdoors in the season where nobody said, °C (common practice). */
const USUAL_OUTDOOR_C = 5;

/** What a pressure mark at a time (ms) shows; null where it needs an altitude that is not known. */
export function pressureEvidence(
  mark: Mark & { kind: 'pressure' },
  at: number,
  altitudeM: number | null,
): Evidence | null {
  const pressure = stationPressureOf(mark, altitudeM);
  const celsius = pressure === null ? null : saturationTemperatureCelsius(pressure);
  if (celsius === null) return null;
  const sigmaC = PRESSURE_SIGMA_HPA[mark.at ?? 'station'] * C_PER_HPA;
  return { kind: 'pressure', at, celsius, sigmaC, doubted: doubtAboutPressure(mark, altitudeM) !== null };
}

/** Further from the last one than weather goes within the hour, °C of water point: 9 hPa. */
const JUMP_C = 0.25;

/** What is asked about a pressure that jumps from the one before it, which counts all the same; null where it does not. */
export function pressureJump(
  mark: Mark & { kind: 'pressure' },
  seen: Evidence,
  evidence: readonly Evidence[],
): string | null {
  const before = evidence.findLast((one) => one.kind === 'pressure' && one !== seen && seen.at - one.at < HOUR_MS);
  if (before === undefined || Math.abs(before.celsius - seen.celsius) <= JUMP_C) return null;
  return `${formatTyped(mark.hpa, 0)} hPa is further from the pressure before than weather goes in that time; the newer one counts. Whichever of them is wrong, take it back.`;
}

/** What is said of a pressure that means nothing without the altitude. */
export const NEEDS_ALTITUDE =
  "An airfield's setting or a sea-level figure tells nothing here until the site's altitude is given: add it to the setup, or use a barometer at the pans.";

/** A sentence where no weather makes such a pressure at this altitude, or a common slip rather would; null else. */
export function doubtAboutPressure(mark: Mark & { kind: 'pressure' }, altitudeM: number | null): string | null {
  const { hpa, at = 'station', outdoor_celsius: outdoorC = null } = mark;
  return pressureDoubt({ hpa, at, altitudeM, outdoorC });
}

/** What a check shows: the bare number in boiling water of a probe, or of the thermometer in the hand (null). */
export function checkEvidence(probe: string | null, celsius: number, at: number, inSyrup: boolean): Evidence {
  const sigmaC = probe === null ? Math.hypot(CHECK_SIGMA_C, HAND_READ_SIGMA_C) : CHECK_SIGMA_C;
  return { kind: 'check', at, probe, celsius, sigmaC, inSyrup };
}

/** What a pot of plain water shows: its probe's bare number. */
export function potEvidence(probe: string, celsius: number, at: number): Evidence {
  return { kind: 'pot', at, probe, celsius, sigmaC: POT_SIGMA_C };
}
