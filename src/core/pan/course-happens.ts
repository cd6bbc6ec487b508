// Brings the course of a pan to the moment of a happening and lets it happen: each kind of happening in its own way.
import type { Steam } from './burner.ts';
import { type Course, type Happening, isOff, type Moved } from './course.ts';
import { UNTOLD_SUGAR } from './contents-possible.ts';
import { judgeNow, takeBlock } from './course-blocks.ts';
import { takeHand } from './course-hand.ts';
import { noteReceived, notePour, noteTaking, undo } from './course-mix.ts';
import { beliefOf, massKg, passTo, type Setting, volumeNow } from './course-time.ts';
import { finishIsOver, finishSeen } from './finish.ts';
import { addVariance, type Belief, copyBelief, FIRE, OFFSET, SUGAR, variance, waterOf } from './filter/belief.ts';
import { changeBase } from './filter/base.ts';
import { litresOf, waterPerSugar } from './filter/liquid.ts';
import { massShareOf, USEFUL_SHARE } from './filter/mix.ts';
import { measureLitres, seeLitres, seeWater } from './filter/see.ts';
import { FIRES } from './filter/predict.ts';
import { supposeSteam, supposeWater } from './filter/start.ts';
import { breakWander } from './filter/wander.ts';
import { endDryCount, waterFilling } from './ran-dry.ts';

/** A level of a flame is set by eye, so that the fire may be off by this share of the change. */
const LEVEL_SHARE = 0.2;
/** The first minute after a probe arrives is its own warming, ms. */
const PROBE_WARMS_MS = 60_000;
/** A strength that what is known contradicts by so many standard deviations is asked about and not believed. */
const DOUBTED_SIGMAS = 3;
/** A depth sooner: whoever holds the ruler reads it once more, or remembers a pour that was not noted. */
const DOUBTED_DEPTH_SIGMAS = 2;

/** Brings the course to the happening's moment and lets it happen. `moved` holds what was taken out of other pans, by key. */
export function happen(course: Course, setting: Setting, one: Happening, moved: Map<string, Moved | null>): void {
  passTo(course, setting, one.t);
  const before = course.belief?.x[SUGAR] ?? null;
  act(course, setting, one, moved);
  // What is asked about and left out says nothing of the sugar.
  if ('doubted' in one && one.doubted) return;
  if (TELLS_SUGAR.has(one.what)) noteSugar(course, one);
  // What is taken out takes its share of what was noted.
  else if (one.what === 'take' && course.notedSugar !== null && before !== null)
    course.notedSugar = { ...course.notedSugar, ln: course.notedSugar.ln + course.belief!.x[SUGAR]! - before };
}

/** What says how much sugar is in a pan, or changes it. */
const TELLS_SUGAR: ReadonlySet<Happening['what']> = new Set(['pour', 'receive', 'volume', 'strength', 'undo']);

function noteSugar(course: Course, one: Happening): void {
  const { belief, told, notedSugar } = course;
  if (belief === null) return;
  // Of an amount that is open what was noted stands, and what is poured comes to it: a strength tells no amount.
  if (told && notedSugar !== null && one.what !== 'volume' && Math.sqrt(variance(belief, SUGAR)) > UNTOLD_SUGAR) {
    const came = one.what === 'pour' || one.what === 'receive' || one.what === 'undo' ? (one.added?.sugarKg ?? 0) : 0;
    const kg = Math.exp(notedSugar.ln) + (one.what === 'undo' ? -came : came);
    course.notedSugar = { ...notedSugar, ln: Math.log(Math.max(LEAST_SUGAR_KG, kg)) };
    return;
  }
  course.notedSugar = told ? { ln: belief.x[SUGAR]!, sigma: Math.sqrt(variance(belief, SUGAR)) } : null;
}

/** A gram: less is no batch. */
const LEAST_SUGAR_KG = 0.001;

