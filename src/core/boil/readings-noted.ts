// What people read off a thermometer and note: in their hand, or a probe's number in boiling water.
import { formatTyped } from '../quantities/format.ts';
import { errorVariance, shownWater, sigmasOver } from '../pan/course-hand.ts';
import { beliefOf, type Setting } from '../pan/course-time.ts';
import { HAND_READ_SIGMA_C, probeName, WATER } from '../pan/baseline.ts';
import type { Course, OtherThermometer, ReadByHand } from '../pan/course.ts';
import { type Belief, SUGAR, variance, WATER as WATER_PER_SUGAR, waterOf } from '../pan/filter/belief.ts';
import { riseFromStrength } from '../physics/sugar-solution.ts';
import { brixOfWaterPerSugar, litresOf } from '../pan/filter/liquid.ts';
import { covarianceOf, sigmaOf, type Sum } from '../pan/joint-normal.ts';
import { THICKENING_BRIX } from '../pan/pan-reading.ts';
import type { Mark } from './entries.ts';
import { isMeant } from './left-out.ts';
import { tooFast } from './hand-heat.ts';
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
  if (waterC === null) return sayNeedsWater(state, kept, mark);
  const order = state.marks.indexOf(kept);
  const zeroC = correctionC(state.water, null) - waterC;
  const read = {
    riseC: mark.celsius + zeroC,
    sigmaC: HAND_READ_SIGMA_C,
    other: otherThermometer(state, mark.pan, zeroC),
  };
  const meant = isMeant(state, kept);
  // It would be taken for an error of the thermometer, and the same typed again would then be no surprise.
  if (!meant && isLeftOut(state, kept, mark, read)) return;
  if (!meant && kept.doubt === null) sayThermometerOff(state, kept, mark, read);
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

/** Water boils nowhere cooler, °C (80 at 6000 m, ISO 2533), less what a thermometer is off at the most. */
const MAY_BOIL_C = 77.5;

/** Nobody knows at what warmth water boils here: what a reading means is asked for once, and guessed by nobody. */
function sayNeedsWater(state: BoilState, kept: KeptMark, { pan: id, celsius }: Mark & { kind: 'reading' }): void {
  const design = state.designs[id];
  const isFirst = !state.marks.some((one) => one !== kept && !one.withdrawn && one.mark.kind === 'reading');
  if (design === undefined || design.ceilingC !== null || celsius < MAY_BOIL_C || !isFirst) return;
  const sentence = `${design.name}: how strong ${formatTyped(celsius, 1)} °C is cannot be told before it is known how hot water boils here. Hold this thermometer in plain boiling water and note it, or note the air pressure or the height of the place.`;
  state.notices.push({ t: state.now, sentence });
}

/** A reading so far over the most that a pan can have boiled down to, °C, is asked about: hotter is what burns. */
const TOO_HOT_C = 0.3;
/** As far as thermometer, water point and count may be off, standard deviations. */
const FAR_SIGMAS = 2;
/** What was read longer ago is asked about no more, ms. */
const JUST_READ_MS = 120_000;

type Reading = Mark & { kind: 'reading' };

/** What can hardly be so is asked about. Gives whether it is left out until it is said again. */
function isLeftOut(state: BoilState, kept: KeptMark, mark: Reading, read: ReadByHand): boolean {
  const { around } = settingOf(state, mark.pan);
  if (state.now - kept.at > JUST_READ_MS || state.designs[mark.pan]!.ceilingC !== null) return false;
  kept.doubt = tooHot(state, mark, read) ?? tooFast(state, kept, mark, read.riseC);
  if (kept.doubt === null) return false;
  const { finish } = around.limits;
  // What shows the finish is believed by its call at once (see `takeHand`).
  const isCalled = finish.riseC !== null && read.riseC >= finish.riseC;
  const sentence = `${kept.doubt} ${isCalled ? CALLED : COUNTS_LITTLE}`;
  state.notices.push({ t: state.now, sentence });
  return !isCalled;
}

/**
 * Somebody noted 10 L of sap and reads 103 °C: one of the two is not so, and the pan may be near its end. Asked is what the
 * sugar that was noted, and the most water that can have left it, do not allow; and what it would mean if it were so.
 */
