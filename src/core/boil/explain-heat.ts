// What a pan's temperature, rise, rate and strength rest on: its probe, the water point, the sap and the model.
import { headSigmaC } from '../physics/head.ts';
import { strengthFromRise } from '../physics/sugar-solution.ts';
import { probeName } from '../pan/baseline.ts';
import { sigmaOf } from '../pan/joint-normal.ts';
import { sugarRiseC } from '../pan/pan-state.ts';
import { isByInstrument, isByPour } from '../pan/pan-reading.ts';
import type { PanReading } from '../pan/reading.ts';
import type { Measured, Origin } from '../quantities/measured.ts';
import { Z80 } from '../quantities/spread.ts';
import { explainRise, explainSap } from './baseline-view.ts';
import { lastVolume } from './explain-contents.ts';
import { bare, type Bare, type From, NOT_KNOWN, ranged, scaled } from './explanation.ts';
import type { BoilState } from './state.ts';
import { leadOf } from './tip-levels.ts';

/** The probe that a pan is read by, or null. */
export const probeOf = (state: BoilState, pan: string): string | null => leadOf(state, pan);

/** When the pan's thermometer was last heard or read by hand, ms; null for never. */
export function heardAt(state: BoilState, pan: string): number | null {
  const probe = probeOf(state, pan);
  if (probe !== null) return state.probes[probe]?.heardAt ?? null;
  const read = state.marks.filter(({ mark, withdrawn }) => mark.kind === 'reading' && mark.pan === pan && !withdrawn);
  return read.length === 0 ? null : Math.max(...read.map(({ at }) => at));
}

/** What tells a probe's own error, and how sure that error is, °C. */
function probeError(state: BoilState, probe: string | null): Origin {
  const name = probeName(probe);
  const sigma = sigmaOf(state.water.joint, [[name, 1]]);
  const of = probe ?? undefined;
  const seen = state.water.evidence.findLast((one) => one.kind !== 'pressure' && one.probe === probe);
  if (seen !== undefined) {
    const kinds = { check: 'boiling-check', pot: 'reference-pot', density: 'density-reading', pressure: 'pressure' };
    return { kind: kinds[seen.kind] as Origin['kind'], at: seen.at, sigma, of };
  }
  const earlier = state.header.learnt?.names.includes(name) === true;
  return { kind: earlier ? 'earlier-boil' : 'assumed', at: null, sigma, of };
}

/** What is known of the reading itself where there is no rise yet, °C. */
const PLAIN_NOISE_C = 0.05;

function ownPart(state: BoilState, pan: string): Origin {
  const probe = probeOf(state, pan);
  const noise = explainRise(state, pan)?.origins[0]?.sigma ?? PLAIN_NOISE_C;
  const kind = probe === null ? 'hand-reading' : 'probe';
  return { kind, at: heardAt(state, pan), sigma: noise, of: probe ?? undefined };
}

/** Temperature in the pan, °C. */
export function explainTemperature(state: BoilState, reading: PanReading): Bare {
  const own = ownPart(state, reading.pan);
  const error = probeError(state, probeOf(state, reading.pan));
  return bare(reading.temperature_c, Math.hypot(own.sigma, error.sigma), [own, error]);
}

/** Rise over the water point now, °C. */
export function explainRiseNow(state: BoilState, reading: PanReading): Bare {
  const rise = explainRise(state, reading.pan);
  if (rise === null) return bare(reading.rise_c, state.around[reading.pan]!.waterSigmaC, []);
  return bare(reading.rise_c, rise.sigma, rise.origins);
}

/** The window of the rate is chosen so that it is sure to this, °C/min, where it is long enough. */
const SURE_C_PER_MIN = 0.02;
const LONGEST_WINDOW_MS = 480_000;

/** Rate of rise, °C/min: the standard error of a straight line through n evenly spaced points is σ √12 / (T √n). */
export function explainRate(state: BoilState, reading: PanReading): Bare {
  const { track, course } = state.pans[reading.pan]!;
  const { disturbedAt, boilingFrom } = course;
  const from = Math.max(disturbedAt, boilingFrom, (track.blockTimes.at(-1) ?? 0) - LONGEST_WINDOW_MS);
  const times = track.blockTimes.filter((t) => t >= from);
  const minutes = Math.max(0.1, ((times.at(-1) ?? 0) - (times[0] ?? 0)) / 60_000);
  const error = ((track.noise ?? 0.1) * Math.sqrt(12)) / (minutes * Math.sqrt(Math.max(1, times.length)));
  const sigma = Math.max(SURE_C_PER_MIN, error);
  return bare(reading.rate_c_per_min, sigma, [{ ...ownPart(state, reading.pan), sigma }]);
}

/** What tells how a sap's rise differs from that of its sugars; null where nothing of this boil or an earlier one does. */
export function sapFrom(state: BoilState, pan: string): From | null {
  const taught = explainSap(state, pan)?.origins[0];
  return taught === undefined ? null : { kind: taught.kind, at: taught.at };
}

/** How sure the sap is, in °C at a rise of so many °C. */
export function sapPart(state: BoilState, pan: string, riseC: number): Origin {
  const { kind, at } = sapFrom(state, pan) ?? { kind: 'sugar-model', at: null };
  return { kind, at, sigma: state.around[pan]!.sapShareSigma * Math.max(0, riseC) };
}

/** Strength, °Bx: by the rise, below a boil by the last density reading, and where no thermometer tells by what was poured. */
export function explainStrength(state: BoilState, reading: PanReading): Bare {
  const { brix, brix_low: low, brix_high: high, pan } = reading;
  if (brix === null) return NOT_KNOWN;
  const isMeasured = state.designs[pan]!.ceilingC !== null || isByInstrument(state.pans[pan]!.course);
  if (isMeasured) return ranged(brix, low, high, [densityPart(state, pan)]);
  if (isByPour(state.pans[pan]!.course) || heardAt(state, pan) === null) {
    const sigma = low === null || high === null ? 0 : (high - low) / (2 * Z80);
    return ranged(brix, low, high, [{ kind: 'volume', at: lastVolume(state, pan)?.at ?? null, sigma }]);
  }
  const rise = explainRise(state, pan);
  if (rise === null) return ranged(brix, low, high, []);
  return ranged(brix, low, high, scaled(risePartsC(state, reading, rise), brixPerC(state, pan, rise)));
}

/** The parts of a strength as °C of rise. */
function risePartsC(state: BoilState, { pan, brix, depth_mm: mm }: PanReading, rise: Measured): Origin[] {
  const head = headSigmaC(mm, brix ?? 0, state.around[pan]!.pressureHpa ?? 1013.25);
  const parts = [...rise.origins, sapPart(state, pan, rise.value)];
  return head === null ? parts : [...parts, { kind: 'head', at: null, sigma: head }];
}

/** How far a strength moves with its rise, °Bx/°C. */
function brixPerC(state: BoilState, pan: string, rise: Measured): number {
  const around = state.around[pan]!;
  const at = (riseC: number): number =>
    strengthFromRise(
      Math.max(0, sugarRiseC(around, riseC)),
      state.designs[pan]!.shares,
      around.pressureHpa ?? 1013.25,
    ) ?? 0;
  return (at(rise.value + 0.1) - at(rise.value - 0.1)) / 0.2;
}

function densityPart(state: BoilState, pan: string): Origin {
  const last = state.marks.findLast(({ mark, withdrawn }) => mark.kind === 'density' && mark.pan === pan && !withdrawn);
  return { kind: 'density-reading', at: last?.at ?? null, sigma: 1 };
}
