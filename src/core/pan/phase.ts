// Whether a pan warms, boils, or has taken in something cold, judged from its rise over water.
import { type Course, disturb } from './course.ts';

/** How far under the water point a pan still counts as boiling, °C: superheat, foam and offsets. */
export const BOIL_MARGIN_C = 0.6;
/** After something cold went in, so long before a boil is believed again, ms. */
const SETTLE_MS = 45_000;
/** Share of each block that the usual rise follows: about half a minute of memory. */
const FOLLOW = 0.2;
/** A rate under this counts as a plateau after something cold went in, °C/min. */
const PLATEAU_C_PER_MIN = 0.4;
/** Well over water only sugar holds the temperature up, °C; there a thick pan may climb by so much and still boil, °C/min. */
const WELL_OVER_C = 1;
const THICK_CLIMB_C_PER_MIN = 2.5;
/** A fall of so much, °C, or so many times the noise, is something that the boil cannot do by itself. */
const FALL_C = 0.8;
const FALL_NOISES = 6;
const RECENT = 7;

/** Remembers a block for the slope of the last half minute. */
export function remember(course: Course, t: number, riseC: number): void {
  const { recentTimes, recentRises } = course;
  recentTimes.push(t);
  recentRises.push(riseC);
  if (recentTimes.length <= RECENT) return;
  recentTimes.shift();
  recentRises.shift();
}

/** Takes a block in; true where it fell out of a boil just now. */
export function notePhase(course: Course, t: number, riseC: number, noiseC: number): boolean {
  if (course.phase === 'boiling') {
    const steady = course.usualRiseC !== null;
    const usual = course.usualRiseC ?? riseC;
    course.usualRiseC = usual + (riseC - usual) * FOLLOW;
    if (riseC >= -BOIL_MARGIN_C - 2 * noiseC && usual - riseC <= Math.max(FALL_C, FALL_NOISES * noiseC)) return false;
    const wasSteady = steady && course.boilingFrom >= 0;
    disturb(course, t);
    if (wasSteady && course.fall === null)
      course.fall = { at: t, fromC: usual, lowestC: riseC, lowestAt: t, heatS: 0, heatSinceLowestS: 0 };
    return true;
  }
  if (course.fall !== null && riseC < course.fall.lowestC)
    course.fall = { ...course.fall, lowestC: riseC, lowestAt: t, heatSinceLowestS: 0 };
  const settled = course.disturbedAt < 0 || t - course.disturbedAt >= SETTLE_MS;
  if (riseC < -BOIL_MARGIN_C - 2 * noiseC || !settled) return false;
  const climbing = slopeOfRecent(course);
  if (climbing === null || climbing >= (riseC > WELL_OVER_C ? THICK_CLIMB_C_PER_MIN : PLATEAU_C_PER_MIN)) return false;
  course.phase = 'boiling';
  // The climb to the boil is no part of the rate of the boil.
  course.boilingFrom = t;
  return false;
}

/** °C/min between the halves of the last blocks; null under four. */
export function slopeOfRecent({ recentTimes: times, recentRises: rises }: Course): number | null {
  if (times.length < 4) return null;
  const half = times.length >> 1;
  const mean = (list: number[]): number => list.reduce((sum, value) => sum + value, 0) / list.length;
  const minutes = (mean(times.slice(-half)) - mean(times.slice(0, half))) / 60_000;
  return (mean(rises.slice(-half)) - mean(rises.slice(0, half))) / minutes;
}