function tooHot(state: BoilState, { pan: id, celsius }: Reading, read: ReadByHand): string | null {
  const { name, shares } = state.designs[id]!;
  const setting = settingOf(state, id);
  const { course } = state.pans[id]!;
  const overC = overMostC(state, id, read);
  if (overC === null) return null;
  const known = Math.hypot(read.sigmaC, Math.sqrt(errorVariance(course, setting, read)));
  if (overC < TOO_HOT_C + FAR_SIGMAS * known) return null;
  if (sigmasOver(course, setting, read) < FAR_SIGMAS) return null;
  const noted = riseFromStrength(strengthNow(state, id), shares, pressureOf(state)) ?? 0;
  // Both as this thermometer shows them: the card has its error taken off, so a difference would not be that of the numbers seen.
  const boilsC = celsius - (read.riseC - noted);
  return `${name}: ${formatTyped(celsius, 1)} °C was read; by what was noted of it, this thermometer should show about ${boilsC.toFixed(1)} °C. ${itWouldBe(course, setting, read)}`;
}

const pressureOf = ({ water }: BoilState): number => water.pressureHpa ?? 1013.25;

/** By how much a rise is over that of the strongest which the pan can be, °C; null where nobody told what is in it. */
function overMostC(state: BoilState, id: string, { riseC }: ReadByHand): number | null {
  const { course } = state.pans[id]!;
  if (!course.told) return null;
  const most = Math.min(strongestBrix(beliefOf(course, settingOf(state, id))), STRONGEST_BRIX);
  return riseC - (riseFromStrength(most, state.designs[id]!.shares, pressureOf(state)) ?? Infinity);
}

/** A thermometer that nobody checked and that shows so much too much is spoken of, °C. */
const OFF_C = 1;

/**
 * A number that is a little too high was typed wrongly, or its thermometer is off: no single reading tells which, but
 * boiling water does. It counts, and is said once a pan, as long as that thermometer was not in boiling water.
 */
function sayThermometerOff(state: BoilState, kept: KeptMark, { pan: id, celsius }: Reading, read: ReadByHand): void {
  const { name, shares, ceilingC } = state.designs[id]!;
  const { waterC } = state.around[id]!;
  const overC = overMostC(state, id, read);
  if (waterC === null || overC === null || overC < OFF_C || ceilingC !== null || read.other !== null) return;
  if (state.now - kept.at > JUST_READ_MS) return;
  if (state.water.evidence.some((seen) => seen.kind === 'check' && seen.probe === null)) return;
  const isSaid = ({ remark, withdrawn, mark }: KeptMark): boolean =>
    remark !== null && !withdrawn && 'pan' in mark && mark.pan === id;
  if (state.marks.some(isSaid)) return;
  const trueC = waterC + (riseFromStrength(strengthNow(state, id), shares, pressureOf(state)) ?? 0);
  kept.remark = `${name}: by what was noted of it, it boils at about ${trueC.toFixed(1)} °C, and this thermometer showed ${formatTyped(celsius, 1)} °C: one of the numbers was typed wrongly, or the thermometer is off. Hold it in plain boiling water and note what it shows.`;
  state.notices.push({ t: state.now, sentence: kept.remark });
}

const CALLED =
  'To be safe it is called as if it were so: look at the pan and its thermometer now, and take the reading back if it is not.';
const COUNTS_LITTLE =
  'Until it is typed once more it does not count: look at the pan and its thermometer now, and turn the heat down if little is in it.';

/** Stronger than this published rises part, °Bx. */
const STRONGEST_BRIX = 79;

/** The strongest that a pan can be by what was noted of it and boiled away, °Bx: all water that may have left has left. */
const strongestBrix = (belief: Belief): number =>
  brixOfWaterPerSugar(waterOf(belief) * Math.exp(-FAR_SIGMAS * Math.sqrt(variance(belief, WATER_PER_SUGAR))));

/** "It would mean about 48 °Bx, with only about 0.2 L of 10.0 L left." */
function itWouldBe(course: Course, setting: Setting, read: ReadByHand): string {
  const belief = beliefOf(course, setting);
  const u = shownWater(belief, setting, read);
  const sugarKg = Math.exp(belief.x[SUGAR]!);
  const [left, there] = [litresOf(sugarKg, u), litresOf(sugarKg, waterOf(belief))];
  const brix = brixOfWaterPerSugar(u);
  return `It would mean about ${brix.toFixed(0)} °Bx, with only about ${left.toFixed(1)} L of ${there.toFixed(1)} L left.`;
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
