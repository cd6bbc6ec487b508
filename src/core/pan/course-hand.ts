// What a thermometer that was read by hand does to the course of a pan: it stands for the pan as a block of readings would.
import { type Course, disturb, type Happening, isOff, LONG_AGO_MS } from './course.ts';
import { showStrength } from './course-blocks.ts';
import { beliefOf, debtFor, type Setting } from './course-time.ts';
import { addVariance, type Belief, OFFSET, SAP, setAlone, SUGAR, variance, WATER, waterOf } from './filter/belief.ts';
import { brixOfWaterPerSugar, riseOfWater, waterPerSugar } from './filter/liquid.ts';
import { supposeWater } from './filter/start.ts';
import { finishSeen } from './finish.ts';
import { BOIL_MARGIN_C } from './phase.ts';
import { strengthFromRise } from '../physics/sugar-solution.ts';

type Hand = Extract<Happening, { what: 'hand' }>;

/** A reading so many standard deviations from what is believed says that something else is in the pan. */
const FAR_SIGMAS = 3;
/** Water and sugar are then as open as in a pan of which nobody spoke, shares (see filter/start.ts). */
const OPEN_SHARE = 0.7;
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
  if (isOff(course) || setting.design.ceilingC !== null) return;
  const belief = beliefOf(course, setting);
  if (riseC < -BOIL_MARGIN_C - sigmaC) {
    if (course.phase === 'boiling') disturb(course, course.t);
    course.debtKg = debtFor(belief, setting.around, -riseC);
    return;
  }
  course.phase = 'boiling';
  course.debtKg = 0;
  const { finish } = setting.around.limits;
  const isDone = finish.riseC !== null && riseC >= finish.riseC;
  const wasTold = course.strengthTold;
  const u = shownWater(belief, setting, riseC);
  const before = Math.log(waterOf(belief) / u);
  // Whoever reads the same twice, or reads what calls somebody to the pan, is believed before any count.
  if (wasTold && Math.abs(sigmasOver(belief, setting, one)) > FAR_SIGMAS && (one.meant || (isDone && before > 0)))
    open(course, setting, riseC);
  if (brixOfWaterPerSugar(u) < finish.brix - CLEARLY_LESS_BRIX) course.seenAt = LONG_AGO_MS;
  showStrength(course, setting, riseC, sigmaC * sigmaC);
  const after = Math.log(waterOf(belief) / u);
  // A count that had run dry swings beyond what is shown when a reading brings it back.
  if (wasTold && Math.abs(before) > FAR_OFF && after / before < -MOST_BEYOND) {
    open(course, setting, riseC);
    showStrength(course, setting, riseC, sigmaC * sigmaC);
  }
  if (isDone) finishSeen(course);
}

/**
 * Nothing that was told of the pan agrees with it: it is as strong as it shows, nobody knows how much it is, and what was
 * made of the difference before says nothing of the thermometer.
 */
function open(course: Course, setting: Setting, riseC: number): void {
  const belief = beliefOf(course, setting);
  const { offsetVariance, covariance } = course.base!;
  setAlone(belief, OFFSET, 0, offsetVariance + course.weatherVariance);
  addVariance(belief, OFFSET, SAP, covariance);
  supposeWater(belief, shownWater(belief, setting, riseC), OPEN_SHARE);
  addVariance(belief, SUGAR, SUGAR, OPEN_SHARE ** 2);
}

/** The water per sugar that the reading shows by itself. */
function shownWater({ x }: Belief, { design, around }: Setting, riseC: number): number {
  const own = (riseC - x[OFFSET]!) / (1 + x[SAP]!);
  const brix = strengthFromRise(Math.max(0, own), design.shares, around.pressureHpa ?? 1013.25) ?? STRONGEST_BRIX;
  return waterPerSugar(Math.max(THINNEST_BRIX, brix));
}

/** By how many standard deviations a rise that was read by hand, °C, known to `sigmaC`, is more than what is believed. */
export function sigmasOver(
  belief: Belief,
  { design, around }: Setting,
  { riseC, sigmaC }: Pick<Hand, 'riseC' | 'sigmaC'>,
): number {
  const u = waterOf(belief);
  const { riseC: own, slope } = riseOfWater(u, design.shares, around.pressureHpa ?? 1013.25);
  const expectedC = belief.x[OFFSET]! + (1 + belief.x[SAP]!) * own;
  const variances = sigmaC ** 2 + variance(belief, OFFSET) + (slope * u) ** 2 * variance(belief, WATER);
  return (riseC - expectedC) / Math.sqrt(variances);
}
