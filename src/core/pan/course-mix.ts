// Pours, draw-offs and transfers in the course of a pan: the belief changes, and the change is remembered, so that it can be taken back.
import { type Added, type Course, disturb, LONG_AGO_MS, type Moved } from './course.ts';
import { beliefOf, COLD_C, type Setting } from './course-time.ts';
import { finishIsOver } from './finish.ts';
import { type Belief, SUGAR, variance, WATER, waterOf } from './filter/belief.ts';
import { brixOfWaterPerSugar, massOfLitres, steamForWarming, waterPerSugar } from './filter/liquid.ts';
import { fillAnew, massShareOf, MOST_TAKEN, type Poured, pourIn, takeOut } from './filter/mix.ts';
import { seeWater } from './filter/see.ts';
import { supposeWater } from './filter/start.ts';

/** Litres are noted to about this share (common practice). */
export const LITRES_SHARE = 0.08;
/** Strengths of sap are typed to these shares of their own and in common; a guess of one to that (trade: 1–5, typically 2). */
const TYPED_OWN_SHARE = 0.04;
const TYPED_SHARED_SHARE = 0.06;
const GUESSED_SHARE = 0.4;
/** A pour that nobody measured: a jug or a pot of it, L. */
export const UNKNOWN_LITRES = 3;
const UNKNOWN_SHARE = 1;
/** A strength that is said of what is drawn off is known to about this, °Bx. */
const DRAWN_BRIX_SIGMA = 1;
const DOUBTED_SIGMAS = 4;
/** Water known worse than this, standard deviation of its logarithm, is any strength: of a count that ran dry as well. */
const ANY_STRENGTH = 1;

export interface PourNoted {
  litres: number | null;
  share?: number;
  brix: number;
  celsius: number;
  guessed: boolean;
}

/** Somebody poured in. Gives what that added. */
export function notePour(course: Course, setting: Setting, pour: PourNoted): Added {
  const known = pour.litres !== null;
  beginPour(course);
  return put(
    course,
    setting,
    {
      massKg: massOfLitres(pour.litres ?? UNKNOWN_LITRES, pour.brix),
      brix: pour.brix,
      massShare: pour.share ?? (known ? LITRES_SHARE : UNKNOWN_SHARE),
      brixShare: pour.guessed ? 0 : TYPED_OWN_SHARE,
      brixSharedShare: pour.guessed ? GUESSED_SHARE : TYPED_SHARED_SHARE,
    },
    pour.celsius,
  );
}

/** What came out of another pan; null where nobody knows what that held. */
export function noteReceived(course: Course, setting: Setting, moved: Moved | null): Added {
  const reached = moved === null || moved.inDoubt ? finishOf(course) : null;
  const added = received(course, setting, moved);
  if (reached === null) return added;
  // What nobody knows the strength of ends no finish until something shows it.
  Object.assign(course, reached);
  course.inDoubt = true;
  return added;
}

const finishOf = ({ reachedFinish, reachedPast }: Course) => ({ reachedFinish, reachedPast });

function received(course: Course, setting: Setting, moved: Moved | null): Added {
  if (moved === null) return notePour(course, setting, { litres: null, brix: 10, celsius: 90, guessed: true });
  beginPour(course);
  const massKg = moved.sugarKg + moved.waterKg;
  if (massKg <= 0) return { sugarKg: 0, waterKg: 0 };
  const brix = (100 * moved.sugarKg) / massKg;
  const { massShare, brixShare } = moved;
  course.received = true;
  return put(course, setting, { massKg, brix, massShare, brixShare, brixSharedShare: 0 }, moved.celsius);
}

/** A pour that was only seen: the pan has swallowed its cold already. */
export function pourIntoAll(
  course: Course,
  setting: Setting,
  pour: { litres: number; share: number; brix: number },
): Added {
  const massKg = massOfLitres(pour.litres, pour.brix);
  const poured: Poured = {
    massKg,
    brix: pour.brix,
    massShare: pour.share,
    brixShare: 0,
    brixSharedShare: GUESSED_SHARE,
  };
  pourIn(beliefOf(course, setting), poured);
  finishIsOver(course);
  return addedBy(massKg, pour.brix);
}

