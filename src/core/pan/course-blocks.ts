// What a block of readings does to the course of a pan: it warms, it boils and shows its strength, or it fell.
import { type Course, isEmptyNoMore, isOff } from './course.ts';
import { beliefOf, debtFor, judgeByCount, massKg, type Setting } from './course-time.ts';
import { USUAL_AIR } from './still-surface.ts';
import { endFall } from './pours-seen.ts';
import { isFarUnder, judgeFinish } from './finish.ts';
import { THIN_BRIX } from './limits.ts';
import { addVariance, type Belief, OFFSET, SAP, SUGAR, variance, WATER, waterOf } from './filter/belief.ts';
import { HOT_VOLUME, litresOf, riseOfWater, steamForWarming, waterPerSugar } from './filter/liquid.ts';
import { type RiseError, type RiseSeen, seeHeatPerMass, seeRise } from './filter/see.ts';
import { supposeWater } from './filter/start.ts';
import { breakWander, noteWander, wanderOf } from './filter/wander.ts';
import { medianOfLast } from './robust-statistics.ts';
import { BOIL_MARGIN_C, notePhase, remember } from './phase.ts';
import { latentHeatKjPerKg } from '../physics/heat.ts';
import { openSurfaceLoss } from '../physics/open-surface.ts';
import { depthAtLitres, surfaceM2 } from '../physics/vessel.ts';
import { strengthFromRise } from '../physics/sugar-solution.ts';

/**
 * Variance of the middle of a block: neighbouring blocks share their errors (bubbles, stirring), so each counts as
 * noisy as a single reading and no quieter than this, °C (practice).
 */
const BLOCK_FLOOR_C = 0.06;
/** So many blocks in a row that miss far to one side, and the pan is not where it was thought to be. */
const WILD_BLOCKS = 8;
const COOL_BLOCKS = 120;
const WILD_SIGMAS = 2.5;
const OPENS_SHARE = 0.1;
const OPENS_C = 0.1;
/** A pan that nobody spoke of is more than sap where its rise is over this strength's by so many standard deviations, °Bx. */
const SAP_BRIX = 8;
const SURE_SIGMAS = 1.5;
/** Before its curve is seen, one rise alone tells the water to this share. */
const SUPPOSED_SHARE = 0.7;
/** A boil so young still climbs, ms. */
const YOUNG_MS = 120_000;
/** A boil that just began still climbs with the probe's own warming: then a block counts for so much less. */
const FRESH_MS = 90_000;
const FRESH_FACTOR = 10;
/** A pan so far under its boil is cold, °C. */
const COLD_RISE_C = -20;
/** Nearer to the boil than this heat is counted, not seen, °C. */
const NEAR_BOIL_C = 3;
/** A stretch of warming tells the heat once it is so long, °C; losses and mixing make it sure to a share (practice). */
const WARMED_C = 25;
const WARMED_SHARE = 0.25;
/** Steel of the pot as water, kg (3 kg of steel). */
const POT_AS_WATER_KG = 0.35;

/** Noise of less than this share of a probe's step does not smooth it. */
const STEPPED = 0.4;

export interface BlockSeen {
  riseC: number;
  noiseC: number;
  stepC: number;
}

