// What a probe's number must be lessened by to be a rise that sugar makes: water point, probe error and the sap's own extra, in one joint estimate.
import type { Learnt } from '../boil/entries.ts';
import { independent, type JointNormal, learnFrom, marginal, meanOf, sigmaOf, type Sum } from './joint-normal.ts';
import { HOUR_MS } from '../quantities/time.ts';

/** Names in the joint estimate: the water point, °C, and how fast the weather moves it, °C/h. */
export const WATER = 'water';
const FRONT = 'front';
/** How much a probe's bare number is too high, °C; a thermometer held in the hand is one of them. */
export const probeName = (probe: string | null): string => (probe === null ? 'hand' : `probe ${probe}`);
/** By which share a sap's rise is more than its sugars' alone. */
export const sapName = (key: string): string => `sap ${key}`;

/** Weather about the standard atmosphere, °C of water point (issue: ± 0.6 at 95 %, about ± 20 hPa; common practice). */
const ALTITUDE_SIGMA_C = 0.3;
/** Where not even the altitude is known: people boil between the sea and 3000 m, °C. */
const ANYWHERE_C = 96;
const ANYWHERE_SIGMA_C = 5;
/** A front moves 1–2 hPa an hour, a hard one 3; 0.0277 °C/hPa (physics.md section 0); it passes in about so many hours (common practice). */
const FRONT_SIGMA_C_PER_H = 0.06;
const FRONT_HOURS = 8;
/** A reading in boiling water: superheat, depth, resolution, °C (common practice). */
export const CHECK_SIGMA_C = 0.08;
/** The same for a pot that boils all day, where a minute of readings is averaged, °C. */
export const POT_SIGMA_C = 0.05;
/** A thermometer in the hand, a dial, is read to about this, °C (common practice). */
export const HAND_READ_SIGMA_C = 0.3;
/** From one boil to the next a probe is moved and ages, °C, and the trees give another sap, share of the rise (common practice). */
const PROBE_AGES_C = 0.1;
const SAP_CHANGES_SHARE = 0.012;

/** One thing that was seen, at a time in ms of boil time. */
export type Evidence =
  /** The water point that a pressure means; `doubted` where no weather makes it here, or a common slip rather would. */
  | { kind: 'pressure'; at: number; celsius: number; sigmaC: number; doubted: boolean }
  /**
   * What a probe said, uncorrected, in boiling water, or the thermometer in the hand (null); `inSyrup` where it said the
   * same in its thick pan.
   */
  | { kind: 'check'; at: number; probe: string | null; celsius: number; sigmaC: number; inSyrup: boolean }
  | { kind: 'pot'; at: number; probe: string; celsius: number; sigmaC: number }
  /** What the pan's thermometer said, uncorrected, where an instrument says that the sugars alone make such a rise. */
  | DensityEvidence;

export interface DensityEvidence {
  kind: 'density';
  at: number;
  pan: string;
  probe: string | null;
  sap: string;
  celsius: number;
  brix: number;
  riseC: number;
  cPerBrix: number;
  sigmaC: number;
  /** Stronger than anybody lets this pan get. */
  tooStrong: boolean;
}

export interface Baseline {
  joint: JointNormal;
  /** The moment that the estimate stands for, ms; null before anything was seen: the weather's clock starts with that. */
  at: number | null;
}

export interface Expected {
  name: string;
  mean: number;
  sigma: number;
}

/** What is expected before anything is seen. */
export interface Priors {
  /** Water point of the standard atmosphere at the site, °C; null where the altitude is not known. */
  altitudeWaterC: number | null;
  /** Probes in °C, saps as a share of the rise. */
  expected: readonly Expected[];
  learnt: Learnt | null;
}

/** An estimate before anything of this boil was seen; what earlier boils taught counts, aged by a boil. */
export function startBaseline({ altitudeWaterC, expected, learnt }: Priors): Baseline {
  const known = altitudeWaterC !== null;
  const joint = independent([
    { name: WATER, mean: altitudeWaterC ?? ANYWHERE_C, sigma: known ? ALTITUDE_SIGMA_C : ANYWHERE_SIGMA_C },
    { name: FRONT, mean: 0, sigma: FRONT_SIGMA_C_PER_H },
    ...expected,
  ]);
  if (learnt !== null) takeLearnt(joint, learnt);
  return { joint, at: null };
}

