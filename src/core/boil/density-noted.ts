// What a density reading teaches: how strong the pan is, and by how much its sap and its probe are off.
import { addPoint, waterPerSugar } from '../pan/evaporation-line.ts';
import { beginAnew, sugarRiseC } from '../pan/pan-state.ts';
import { readInstrument } from '../physics/instruments.ts';
import { riseFromStrength, strengthFromRise } from '../physics/sugar-solution.ts';
import { asMeasurement, type Evidence } from '../pan/baseline.ts';
import { meanOf, sigmaOf } from '../pan/joint-normal.ts';
import { median } from '../pan/robust-statistics.ts';
import { sapKey } from './learnt.ts';
import { baseOf } from './surroundings.ts';
import { question, saidAgain } from './questioned.ts';
import { correctionC } from './water.ts';
import type { Mark, SugarShares } from './entries.ts';
import type { BoilState, KeptMark } from './state.ts';

/** An instrument further than this from the probe is questioned, not believed, °Bx; or so many standard deviations. */
const WILD_BRIX = 6;
const WILD_SIGMAS = 4;
/** The pan's thermometer at the time of a reading: noise, head, and a sample that is not quite the pan, °C (common practice). */
const PAN_SIGMA_C = 0.08;
/** Which of the pan's blocks of readings goes with a density reading, ms. */
const SAME_TIME_MS = 90_000;
/** A density reading teaches the sap and the probe, unless it can hardly be meant. */
export function density(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'density' }, t: number): void {
  const pan = state.pans[mark.pan];
  const design = state.designs[mark.pan];
  const read = design === undefined ? null : readInstrument(mark, design.shares);
  if (pan === undefined || design === undefined || read === null || read.brix <= 0) return;
  const { brix } = read;
  const before = pan.densityBrix;
  pan.densityBrix = brix;
  if (design.ceilingC !== null) {
    addPoint(pan.line, waterPerSugar(brix), (100 / (brix * brix)) * read.sigma);
    if (brix >= design.finishBrix) pan.reachedFinish = true;
    return;
  }
  const evidence = densityEvidence(state, mark.pan, read, kept.at);
  if (evidence === null) return;
  const { sum, value, sigma } = asMeasurement(evidence);
  const off = value - meanOf(state.water.joint, sum);
  const wild = Math.abs(off) > WILD_SIGMAS * Math.hypot(sigma, sigmaOf(state.water.joint, sum));
  const saidBrix = strengthOfRise(state, mark.pan, evidence.celsius);
  if (
    (wild || Math.abs(brix - (saidBrix ?? brix)) > WILD_BRIX) &&
    !saidAgain(state, kept, (other) => apart(mark, other.mark, design.shares))
  ) {
    const probe = saidBrix === null ? 'the probe something else' : `the probe ${saidBrix.toFixed(1)}`;
    pan.densityBrix = before;
    question(
      state,
      kept,
      t,
      `${design.name}: the instrument said ${brix.toFixed(1)} °Bx and ${probe}; it was left out. Please read it once more: the same again counts.`,
    );
    return;
  }
  kept.evidence = evidence;
  beginAnew(pan);
}

/** What an instrument's strength says against the thermometer of its pan at that time (ms); null where there is none to compare. */
function densityEvidence(
  state: BoilState,
  id: string,
  instrument: { brix: number; sigma: number },
  at: number,
): (Evidence & { kind: 'density' }) | null {
  const { shares } = state.designs[id]!;
  const { brix } = instrument;
  const pressure = state.water.pressureHpa ?? 1013.25;
  const riseC = riseFromStrength(brix, shares, pressure);
  const nearby = riseFromStrength(Math.max(0, brix - 1), shares, pressure);
  const read = temperatureAt(state, id, at);
  if (riseC === null || nearby === null || read === null) return null;
  const sigmaC = Math.hypot((riseC - nearby) * instrument.sigma, read.sigmaC);
  return {
    kind: 'density',
    at,
    probe: read.probe,
    sap: sapKey(setupOf(state, id)?.sap),
    celsius: read.celsius,
    riseC,
    sigmaC,
  };
}

const setupOf = (state: BoilState, id: string) => state.header.pans?.find((pan) => pan.id === id);

/** The bare number of the thermometer in a boiling pan at a time (ms). */
function temperatureAt(
  state: BoilState,
  id: string,
  at: number,
): { probe: string | null; celsius: number; sigmaC: number } | null {
  const pan = state.pans[id]!;
  const probe = state.panProbes[id]![0];
  if (probe === undefined) {
    const { byHand } = pan;
    if (byHand === null || Math.abs(byHand.at - at) > SAME_TIME_MS) return null;
    return { probe: null, celsius: byHand.celsius - correctionC(state.water, null), sigmaC: HAND_READ_SIGMA_C };
  }
  const { blockTimes, blockValues } = pan.track;
  const near = blockTimes.flatMap((t, i) => (Math.abs(t - at) <= SAME_TIME_MS / 3 ? [blockValues[i]!] : []));
  const latest =
    near.length > 0 ? near : blockTimes.flatMap((t, i) => (Math.abs(t - at) <= SAME_TIME_MS ? [blockValues[i]!] : []));
  if (latest.length === 0 || pan.phase !== 'boiling') return null;
  return { probe, celsius: median(latest) - state.corrections[probe]!, sigmaC: PAN_SIGMA_C };
}

/** A dial is read to about this, °C (common practice). */
const HAND_READ_SIGMA_C = 0.3;

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

/** How far two density readings of the same pan are apart, °Bx; Infinity where the other is something else. */
function apart(mark: Mark & { kind: 'density' }, other: Mark, shares: SugarShares): number {
  if (other.kind !== 'density' || other.pan !== mark.pan) return Infinity;
  const [one, two] = [readInstrument(mark, shares), readInstrument(other, shares)];
  return one === null || two === null ? Infinity : one.brix - two.brix;
}
