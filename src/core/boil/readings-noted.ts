// What people read off a thermometer and note: in their hand, or a probe's number in boiling water.
import { THICKENING_BRIX } from '../pan/pan-reading.ts';
import type { Mark } from './entries.ts';
import { question, saidAgain } from './questioned.ts';
import type { BoilState, KeptMark } from './state.ts';
import { checkEvidence, correctionC } from './water.ts';

/** A thermometer read by hand: what is known of it is taken off. The latest one counts. */
export function readByHand(state: BoilState, mark: Mark & { kind: 'reading' }, at: number): void {
  const pan = state.pans[mark.pan];
  if (pan === undefined || (pan.byHand !== null && pan.byHand.at > at)) return;
  pan.byHand = { celsius: mark.celsius + correctionC(state.water, null), at };
}

/** A boiling check this far from the water point is no plain boiling water, °C: unchecked probes are off by 2 at most. */
const WILD_CHECK_C = 2.5;
/** A check that is what the pan itself reads, so far over the water point, was taken in the pan, °C. */
const SAME_AS_PAN_C = 0.4;

/** A check tells water point and probe; one in syrup would move every call, so it is questioned. */
export function waterCheck(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'water-check' }, t: number): void {
  const setup = state.header.probes?.find(({ id }) => id === mark.probe);
  if (setup === undefined) return;
  const id = state.probePan[mark.probe] ?? null;
  const pan = id === null || state.designs[id]?.role === 'reference' ? undefined : state.pans[id];
  const there = pan?.track.blockValues.at(-1);
  const inThePan =
    there !== undefined && (pan?.brix ?? 0) >= THICKENING_BRIX && Math.abs(there - mark.celsius) < SAME_AS_PAN_C;
  const wild = state.water.celsius !== null && Math.abs(mark.celsius - state.water.celsius) > WILD_CHECK_C;
  if (inThePan || (wild && !saidAgain(state, kept, (other) => apart(mark, other.mark)))) {
    const why = inThePan
      ? 'this is what the probe reads in its pan'
      : `${mark.celsius.toFixed(1)} °C is far from where water boils here`;
    question(
      state,
      kept,
      t,
      `A check in boiling water needs plain water: ${why}, so it was left out. Take the probe out of the pan first.`,
    );
    return;
  }
  kept.evidence = checkEvidence(mark.probe, mark.celsius - (setup.offset_c ?? 0), kept.at);
}

/** How far two checks of the same probe are apart, °C; Infinity where the other is something else. */
function apart(mark: Mark & { kind: 'water-check' }, other: Mark): number {
  return other.kind === 'water-check' && other.probe === mark.probe ? mark.celsius - other.celsius : Infinity;
}