/** What was learnt of the names that are there stands in place of what is usual. */
function takeLearnt(joint: JointNormal, learnt: Learnt): void {
  const names = learnt.names.filter((name) => joint.names.includes(name));
  const known = marginal(learnt, names);
  const places = names.map((name) => joint.names.indexOf(name));
  places.forEach((i, a) => {
    joint.mean[i] = known.mean[a]!;
    places.forEach((j, b) => (joint.covariance[i]![j] = known.covariance[a]![b]!));
    const ages = names[a]!.startsWith('sap ') ? SAP_CHANGES_SHARE : PROBE_AGES_C;
    joint.covariance[i]![i] = joint.covariance[i]![i]! + ages * ages;
  });
}

/** The estimate at a later time, ms: the weather has moved the water point since, nobody knows how far. A copy. */
export function baselineAt(baseline: Baseline, t: number): JointNormal {
  const { joint, at } = baseline;
  const copy = { ...joint, mean: [...joint.mean], covariance: joint.covariance.map((row) => [...row]) };
  const hours = at === null ? 0 : Math.max(0, t - at) / HOUR_MS;
  if (hours > 0) passWeather(copy, hours);
  return copy;
}

/** What something that was seen is a measurement of. */
function sumOf(seen: Evidence): Sum {
  if (seen.kind === 'pressure') return [[WATER, 1]];
  const read: Sum = [
    [WATER, 1],
    [probeName(seen.probe), 1],
  ];
  return seen.kind === 'density' ? [...read, [sapName(seen.sap), seen.riseC]] : read;
}

/** What was seen, as a number that the estimate expects: its sum, value and standard uncertainty, °C. */
export function asMeasurement(seen: Evidence): { sum: Sum; value: number; sigma: number } {
  const value = seen.kind === 'density' ? seen.celsius - seen.riseC : seen.celsius;
  return { sum: sumOf(seen), value, sigma: seen.sigmaC };
}

/** So many standard deviations from what was expected, and something else than chance has moved it. */
const SURPRISE_SIGMAS = 3;

/**
 * Something was seen, not before what was seen last. Where it surprises, what was believed before was wrong or has
 * changed (a number typed anew, a probe that was bent): the newest then weighs most.
 */
export function see(baseline: Baseline, seen: Evidence): Baseline {
  const joint = baselineAt(baseline, seen.at);
  const { sum, value, sigma } = asMeasurement(seen);
  const surprise = value - meanOf(joint, sum);
  if (Math.abs(surprise) > SURPRISE_SIGMAS * Math.hypot(sigma, sigmaOf(joint, sum)))
    doubt(joint, seen.kind === 'pressure' ? WATER : probeName(seen.probe), surprise);
  learnFrom(joint, sum, value, sigma);
  return { joint, at: Math.max(seen.at, baseline.at ?? seen.at) };
}

function doubt(joint: JointNormal, name: string, by: number): void {
  const place = joint.names.indexOf(name);
  const row = joint.covariance[place];
  if (row !== undefined) row[place] = row[place]! + by * by;
}

/**
 * The water point moves by the front, which dies away with the time constant FRONT_HOURS and is renewed by chance: an
 * integrated Ornstein–Uhlenbeck process. Its moments are exact for any step.
 */
function passWeather(joint: JointNormal, hours: number): void {
  const w = joint.names.indexOf(WATER);
  const f = joint.names.indexOf(FRONT);
  const a = hours / FRONT_HOURS;
  const keep = Math.exp(-a);
  const carry = FRONT_HOURS * (1 - keep);
  joint.mean[w] = joint.mean[w]! + carry * joint.mean[f]!;
  joint.mean[f] = keep * joint.mean[f]!;
  const { covariance } = joint;
  // Rows, then columns: A P Aᵀ.
  covariance[w] = covariance[w]!.map((one, j) => one + carry * covariance[f]![j]!);
  covariance[f] = covariance[f]!.map((one) => keep * one);
  for (const row of covariance) {
    row[w] = row[w]! + carry * row[f]!;
    row[f] = keep * row[f]!;
  }
  const variance = FRONT_SIGMA_C_PER_H ** 2;
  const cross = variance * FRONT_HOURS * (1 - keep) ** 2;
  covariance[w]![w]! += variance * FRONT_HOURS ** 2 * (2 * a - 3 + 4 * keep - keep * keep);
  covariance[f]![f]! += variance * (1 - keep * keep);
  covariance[w]![f]! += cross;
  covariance[f]![w]! += cross;
}
