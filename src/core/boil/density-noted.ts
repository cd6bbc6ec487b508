// What a density reading teaches: how strong the pan is, and by how much its sap and its probe are off.
import { sugarRiseC } from '../pan/pan-state.ts';
import { readInstrument } from '../physics/instruments.ts';
import { riseFromStrength, strengthFromRise } from '../physics/sugar-solution.ts';
import { asMeasurement, baselineAt, type DensityEvidence, HAND_READ_SIGMA_C } from '../pan/baseline.ts';
import { meanOf } from '../pan/joint-normal.ts';
import { median } from '../pan/robust-statistics.ts';
import { sapKey } from './sap-key.ts';
import { isMeant } from './left-out.ts';
import { happenByMark } from './pours.ts';
import { isWild } from './questioned.ts';
import { baseOf, ownNumber } from './surroundings.ts';
import { leadOf } from './tip-levels.ts';
import { correctionC } from './water.ts';
import type { Mark } from './entries.ts';
import type { BoilState, KeptMark } from './state.ts';

/** Nobody boils on so far over the finish that was chosen, °Bx: a typing error rather (76 for 67). */
const TOO_STRONG_BRIX = 5;
/** The pan's thermometer at the time of a reading: noise, head, and a sample that is not quite the pan, °C (common practice). */
const PAN_SIGMA_C = 0.08;
/** Which of the pan's blocks of readings goes with a density reading, ms. */
const SAME_TIME_MS = 90_000;
/** A density reading teaches the sap and the probe; below a boil it is the pan's strength. */
export function density(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'density' }): void {
  const pan = state.pans[mark.pan];
  const design = state.designs[mark.pan];
  const read = design === undefined ? null : readInstrument(mark, design.shares);
  if (pan === undefined || design === undefined || read === null || read.brix <= 0) return;
  const seen = design.ceilingC === null ? densityEvidence(state, mark.pan, read, kept.at) : null;
  const order = state.marks.indexOf(kept);
  const meant = isMeant(state, kept);
  // Whoever insists on the instrument against what was read by hand speaks of the pan: no thermometer is off by so much.
  const evidence = seen !== null && meant && seen.probe === null && missC(state, seen) > MOST_OFF_C ? null : seen;
  kept.evidence = evidence;
  const wild = evidence !== null && !meant && isWild(evidence, baselineAt(state.water.seen, kept.at), [], false);
  const agrees = evidence !== null && !wild;
  kept.doubt =
    evidence === null || agrees
      ? `${design.name}: ${read.brix.toFixed(1)} °Bx is far from what went in and boiled away.`
      : densityDoubt(state, evidence);
  // What the reading says of probe and sap reaches the pan through its rise as well: each way carries half.
  const sigmaBrix = Math.hypot(read.sigma, SAMPLE_SIGMA_BRIX) * (kept.evidence === null ? 1 : Math.SQRT2);
  const one = {
    t: kept.at,
    order,
    what: 'strength' as const,
    key: String(order),
    brix: read.brix,
    sigmaBrix,
    // Instrument and thermometer together go before a count of what went in.
    meant: meant || agrees,
    wild,
    doubted: false,
  };
  happenByMark(state, kept, [{ pan: mark.pan, one }]);
}

/** A thermometer in the hand is off by so much at the most, °C (practice: three times its usual error). */
const MOST_OFF_C = 2.5;

/** How far a density lies from what is expected of the thermometer, °C. */
function missC(state: BoilState, seen: DensityEvidence): number {
  const { sum, value } = asMeasurement(seen);
  return Math.abs(value - meanOf(baselineAt(state.water.seen, seen.at), sum));
}

/** A sample is not quite the pan: it steams and cools while it is taken, °Bx (common practice). */
const SAMPLE_SIGMA_BRIX = 0.3;

/** What an instrument's strength says against the thermometer of its pan at that time (ms); null where there is none to compare. */
function densityEvidence(
  state: BoilState,
  id: string,
  { brix, sigma }: { brix: number; sigma: number },
  at: number,
): DensityEvidence | null {
  const { shares, finishBrix } = state.designs[id]!;
  const pressure = state.water.pressureHpa ?? 1013.25;
  const riseC = riseFromStrength(brix, shares, pressure);
  const nearby = riseFromStrength(Math.max(0, brix - 1), shares, pressure);
  const read = temperatureAt(state, id, at);
  if (riseC === null || nearby === null || read === null) return null;
  const cPerBrix = riseC - nearby;
  return {
    kind: 'density',
    at,
    pan: id,
    probe: read.probe,
    sap: sapKey(setupOf(state, id)?.sap),
    celsius: read.celsius,
    brix,
    riseC,
    cPerBrix,
    sigmaC: Math.hypot(cPerBrix * sigma, read.sigmaC),
    tooStrong: brix > finishBrix + TOO_STRONG_BRIX,
  };
}

/** What is asked about a density reading that can hardly be meant. */
function densityDoubt(state: BoilState, seen: DensityEvidence): string {
  const said = strengthOfRise(state, seen.pan, seen.celsius);
  const what = seen.probe === null ? 'the thermometer' : 'the probe';
  const { name } = state.designs[seen.pan]!;
  return `${name}: the instrument said ${seen.brix.toFixed(1)} °Bx and ${what} ${said === null ? 'something else' : `${said.toFixed(1)} °Bx`}.`;
}

const setupOf = (state: BoilState, id: string) => state.header.pans?.find((pan) => pan.id === id);

/** The bare number of the thermometer in a boiling pan at a time (ms). */
function temperatureAt(
  state: BoilState,
  id: string,
  at: number,
): { probe: string | null; celsius: number; sigmaC: number } | null {
  const pan = state.pans[id]!;
  const probe = leadOf(state, id);
  if (probe === null) {
    const { byHand } = pan;
    if (byHand === null || Math.abs(byHand.at - at) > SAME_TIME_MS) return null;
    // Further under boiling water than any thermometer is off, it does not boil, and its warmth says nothing of its strength.
    if (byHand.celsius < (state.around[id]!.waterC ?? -Infinity) - MOST_OFF_C) return null;
    return { probe: null, celsius: byHand.celsius - correctionC(state.water, null), sigmaC: HAND_READ_SIGMA_C };
  }
  const { blockTimes, blockValues } = pan.track;
  const near = blockTimes.flatMap((t, i) => (Math.abs(t - at) <= SAME_TIME_MS / 3 ? [blockValues[i]!] : []));
  const latest =
    near.length > 0 ? near : blockTimes.flatMap((t, i) => (Math.abs(t - at) <= SAME_TIME_MS ? [blockValues[i]!] : []));
  if (latest.length === 0 || pan.course.phase !== 'boiling') return null;
  return { probe, celsius: ownNumber(state, probe, median(latest)), sigmaC: PAN_SIGMA_C };
}

/** The strength that the thermometer's bare number means now, °Bx. */
function strengthOfRise(state: BoilState, id: string, bareCelsius: number): number | null {
  const around = state.around[id]!;
  const rise = bareCelsius - meanOf(state.water.joint, baseOf(state, id));
  return strengthFromRise(
    sugarRiseC(around, Math.max(0, rise)),
    state.designs[id]!.shares,
    around.pressureHpa ?? 1013.25,
  );
}