function act(course: Course, setting: Setting, one: Happening, moved: Map<string, Moved | null>): void {
  switch (one.what) {
    case 'block':
      return takeBlock(course, setting, one);
    case 'base':
      return rebase(course, setting, one);
    case 'weather':
      return weather(course, one);
    case 'pour':
      one.added = notePour(course, setting, one);
      return;
    case 'receive':
      one.moved = moved.has(one.key) ? moved.get(one.key)! : one.moved;
      one.added = noteReceived(course, setting, one.moved);
      return;
    case 'take':
      return take(course, setting, one, moved);
    case 'flame':
      return flame(course, setting, one.level);
    case 'volume':
    case 'strength':
      return measure(course, setting, one);
    case 'hand':
      return takeHand(course, setting, one);
    case 'burner':
      return burner(course, setting, one);
    case 'probe':
      course.deafUntil = course.t + PROBE_WARMS_MS;
      forgetRecent(course);
      return forgetUntold(course);
    case 'gap':
      forgetRecent(course);
      if (!course.reachedFinish) forgetUntold(course);
      return;
    case 'undo':
      return undo(course, setting, one.added);
  }
}

type Of<W extends Happening['what']> = Extract<Happening, { what: W }>;

function rebase(course: Course, setting: Setting, one: Of<'base'>): void {
  if (course.usualRiseC !== null) course.usualRiseC += one.shiftC;
  if (course.riseC !== null) course.riseC += one.shiftC;
  course.recentRises = course.recentRises.map((rise) => rise + one.shiftC);
  course.wander.rises = course.wander.rises.map((rise) => rise + one.shiftC);
  if (course.fall !== null) {
    const { fromC, lowestC } = course.fall;
    course.fall = { ...course.fall, fromC: fromC + one.shiftC, lowestC: lowestC + one.shiftC };
  }
  if (course.belief !== null && course.base !== null) {
    const { weatherVariance } = course;
    const from = { ...course.base, offsetVariance: course.base.offsetVariance + weatherVariance };
    const { belief } = course;
    addVariance(belief, OFFSET, OFFSET, weatherVariance);
    changeBase(belief, from, one.base, one.shiftC);
    if (course.phase === 'boiling' && !isOff(course)) judgeNow(course, setting);
  }
  course.base = one.base;
  course.weatherVariance = 0;
}

/** Only time has passed: what the weather did since is no error that the curve could tell, and stays beside the belief. */
function weather(course: Course, { base }: Of<'weather'>): void {
  if (course.base === null) course.base = base;
  course.weatherVariance = Math.max(0, base.offsetVariance - course.base.offsetVariance);
}

function take(course: Course, setting: Setting, one: Of<'take'>, moved: Map<string, Moved | null>): void {
  const gone = noteTaking(course, setting, one);
  moved.set(one.key, gone);
  one.added = gone === null ? null : { sugarKg: -gone.sugarKg, waterKg: -gone.waterKg };
}

function flame(course: Course, setting: Setting, level: number): void {
  const before = course.flame;
  course.flame = level;
  if (level < before) course.loweredAt = course.t;
  if (isOff(course)) finishIsOver(course);
  if (level === 0 || before === level) return;
  const error = LEVEL_SHARE * (before === 0 ? 1 : Math.log(level / before));
  addVariance(beliefOf(course, setting), FIRE, FIRE, error * error);
}

/** What was learnt of the steam was learnt of another fire, or from a figure that was wrong: it is learnt anew. */
function burner(course: Course, { design }: Setting, steam: Steam): void {
  course.boiledWith = null;
  if (course.belief !== null) supposeSteam(course.belief, steam, FIRES[design.heatKind].swing);
}

/** What was supposed of an amount that nobody had told is no more than a guess: standard deviation of its logarithm. */
const ANY_AMOUNT = 1.5;

