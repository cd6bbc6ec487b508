// What a thermometer that was read by hand does to the course of a pan: it stands for the pan as a block of readings would.
import {
  type Course,
  disturb,
  type Happening,
  isEmptyNoMore,
  isOff,
  LONG_AGO_MS,
  type OtherThermometer,
  type ReadByHand,
} from './course.ts';
import { showStrength } from './course-blocks.ts';
import { beliefOf, debtFor, type Setting, volumeNow } from './course-time.ts';
import {
  addVariance,
  type Belief,
  copyBelief,
  HAND,
  OFFSET,
  SAP,
  setAlone,
  setFrom,
  SUGAR,
  variance,
  WATER,
  waterOf,
} from './filter/belief.ts';
import { brixOfWaterPerSugar, HOT_VOLUME, litresOf, riseOfWater, waterPerSugar } from './filter/liquid.ts';
import type { RiseError } from './filter/see.ts';
import { supposeWater } from './filter/start.ts';
import { finishSeen } from './finish.ts';
import { BOIL_MARGIN_C } from './phase.ts';
import { endDryCount } from './ran-dry.ts';
import { strengthFromRise } from '../physics/sugar-solution.ts';

type Hand = Extract<Happening, { what: 'hand' }>;

/** A reading so many standard deviations from what is believed says that something else is in the pan. */
const FAR_SIGMAS = 3;
/** Of one that somebody stands by these are enough: by so many it was asked about (see `askAboutHot`). */
const MEANT_FAR_SIGMAS = 2;
/** Water and sugar are then as open as in a pan of which nobody spoke, shares (see filter/start.ts). */
const OPEN_SHARE = 0.7;
/** A depth that was measured stands so long against a reading that opens all else, ms (practice). */
const STICK_STANDS_MS = 20 * 60_000;
/** Less than its finish by so much a reading shows that it is not there, °Bx. */
const CLEARLY_LESS_BRIX = 1;
/** From so far off, logarithm of the water, a step ends no further beyond what is shown than by this share of it. */
const FAR_OFF = 1;
const MOST_BEYOND = 0.3;
/** Stronger than this published rises part, °Bx. */
const STRONGEST_BRIX = 79;
/** Thinner sap than this shows no strength by its rise, °Bx. */
const THINNEST_BRIX = 0.5;

/** A thermometer was read: a boil shows its strength, anything cooler owes heat. */
export function takeHand(course: Course, setting: Setting, one: Hand): void {
  const { riseC, sigmaC } = one;
  course.riseC = riseC;
  course.handAt = course.t;
  isEmptyNoMore(course);
  if (isOff(course) || setting.design.ceilingC !== null) return;
  const belief = beliefOf(course, setting);
  if (riseC < -BOIL_MARGIN_C - sigmaC) {
    if (course.phase === 'boiling') disturb(course, course.t);
    const wasUnread = course.debtKg === null;
    course.debtKg = debtFor(belief, setting.around, -riseC);
    if (wasUnread) measuredCold(course, setting, belief);
    return;
  }
  course.phase = 'boiling';
  course.debtKg = 0;
  if (one.other !== null) takeThermometer(course, belief, one.other);
  const { finish } = setting.around.limits;
  const isDone = finish.riseC !== null && riseC >= finish.riseC;
  const wasTold = course.strengthTold;
  const u = shownWater(belief, setting, one);
  if (wasTold) endDryCount(belief, u);
  const before = Math.log(waterOf(belief) / u);
  // Whoever reads the same twice, or reads what calls somebody to the pan, is believed before any count.
  const far = Math.abs(sigmasOver(course, setting, one));
  if (wasTold && (one.meant ? far > MEANT_FAR_SIGMAS : far > FAR_SIGMAS && isDone && before > 0))
    open(course, setting, one);
  if (brixOfWaterPerSugar(u) < finish.brix - CLEARLY_LESS_BRIX) course.seenAt = LONG_AGO_MS;
  const shown = { riseC, variance: sigmaC * sigmaC, stepC: 0, error: errorOf(one), isDipped: one.other === null };
  showStrength(course, setting, shown);
  const after = Math.log(waterOf(belief) / u);
  // A count that had run dry swings beyond what is shown when a reading brings it back.
  if (wasTold && Math.abs(before) > FAR_OFF && after / before < -MOST_BEYOND) {
    open(course, setting, one);
    showStrength(course, setting, shown);
  }
  if (isDone) finishSeen(course);
}