const addedBy = (massKg: number, brix: number): Added => ({
  sugarKg: (massKg * brix) / 100,
  waterKg: massKg * (1 - brix / 100),
});

function beginPour(course: Course): void {
  if (course.t > course.disturbedAt) disturb(course, course.t);
  finishIsOver(course);
  course.pouredAt = Math.max(course.pouredAt, course.t);
}

function put(course: Course, setting: Setting, poured: Poured, celsius: number): Added {
  const wasEmpty = course.emptied || (!course.told && course.phase === 'cold');
  const boilsAt = setting.around.waterC ?? 100;
  const belief = beliefOf(course, setting);
  // Whoever measured how strong it is and then tells how much it is speaks of the same sap.
  const measured = wasEmpty && course.strengthMeasured ? { u: waterOf(belief), v: variance(belief, WATER) } : null;
  const mix = wasEmpty ? fillAnew : pourIn;
  mix(belief, poured);
  if (measured !== null) supposeWater(belief, measured.u, Math.sqrt(measured.v));
  const owed = poured.massKg * steamForWarming(poured.brix, celsius, boilsAt);
  course.debtKg = wasEmpty ? owed : course.debtKg === null ? null : course.debtKg + owed;
  if (wasEmpty) {
    course.told = true;
    course.strengthTold = true;
    course.emptied = false;
    course.phase = course.phase === 'boiling' ? 'settling' : course.phase;
  }
  return addedBy(poured.massKg, poured.brix);
}

export interface Taking {
  litres: number | null;
  all: boolean;
  brix: number | null;
}

/** Somebody took out. Gives what that was, for the pan that it goes into; null where nobody knows. */
export function noteTaking(course: Course, setting: Setting, taking: Taking): Moved | null {
  const belief = beliefOf(course, setting);
  if (taking.brix !== null && taking.brix > 0) {
    const u = waterPerSugar(taking.brix);
    seeWater(belief, u, (100 / taking.brix ** 2) * DRAWN_BRIX_SIGMA, DOUBTED_SIGMAS);
  }
  const moved = movedOf(belief, setting, course, taking);
  if (taking.all) empty(course);
  else if (moved !== null && !course.emptied) {
    takeOut(belief, moved.sugarKg + moved.waterKg, moved.massShare);
  }
  return moved;
}

function movedOf(now: Belief, { around }: Setting, course: Course, { litres, all }: Taking): Moved | null {
  if (course.emptied) return { sugarKg: 0, waterKg: 0, massShare: 0, brixShare: 0, celsius: COLD_C, inDoubt: false };
  if (litres === null && (!all || !course.told)) return null;
  const u = waterOf(now);
  const brix = brixOfWaterPerSugar(u);
  const whole = Math.exp(now.x[SUGAR]!) * (1 + u);
  const massKg = litres === null ? whole : Math.min(all ? Infinity : MOST_TAKEN * whole, massOfLitres(litres, brix));
  const massShare = litres === null ? massShareOf(now) : LITRES_SHARE;
  const brixShare = Math.min(0.6, (Math.sqrt(variance(now, WATER)) * u) / (1 + u));
  const celsius = course.riseC === null ? COLD_C + 85 : (around.waterC ?? 100) + course.riseC;
  const inDoubt = !course.strengthTold || Math.sqrt(variance(now, WATER)) > ANY_STRENGTH;
  return { ...addedBy(massKg, brix), massShare, brixShare, celsius, inDoubt };
}

function empty(course: Course): void {
  course.emptied = true;
  course.received = false;
  course.inDoubt = false;
  course.strengthMeasured = false;
  course.volumeAt = LONG_AGO_MS;
  finishIsOver(course);
  course.usualRiseC = null;
  course.fall = null;
}

/** What once was added goes, of each belief. */
export function undo(course: Course, setting: Setting, added: Added): void {
  const { x } = beliefOf(course, setting);
  const sugar = Math.exp(x[SUGAR]!);
  const left = Math.max(sugar * LEAST_LEFT, sugar - added.sugarKg);
  x[WATER] = Math.log(Math.max(LEAST_LEFT, (sugar * waterOf({ x }) - added.waterKg) / left));
  x[SUGAR] = Math.log(left);
}

const LEAST_LEFT = 0.05;
