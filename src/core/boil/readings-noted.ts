// What people read off a thermometer and note: in their hand, or a probe's number in boiling water.
import { THICKENING_BRIX } from '../pan/pan-reading.ts';
import type { Mark } from './entries.ts';
import type { BoilState, KeptMark } from './state.ts';
import { checkEvidence, correctionC } from './water.ts';

/** A thermometer read by hand: what is known of it is taken off. The latest one counts. */
export function readByHand(state: BoilState, mark: Mark & { kind: 'reading' }, at: number): void {
  const pan = state.pans[mark.pan];
  if (pan === undefined || (pan.byHand !== null && pan.byHand.at > at)) return;
  pan.byHand = { celsius: mark.celsius + correctionC(state.water, null), at };
}

/** A check that is what the pan itself reads, so far over the water point, was taken in the pan, °C. */
const SAME_AS_PAN_C = 0.4;

/** A check tells water point and probe; one in syrup would move every call. */
export function waterCheck(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'water-check' }): void {
  const setup = state.header.probes?.find(({ id }) => id === mark.probe);
  if (setup === undefined) return;
  const id = state.probePan[mark.probe] ?? null;
  const pan = id === null || state.designs[id]?.role === 'reference' ? undefined : state.pans[id];
  const there = pan?.track.blockValues.at(-1);
  const inSyrup =
    there !== undefined && (pan?.brix ?? 0) >= THICKENING_BRIX && Math.abs(there - mark.celsius) < SAME_AS_PAN_C;
  kept.evidence = checkEvidence(mark.probe, mark.celsius - (setup.offset_c ?? 0), kept.at, inSyrup);
}

/** What is asked about a check that can hardly be meant. */
export function checkDoubt(mark: Mark & { kind: 'water-check' }, inSyrup: boolean): string {
  const why = inSyrup
    ? 'this is what the probe reads in its pan'
    : `${mark.celsius.toFixed(1)} °C is far from where water boils here`;
  return `A check in boiling water needs plain water: ${why}, so it was left out. Take the probe out of the pan first.`;
}