/** A depth that was measured before anybody told how warm it is was taken for that of a boil. */
function measuredCold(course: Course, setting: Setting, belief: Belief): void {
  if (course.t - course.volumeAt > STICK_STANDS_MS) return;
  const more = HOT_VOLUME / volumeNow(course, setting, belief);
  belief.x[SUGAR] = belief.x[SUGAR]! + Math.log(more);
  course.debtKg = course.debtKg! * more;
}

/** Its error is the pan's thermometer's own, or where that is a probe another one's. */
const errorOf = ({ other }: ReadByHand): RiseError => (other === null ? OFFSET : HAND);

/** Boiling water has told the thermometer this much better than the pan knows it, variances. */
const CHECKED_TIMES = 2;

/**
 * One thermometer has one error, however often it is read: it is believed from the first reading on, and goes along with
 * what is learnt of the thermometer elsewhere. Once it was checked in boiling water, that stands for what the pan supposed.
 */
function takeThermometer(course: Course, belief: Belief, other: OtherThermometer): void {
  const isChecked = course.handZeroC !== null && variance(belief, HAND) > CHECKED_TIMES * other.variance;
  if (course.handZeroC === null || isChecked) startHand(course, belief, other);
  else belief.x[HAND] = belief.x[HAND]! + other.zeroC - course.handZeroC;
  course.handZeroC = other.zeroC;
}

/** Probe and hand have the water point in common: what the one is off tells of the other. */
function startHand({ base, weatherVariance }: Course, belief: Belief, other: OtherThermometer): void {
  const share = other.covariance / (base!.offsetVariance + weatherVariance);
  setFrom(belief, HAND, OFFSET, { share, variance: Math.max(0, other.variance - share * other.covariance) });
}

/**
 * Nothing that was told of the pan agrees with it: it is as strong as it shows, nobody knows how much it is unless that was
 * measured of late, and what was made of the difference before says nothing of the thermometer.
 */
function open(course: Course, setting: Setting, one: ReadByHand): void {
  const belief = beliefOf(course, setting);
  const { offsetVariance, covariance } = course.base!;
  setAlone(belief, OFFSET, 0, offsetVariance + course.weatherVariance);
  addVariance(belief, OFFSET, SAP, covariance);
  if (one.other !== null) startHand(course, belief, one.other);
  const before = litresIn(belief);
  supposeWater(belief, shownWater(belief, setting, one), OPEN_SHARE);
  // A stick measures litres, however strong they are.
  if (course.t - course.volumeAt <= STICK_STANDS_MS)
    belief.x[SUGAR] = belief.x[SUGAR]! + Math.log(before / litresIn(belief));
  else addVariance(belief, SUGAR, SUGAR, OPEN_SHARE ** 2);
}

const litresIn = ({ x }: Belief): number => litresOf(Math.exp(x[SUGAR]!), waterOf({ x }));

/** The water per sugar that the reading shows by itself. */
export function shownWater({ x }: Belief, { design, around }: Setting, one: ReadByHand): number {
  const own = (one.riseC - x[errorOf(one)]!) / (1 + x[SAP]!);
  const brix = strengthFromRise(Math.max(0, own), design.shares, around.pressureHpa ?? 1013.25) ?? STRONGEST_BRIX;
  return waterPerSugar(Math.max(THINNEST_BRIX, brix));
}

/** How well the error of the thermometer that was read is known, water point and all, °C². */
export function errorVariance(course: Course, setting: Setting, one: ReadByHand): number {
  return variance(heldBeside(course, setting, one), errorOf(one));
}

/** What is believed of the pan, with the thermometer in the hand where that was not read in it yet. */
function heldBeside(course: Course, setting: Setting, one: ReadByHand): Belief {
  const belief = copyBelief(beliefOf(course, setting));
  if (one.other !== null && course.handZeroC === null) startHand(course, belief, one.other);
  return belief;
}

/** By how many standard deviations a rise that was read by hand is more than what is believed of the pan. */
export function sigmasOver(course: Course, setting: Setting, one: ReadByHand): number {
  const { design, around } = setting;
  const belief = heldBeside(course, setting, one);
  const error = errorOf(one);
  const u = waterOf(belief);
  const { riseC: own, slope } = riseOfWater(u, design.shares, around.pressureHpa ?? 1013.25);
  const expectedC = belief.x[error]! + (1 + belief.x[SAP]!) * own;
  const variances = one.sigmaC ** 2 + variance(belief, error) + (slope * u) ** 2 * variance(belief, WATER);
  return (one.riseC - expectedC) / Math.sqrt(variances);
}
