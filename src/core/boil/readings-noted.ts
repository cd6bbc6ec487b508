// What people read off a thermometer and note: in their hand, or a probe's number in boiling water.
import { formatTyped } from '../quantities/format.ts';
import { sigmasOver } from '../pan/course-hand.ts';
import { beliefOf } from '../pan/course-time.ts';
import { HAND_READ_SIGMA_C, probeName, WATER } from '../pan/baseline.ts';
import type { OtherThermometer, ReadByHand } from '../pan/course.ts';
import { waterOf } from '../pan/filter/belief.ts';
import { riseFromStrength } from '../physics/sugar-solution.ts';
import { brixOfWaterPerSugar } from '../pan/filter/liquid.ts';
import { covarianceOf, sigmaOf, type Sum } from '../pan/joint-normal.ts';
import { THICKENING_BRIX } from '../pan/pan-reading.ts';
import type { Mark } from './entries.ts';
import { isMeant } from './left-out.ts';
import { happenByMark } from './pours.ts';
import { settingOf } from './settings.ts';
import type { BoilState, KeptMark } from './state.ts';
import { baseOf } from './surroundings.ts';
import { checkEvidence, correctionC } from './water.ts';

/** What a reading by hand is now taken for, °C: what is known of the thermometer is taken off. */
export const takenByHand = ({ water }: BoilState, { celsius }: Mark & { kind: 'reading' }): number =>
  celsius + correctionC(water, null);

/** A thermometer read by hand; the latest one counts. */
export function readByHand(state: BoilState, mark: Mark & { kind: 'reading' }, at: number): void {
  const pan = state.pans[mark.pan];
  if (pan === undefined || (pan.byHand !== null && pan.byHand.at > at)) return;
  pan.byHand = { celsius: takenByHand(state, mark), at };
}

/** The pan is told of it: a rise as a block of readings would show it. */
export function handHappens(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'reading' }): void {
  const { waterC } = state.around[mark.pan] ?? { waterC: null };
  if (waterC === null) return;
  const order = state.marks.indexOf(kept);
  const zeroC = correctionC(state.water, null) - waterC;
  const read = {
    riseC: mark.celsius + zeroC,
    sigmaC: HAND_READ_SIGMA_C,
    other: otherThermometer(state, mark.pan, zeroC),
  };
  const meant = isMeant(state, kept);
  if (!meant) askAboutHot(state, kept, mark, read);
  const one = { t: kept.at, order, what: 'hand', key: String(order), meant, ...read } as const;
  happenByMark(state, kept, [{ pan: mark.pan, one }]);
}

/** In a pan with a probe the hand holds another thermometer, which has the water point in common with it. */
function otherThermometer(state: BoilState, pan: string, zeroC: number): OtherThermometer | null {
  if (state.panProbes[pan]!.length === 0) return null;
  const { joint } = state.water;
  const sum: Sum = [
    [WATER, 1],
    [probeName(null), 1],
  ];
  return { zeroC, variance: sigmaOf(joint, sum) ** 2, covariance: covarianceOf(joint, baseOf(state, pan), sum) };
}

/** A reading so far over what was noted of a pan makes, °C, is asked about: hotter is what burns. */
const FAR_TOO_HOT_C = 2;
/** Nor does what is believed reach up to it: standard deviations. */
const FAR_SIGMAS = 2;
/** What was read longer ago is asked about no more, ms. */
const JUST_READ_MS = 120_000;

/** Somebody noted 10 L of sap and reads 103 °C: one of the two is not so, and the pan may be near its end. */
function askAboutHot(
  state: BoilState,
  kept: KeptMark,
  { pan: id, celsius }: Mark & { kind: 'reading' },
  read: ReadByHand,
): void {
  const { name, shares } = state.designs[id]!;
  const setting = settingOf(state, id);
  if (!state.pans[id]!.course.told || state.now - kept.at > JUST_READ_MS) return;
  const noted = riseFromStrength(strengthNow(state, id), shares, state.water.pressureHpa ?? 1013.25);
  const overC = read.riseC - (noted ?? Infinity);
  if (overC < FAR_TOO_HOT_C || sigmasOver(state.pans[id]!.course, setting, read) < FAR_SIGMAS) return;
  // Both as this thermometer shows them: the card has its error taken off, so a difference would not be that of the numbers seen.
  const boilsC = celsius - overC;
  kept.doubt = `${name}: ${formatTyped(celsius, 1)} °C was read, and what was noted of it boils at ${formatTyped(boilsC, 1)} °C by the same thermometer.`;
  const sentence = `${kept.doubt} Look at the pan and its thermometer now, and note how much is in it.`;
  state.notices.push({ t: state.now, sentence });
}

/** A check that is what the pan itself reads, so far over the water point, was taken in the pan, °C. */
const SAME_AS_PAN_C = 0.4;

/** °Bx; 0 where nothing is known. */
function strengthNow(state: BoilState, id: string | null): number {
  if (id === null || state.pans[id]!.course.belief === null) return 0;
  return brixOfWaterPerSugar(waterOf(beliefOf(state.pans[id]!.course, settingOf(state, id))));
}

/** A check tells water point and thermometer; one in syrup would move every call. */
export function waterCheck(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'water-check' }): void {
  if (mark.probe === undefined) {
    kept.evidence = checkEvidence(null, mark.celsius, kept.at, wasReadInSyrup(state, mark.celsius));
    return;
  }
  const setup = state.header.probes?.find(({ id }) => id === mark.probe);
  if (setup === undefined) return;
  const id = state.probePan[mark.probe] ?? null;
  const pan = id === null || state.designs[id]?.role === 'reference' ? undefined : state.pans[id];
  const there = pan?.track.blockValues.at(-1);
  const inSyrup =
    there !== undefined && strengthNow(state, id) >= THICKENING_BRIX && Math.abs(there - mark.celsius) < SAME_AS_PAN_C;
  kept.evidence = checkEvidence(mark.probe, mark.celsius - (setup.offset_c ?? 0), kept.at, inSyrup);
}

/**
 * Whether the thermometer in the hand showed the same in a pan that is thick by what was told of it, too: of a pan that
 * nobody told of, it is the thermometer alone that says so, and it may show too much.
 */
function wasReadInSyrup(state: BoilState, celsius: number): boolean {
  const waterC = state.water.celsius;
  return Object.entries(state.pans).some(([id, { byHand, course }]) => {
    if (byHand === null || waterC === null || !(course.told || course.strengthMeasured)) return false;
    const shown = byHand.celsius - correctionC(state.water, null);
    const isHot = byHand.celsius - waterC > 2 * SAME_AS_PAN_C;
    return isHot && strengthNow(state, id) >= THICKENING_BRIX && Math.abs(shown - celsius) < SAME_AS_PAN_C;
  });
}

/** What is asked about a check that can hardly be meant. */
export function checkDoubt(mark: Mark & { kind: 'water-check' }, inSyrup: boolean): string {
  const thermometer = mark.probe === undefined ? 'thermometer' : 'probe';
  const why = inSyrup
    ? `this is what the ${thermometer} reads in its pan`
    : `${formatTyped(mark.celsius, 1)} °C is far from where water boils here`;
  return `A check in boiling water needs plain water: ${why}, so it was left out. Take the ${thermometer} out of the pan first.`;
}