/** A block of readings that ended at the course's moment. */
export function takeBlock(course: Course, setting: Setting, block: BlockSeen): void {
  const { design } = setting;
  const { riseC, noiseC, stepC } = block;
  course.riseC = riseC;
  remember(course, course.t, riseC);
  if (course.t < course.deafUntil) return;
  if (riseC >= -BOIL_MARGIN_C) isEmptyNoMore(course);
  if (isOff(course)) {
    // It cools: what the probe says is no boil, and tells nothing of the strength.
    if (course.phase === 'boiling') course.phase = 'settling';
    course.usualRiseC = null;
    return;
  }
  if (design.ceilingC !== null) {
    course.phase = 'boiling';
    if (course.belief !== null && course.told) judgeNow(course, setting);
    return;
  }
  const belief = beliefOf(course, setting);
  notePhase(course, course.t, riseC, noiseC);
  if (course.phase === 'boiling' && course.fall !== null) endFall(course, setting, course.fall);
  if (course.phase !== 'boiling') breakWander(course.wander);
  if (course.phase === 'boiling') {
    const coarseC = noiseC < STEPPED * stepC ? stepC : 0;
    noteWander(course.wander, riseC);
    course.wanderC = wanderOf(course.wander, coarseC);
    course.debtKg = 0;
    course.warming = null;
    const fresh = course.t - course.boilingFrom < FRESH_MS ? FRESH_FACTOR : 1;
    const variance = fresh * (noiseC * noiseC + BLOCK_FLOOR_C ** 2);
    showStrength(course, setting, { riseC, variance, stepC: coarseC, error: OFFSET });
    return;
  }
  const mixed = course.disturbedAt < 0 || course.t - course.disturbedAt > 45_000;
  if (!mixed && course.debtKg !== null) return;
  // Near its boil the heat that is owed is too little to be told from the probe's own error.
  if (riseC < -NEAR_BOIL_C || course.debtKg === null)
    course.debtKg = debtFor(belief, setting.around, Math.max(0, -riseC));
  if (riseC < COLD_RISE_C && course.phase === 'cold') course.cameCold = true;
  if (riseC < -BOIL_MARGIN_C) warm(course, setting, riseC);
}

/** The rise of a boiling pan, °C, its variance, and which thermometer's error is in it. */
export interface RiseShown {
  riseC: number;
  variance: number;
  stepC: number;
  error: RiseError;
  /** Somebody dipped the pan's only thermometer and looked at it: its tip was covered, however shallow the pan. */
  isDipped?: boolean;
}

/** The belief of a boiling pan learns from its rise. */
export function showStrength(course: Course, setting: Setting, shown: RiseShown): void {
  const { design, around } = setting;
  const belief = beliefOf(course, setting);
  const pressureHpa = around.pressureHpa ?? 1013.25;
  if (!course.strengthTold && !supposeFromRise(course, setting, shown)) return;
  const coolSigmas = shown.isDipped === true ? Infinity : coolestSigmas(course, setting);
  const { flame } = course;
  const seen: RiseSeen = { ...shown, shares: design.shares, pressureHpa, flame, coolSigmas };
  noteWild(course, seeRise(belief, seen));
  course.inDoubt = false;
  judgeNow(course, setting);
}

/** Cooler by more standard deviations than this a block is left out; in a shallow pan the tip may be bare. */
const COOL_SIGMAS = 2.5;
const COOL_SIGMAS_SHALLOW = 0.7;
/** Tips sit 4–20 mm off the bottom. */
const TIP_BARE_MM = 25;

function coolestSigmas(course: Course, { design }: Setting): number {
  // Cooler than expected for so long, it must be its boil.
  if (course.wildBlocks <= -COOL_BLOCKS) return Infinity;
  if (design.vessel === null || !course.told) return COOL_SIGMAS;
  const { x } = course.belief!;
  const depth = depthAtLitres(design.vessel, litresOf(Math.exp(x[SUGAR]!), waterOf({ x })) * HOT_VOLUME);
  return depth !== null && depth < TIP_BARE_MM ? COOL_SIGMAS_SHALLOW : COOL_SIGMAS;
}

/**
 * The strength that the last few readings show by themselves, °Bx; null below a boil. Far under the finish it is no more
 * than told: nothing hangs on how much less it is, and most of a boil is there.
 */
function shownBrix({ recentRises, told }: Course, { design, around }: Setting, now: Belief): number | null {
  if (design.ceilingC !== null || recentRises.length === 0) return null;
  // Where nobody told of the contents, the curve alone is no reason to doubt the probe.
  const offsetC = told ? now.x[OFFSET]! : 0;
  const riseC = (medianOfLast(recentRises, LAST_FEW) - offsetC) / (1 + now.x[SAP]!);
  const { thinRiseC, finish } = around.limits;
  if (thinRiseC !== null && riseC < thinRiseC && isFarUnder(now, THIN_BRIX, finish)) return THIN_BRIX;
  return strengthFromRise(Math.max(0, riseC), design.shares, around.pressureHpa ?? 1013.25) ?? Infinity;
}

