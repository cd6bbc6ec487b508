// What people read off instruments and note: density, a thermometer in the hand, a check in boiling water.
import { addPoint, waterPerSugar } from '../pan/evaporation-line.ts';
import { THICKENING_BRIX } from '../pan/pan-reading.ts';
import { beginAnew, type PanModel } from '../pan/pan-state.ts';
import {
  brixFromBaume,
  brixFromSpecificGravity,
  trueBrixFromHydrometer,
  trueBrixFromRefractometer,
} from '../physics/instruments.ts';
import { riseFromStrength } from '../physics/sugar-solution.ts';
import type { Mark } from './entries.ts';
import type { BoilState, KeptMark } from './state.ts';

/** True strength that an instrument's reading means, °Bx; null when it is out of range. */
export function strengthOfDensity(mark: Mark & { kind: 'density' }): number | null {
  const read =
    mark.brix ??
    (mark.baume === undefined ? null : brixFromBaume(mark.baume)) ??
    (mark.sg === undefined ? null : brixFromSpecificGravity(mark.sg));
  if (read === null) return null;
  if (mark.instrument === 'refractometer') {
    const reference = mark.reference_celsius ?? 20;
    return trueBrixFromRefractometer({
      readingBrix: read,
      sampleCelsius: mark.celsius ?? reference,
      compensated: mark.compensated ?? false,
    });
  }
  const reference = mark.reference_celsius ?? 15.56;
  return trueBrixFromHydrometer({
    readingBrix: read,
    sampleCelsius: mark.celsius ?? reference,
    referenceCelsius: reference,
  });
}

/** An instrument further than this from the probe is questioned, not believed, °Bx. */
const WILD_BRIX = 6;
/** An instrument's own spread, as water per sugar is built from it, °Bx. */
const INSTRUMENT_BRIX = 0.5;
/** A density typed later than this after it was taken says nothing of the rise now, ms. */
const CORRECTS_WITHIN_MS = 10 * 60_000;

export function density(state: BoilState, mark: Mark & { kind: 'density' }, at: number, t: number): void {
  const pan = state.pans[mark.pan];
  const design = state.designs[mark.pan];
  const brix = strengthOfDensity(mark);
  if (pan === undefined || design === undefined || brix === null || brix <= 0) return;
  pan.densityBrix = brix;
  if (design.ceilingC !== null) {
    addPoint(pan.line, waterPerSugar(brix), (100 / (brix * brix)) * INSTRUMENT_BRIX);
    if (brix >= design.finishBrix) pan.reachedFinish = true;
    return;
  }
  if (pan.brix === null || pan.riseC === null || t - at > CORRECTS_WITHIN_MS) return;
  if (Math.abs(brix - pan.brix) > WILD_BRIX) {
    const sentence = `${design.name}: the instrument said ${brix.toFixed(1)} °Bx and the probe ${pan.brix.toFixed(1)}; please read it once more.`;
    state.notices.push({ t, sentence });
    return;
  }
  const pressure = state.water.pressureHpa ?? 1013.25;
  const meant = riseFromStrength(brix, design.shares, pressure);
  const said = riseFromStrength(pan.brix, design.shares, pressure);
  if (meant === null || said === null) return;
  pan.riseCorrectionC += meant - said;
  beginAnew(pan);
  pan.brix = brix;
}

export function readByHand(pan: PanModel | undefined, celsius: number, at: number): void {
  if (pan === undefined || (pan.byHand !== null && pan.byHand.at > at)) return;
  pan.byHand = { celsius, at };
}

/** A boiling check this far from the water point is no plain boiling water, °C: unchecked probes are off by 2 at most. */
const WILD_CHECK_C = 2.5;
/** A check that is what the pan itself reads, so far over the water point, was taken in the pan, °C. */
const SAME_AS_PAN_C = 0.4;

/** A check in syrup would move the water point up and every call with it: it is questioned, and acts on nothing. */
export function questionCheck(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'water-check' }, t: number): void {
  const id = state.probePan[mark.probe] ?? null;
  const pan = id === null || state.designs[id]?.role === 'reference' ? undefined : state.pans[id];
  const there = pan?.track.blockValues.at(-1);
  const inThePan =
    there !== undefined && (pan?.brix ?? 0) >= THICKENING_BRIX && Math.abs(there - mark.celsius) < SAME_AS_PAN_C;
  const wild = state.water.celsius !== null && Math.abs(mark.celsius - state.water.celsius) > WILD_CHECK_C;
  if (!inThePan && !wild) return;
  kept.withdrawn = true;
  const why = inThePan
    ? 'this is what the probe reads in its pan'
    : `${mark.celsius.toFixed(1)} °C is far from where water boils here`;
  const sentence = `A check in boiling water needs plain water: ${why}, so it was left out. Take the probe out of the pan first.`;
  state.notices.push({ t, sentence });
}