/** A volume or a strength that somebody measured; one that contradicts all that is known is asked about. */
function measure(course: Course, setting: Setting, one: Of<'volume'> | Of<'strength'>): void {
  const litres = one.what === 'volume' ? coldLitres(course, setting, one) : 0;
  const see =
    one.what === 'volume'
      ? (belief: Belief, most: number) => seeLitres(belief, litres, one.share, most)
      : (belief: Belief, most: number) =>
          seeWater(belief, waterPerSugar(one.brix), (100 / one.brix ** 2) * one.sigmaBrix, most);
  if (one.what === 'strength') {
    one.doubted = one.wild && !one.meant;
    if (one.doubted) return;
    if (!course.strengthTold) return firstStrength(course, setting, one);
  }
  if (one.what === 'volume') one.counted = litresCounted(course, beliefOf(course, setting));
  if (course.told) endDryCount(beliefOf(course, setting), shownWater(course, setting, one));
  const sigmas = see(copyBelief(beliefOf(course, setting)), 0);
  // Where nobody had told how much is in it, whoever measures knows best.
  const isFirst = one.what === 'volume' && !course.told;
  const farSigmas = one.what === 'volume' ? DOUBTED_DEPTH_SIGMAS : DOUBTED_SIGMAS;
  const isFar = !isFirst && Math.abs(sigmas) > farSigmas;
  one.doubted = isFar && !one.meant;
  if (one.doubted) return;
  const belief = beliefOf(course, setting);
  const before = massKg(belief);
  if (isFirst || isFar) addVariance(belief, SUGAR, SUGAR, ANY_AMOUNT ** 2);
  if (isFar && one.what === 'strength') return firstStrength(course, setting, one);
  if (one.what === 'volume' && !isFirst && !isFar) measureLitres(belief, litres, one.share);
  else see(belief, Infinity);
  if (one.what === 'volume') return volumeTaken(course, belief, one, before);
  course.strengthTold = true;
  instrumentJudges(course, setting, one.brix);
}

/** What was measured, L at 20 °C. */
function coldLitres(course: Course, setting: Setting, one: Of<'volume'>): number {
  one.swell = volumeNow(course, setting, beliefOf(course, setting));
  return one.litres / one.swell;
}

function volumeTaken(course: Course, belief: Belief, one: Of<'volume'>, beforeKg: number): void {
  // As warm as before, more of it owes more heat.
  if (course.debtKg !== null) course.debtKg *= massKg(belief) / beforeKg;
  one.taken = one.counted === null ? null : litresIn(belief);
  course.told = true;
  course.volumeAt = course.t;
}

/** Litres that were counted, where they were known well enough to be said; null where not. */
function litresCounted(course: Course, belief: Belief): number | null {
  const isSaid = course.told && !course.emptied && massShareOf(belief) < USEFUL_SHARE;
  return isSaid ? litresIn(belief) : null;
}

const litresIn = (belief: Belief): number => litresOf(Math.exp(belief.x[SUGAR]!), waterOf(belief));

/** The water per sugar that a measurement means with the sugar that is believed, kg/kg; 0 where it means no such. */
const shownWater = (course: Course, setting: Setting, one: Of<'volume'> | Of<'strength'>): number =>
  one.what === 'strength'
    ? waterPerSugar(one.brix)
    : (waterFilling(beliefOf(course, setting), one.litres / (one.swell ?? 1)) ?? 0);

/** Half of what the finest stems are divided in: less under its finish an instrument shows the finish, °Bx. */
const READ_TO_BRIX = 0.25;

/** An instrument that shows less than the finish ends it; below a boil nothing but the instrument tells of it. */
function instrumentJudges(course: Course, setting: Setting, brix: number): void {
  course.strengthMeasured = true;
  course.inDoubt = false;
  course.strengthAt = course.t;
  const finishBrix = setting.around.limits.finish.brix;
  if (setting.design.ceilingC !== null) judgeNow(course, setting);
  else if (brix < finishBrix) finishIsOver(course);
  if (brix >= finishBrix - READ_TO_BRIX) finishSeen(course);
}

/** Nobody had said how strong it is: the instrument does. */
function firstStrength(course: Course, setting: Setting, one: Of<'strength'>): void {
  const u = waterPerSugar(one.brix);
  supposeWater(beliefOf(course, setting), u, ((100 / one.brix ** 2) * one.sigmaBrix) / u);
  course.strengthTold = true;
  instrumentJudges(course, setting, one.brix);
}

/** Of a pan that nobody told of, what another probe or another hour showed says nothing now. */
function forgetUntold(course: Course): void {
  if (course.told) return;
  course.belief = null;
  course.handZeroC = null;
  course.strengthTold = false;
  course.strengthMeasured = false;
  finishIsOver(course);
}

function forgetRecent(course: Course): void {
  course.heardFrom = course.t;
  course.riseC = null;
  course.usualRiseC = null;
  course.recentTimes = [];
  course.recentRises = [];
  breakWander(course.wander);
  course.warming = null;
  course.fall = null;
}