const LAST_FEW = 3;

/** Holds the strength as it is believed against the finish. */
export function judgeNow(course: Course, setting: Setting): void {
  const now = beliefOf(course, setting);
  const { finish } = setting.around.limits;
  if (setting.design.ceilingC !== null) judgeByCount(course, setting);
  else judgeFinish(course, now, shownBrix(course, setting, now), finish);
}

/**
 * A pan that nobody spoke of holds sap as far as its rise can tell, or what its rise says. False while the boil is too
 * young to tell.
 */
function supposeFromRise(course: Course, { design, around }: Setting, shown: RiseShown): boolean {
  const belief = course.belief!;
  const { riseC } = shown;
  const pressureHpa = around.pressureHpa ?? 1013.25;
  const sapC = riseOfWater(waterPerSugar(SAP_BRIX), design.shares, pressureHpa).riseC;
  const sigma = Math.sqrt(shown.variance + variance(belief, shown.error));
  const isThin = riseC - (course.cameCold ? SURE_SIGMAS * sigma : 0) < sapC;
  if (isThin && course.t - course.boilingFrom < YOUNG_MS) return false;
  course.strengthTold = true;
  if (isThin) return true;
  const brix = strengthFromRise(riseC / (1 + around.sapShare), design.shares, pressureHpa) ?? 79;
  const u = waterPerSugar(Math.max(SAP_BRIX, brix));
  supposeWater(belief, u, SUPPOSED_SHARE);
  return true;
}

/** Many misses to one side: something unknown happened, and what is there is open again. */
function noteWild(course: Course, sigmas: number): void {
  const side = Math.abs(sigmas) < WILD_SIGMAS ? 0 : Math.sign(sigmas);
  course.wildBlocks = side === 0 ? 0 : Math.sign(course.wildBlocks) === side ? course.wildBlocks + side : side;
  if (course.wildBlocks < WILD_BLOCKS && course.wildBlocks > -COOL_BLOCKS) return;
  if (course.wildBlocks > 0) course.wildBlocks = 0;
  const belief = course.belief!;
  addVariance(belief, WATER, WATER, OPENS_SHARE ** 2);
  addVariance(belief, OFFSET, OFFSET, OPENS_C ** 2);
}

/** How fast a known mass warms tells the heat, and a known heat the mass. */
function warm(course: Course, setting: Setting, riseC: number): void {
  const from = course.warming;
  if (from === null || riseC < from.riseC - FELL_C) {
    course.warming = { riseC, heatS: 0 };
    return;
  }
  if (riseC - from.riseC < WARMED_C || from.heatS <= 0) return;
  const boilsAt = setting.around.waterC ?? 100;
  const belief = course.belief!;
  const middleC = boilsAt + (riseC + from.riseC) / 2;
  const steamPerKg = steamForWarming(0, boilsAt + from.riseC, boilsAt + riseC);
  const lost = lostSteamKgPerS(setting, middleC);
  const mass = massKg(belief);
  const perSecond = ((1 + POT_AS_WATER_KG / mass) * steamPerKg) / from.heatS + lost / mass / course.flame;
  seeHeatPerMass(belief, perSecond, WARMED_SHARE);
  course.warming = { riseC, heatS: 0 };
}

/** What the open surface loses on the way to the boil goes into steam once it boils, kg/s. */
function lostSteamKgPerS({ design, around }: Setting, celsius: number): number {
  if (design.vessel === null) return 0;
  const loss = openSurfaceLoss(celsius, 0, { ...USUAL_AIR, pressureHpa: around.pressureHpa ?? 1013.25 });
  if (loss === null) return 0;
  const watts =
    (loss.evaporatedKgPerS * latentHeatKjPerKg(100)! * 1000 + loss.convectionWatts) * surfaceM2(design.vessel, 100);
  return watts / (latentHeatKjPerKg(100)! * 1000);
}

/** A fall of so much is no warming, °C. */
const FELL_C = 3;
