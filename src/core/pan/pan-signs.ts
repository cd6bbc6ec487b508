// What the temperature of one pan shows beside its strength: a boil that died, a tip that came out of thick syrup or out of the pan.
import { type Course, isOff } from './course.ts';
import { beliefOf, type Setting } from './course-time.ts';
import { OFFSET, SAP, waterOf } from './filter/belief.ts';
import { riseOfWater } from './filter/liquid.ts';
import { lastMinutes, type LastMinutes } from './last-minutes.ts';
import type { TemperatureTrack } from './temperature-track.ts';

/** It climbed faster than any pan can: when, ms, and from where, °C; `heardFrom` is since when the probe was heard there before that, ms. */
export interface Leap {
  at: number;
  fromC: number;
  heardFrom: number;
  /** It came from well under a boil to where liquid boils: as a tip that is put into hot liquid. */
  putIn: boolean;
}

/** A sign that stands: since when, ms, and from which temperature it fell, °C. */
export interface FallSign {
  from: number;
  fromC: number;
}

export interface PanSigns {
  /** The last block that was looked at, ms. */
  blockAt: number;
  /** When it was last seen to boil steadily with nothing poured in just before, ms, and when it was thick then; null for never. */
  boiledAt: number | null;
  thick: { at: number; celsius: number } | null;
  /** It looks as if the boil dies, since which block and until which, ms. */
  falling: (FallSign & { since: number; at: number }) | null;
  /** The boil died. */
  lost: FallSign | null;
  /** The tip came out of thick syrup and hangs in its steam. */
  bare: FallSign | null;
  /** It fell out of thick syrup, nobody noted why, and nothing since showed why: what is believed of it may be so no more. */
  fell: FallSign | null;
  /** It cooled faster than anything in a pan can, and did not turn: the tip is in the air. `stands` once nobody said that the pan was taken off. */
  lifted: (FallSign & { stands: boolean }) | null;
  /** The last leap. */
  leap: Leap | null;
}

/** Nothing has shown itself yet. */
export function startSigns(): PanSigns {
  return {
    blockAt: -1,
    boiledAt: null,
    thick: null,
    falling: null,
    lost: null,
    bare: null,
    fell: null,
    lifted: null,
    leap: null,
  };
}

/** So long after a pour, a settling or a probe's arrival a boil is called steady again, ms. */
const STEADY_AFTER_MS = 60_000;
const POUR_PASSES_MS = 120_000;
/** It boiled so lately before the fall that is looked at, ms. */
const BOILED_LATELY_MS = 150_000;
/** A noted pour explains a fall that began so long before it, or after it, ms. */
const POUR_EXPLAINS_MS = 360_000;
/** Share of its finish's rise from which on a pan counts as thick: about 45 °Bx. */
export const THICK_SHARE = 0.33;

/** Looks at the newest block, once. */
export function noteSigns(signs: PanSigns, track: TemperatureTrack, course: Course, setting: Setting): void {
  const end = track.blockTimes.at(-1);
  if (end === undefined || end === signs.blockAt) return;
  signs.blockAt = end;
  const { waterC } = setting.around;
  if (waterC === null || setting.design.ceilingC !== null || isOff(course)) return forgetSigns(signs);
  const { heardFrom } = course;
  if (heardFrom > (signs.boiledAt ?? heardFrom)) forgetSigns(signs);
  const shape = lastMinutes(track, heardFrom);
  noteLeap(signs, track, course, end, waterC);
  noteBoil(signs, course, setting, end);
  endExplained(signs, course);
  noteFell(signs, course, setting, track);
  if (shape === null) return;
  const seen = { shape, noise: noiseOf(track), end, waterC };
  noteLifted(signs, course, seen);
  noteLost(signs, course, seen);
  noteBare(signs, course, seen);
}

/** No pan warms by so much in two blocks, °C: 16 kW in two litres make 20 °C in ten seconds of losing nothing, half of it in practice. */
const LEAP_C = 12;
const LEAP_BLOCKS = 2;
/** All that was heard so long before must lie under it; at least so many blocks. A tip in the path of a pour dips and comes back. */
const BEFORE_MS = 60_000;
const BEFORE_BLOCKS = 2;
/** So far under the water point it was in no boil, and no liquid boils so far over it, °C. */
const UNDER_BOIL_C = 3;
const LIQUID_OVER_C = 15;
/** A tip may go on climbing through its lag: one leap, ms. */
export const LEAP_LASTS_MS = 60_000;

function noteLeap(signs: PanSigns, track: TemperatureTrack, course: Course, end: number, waterC: number): void {
  if (signs.leap !== null && end - signs.leap.at < LEAP_LASTS_MS) return;
  const { blockTimes, blockValues } = track;
  const from = Math.max(end - BEFORE_MS, course.heardFrom);
  const now = blockValues.at(-1)!;
  const lastPlace = blockTimes.length - 1 - LEAP_BLOCKS;
  // Nearly always the first one that is looked at lies no leap under it.
  let first = lastPlace + 1;
  for (; first > 0 && blockTimes[first - 1]! >= from; first--) if (now - blockValues[first - 1]! < LEAP_C) return;
  const last = blockValues[lastPlace];
  if (last === undefined || lastPlace + 1 - first < BEFORE_BLOCKS || course.pouredAt > end - POUR_PASSES_MS) return;
  const putIn = last < waterC - UNDER_BOIL_C && now < waterC + LIQUID_OVER_C;
  signs.leap = { at: end, fromC: last, heardFrom: course.heardFrom, putIn };
}

/** By so much in two blocks a tip climbs that was put into something hotter, °C; a pan that burns dry goes on at that. */
const STEP_C = 2;
/** The rate of rise looks back so far, ms: there a step looks like a climb. */
const STEP_SHOWS_MS = 120_000;

/** Whether it climbs by itself at t, ms: boiling long enough for a rate of its own, and not by one step that is over. */
export function climbsByItself({ blockTimes, blockValues }: TemperatureTrack, course: Course, t: number): boolean {
  if (course.phase !== 'boiling' || t - course.boilingFrom < BOILS_FOR_MS) return false;
  const climbed = (i: number): number => blockValues[i]! - (blockValues[i - 2] ?? Infinity);
  const last = blockTimes.length - 1;
  if (climbed(last) >= STEP_C) return true;
  for (let i = last; i > 1 && blockTimes[i]! > t - STEP_SHOWS_MS; i--) if (climbed(i) >= STEP_C) return false;
  return true;
}

/** Before this the rate is still that of the climb to the boil, ms. */
const BOILS_FOR_MS = 30_000;

interface Seen {
  shape: LastMinutes;
  /** Standard deviation of a mean of half a minute, °C. */
  noise: number;
  end: number;
  waterC: number;
}

/** Blocks share their slow wander: half a minute is hardly surer than two readings; a coarse probe not than half its step. */
const noiseOf = ({ noise, stepC }: TemperatureTrack): number => Math.max((noise ?? 0.1) / 2, stepC / 4);

function forgetSigns(signs: PanSigns): void {
  signs.boiledAt = null;
  signs.thick = null;
  signs.falling = null;
  signs.lost = null;
  signs.bare = null;
  signs.fell = null;
  signs.lifted = null;
}

function noteBoil(signs: PanSigns, course: Course, setting: Setting, end: number): void {
  if (course.phase !== 'boiling' || course.riseC === null) return;
  const since = Math.max(course.boilingFrom, course.deafUntil, course.pouredAt + POUR_PASSES_MS - STEADY_AFTER_MS);
  if (end - since < STEADY_AFTER_MS) return;
  signs.boiledAt = end;
  const finishC = setting.around.limits.finish.riseC;
  if (finishC !== null && course.riseC >= THICK_SHARE * finishC)
    signs.thick = { at: end, celsius: (setting.around.waterC ?? 0) + course.riseC };
}

/** A pour that somebody noted explains a fall, whenever it was typed. */
function endExplained(signs: PanSigns, { pouredAt }: Course): void {
  if (signs.lost !== null && pouredAt > signs.lost.from - POUR_EXPLAINS_MS) signs.lost = null;
  if (signs.bare !== null && pouredAt > signs.bare.from - POUR_EXPLAINS_MS) signs.bare = null;
  if (signs.fell !== null && pouredAt > signs.fell.from - POUR_PASSES_MS) signs.fell = null;
  if (signs.lifted !== null && pouredAt > signs.lifted.from - POUR_EXPLAINS_MS) signs.lifted = null;
}

/** A fall of so much in two minutes, °C, or so many times the noise, is no wander of a boil. */
const FALL_C = 0.6;
const FALL_NOISES = 5;
/** Each half minute of it falls by so much at the least, °C, and hardly slower than the one before. */
const LEAST_PART_C = 0.1;
const GOES_ON = 0.5;
/** Above the steam's own temperature it may be a bare tip, which slows down; a dead fire does not. */
const EVENLY = 0.8;
/** The last quarter minute is no slower than this share of an even fall. */
const LATELY = 0.5;
/** It must look so for as long, ms; where it falls by so much in half a minute, °C, it may be poured, and longer. */
const GOES_ON_MS = 35_000;
const STEEP_C = 1.2;
const GOES_ON_STEEPLY_MS = 55_000;
/** Noise may hide it for a block or two, ms. */
const MISSED_MS = 10_000;
/** Faster than this no pan cools by itself, °C in half a minute; a hand's depth of liquid loses 0.3, the last film 3. */
const FASTEST_PART_C = 4;
/** Deep under the boil a fall of so much in two minutes is enough, °C, for so long after the boil, ms. */
const SINKS_C = 0.5;
const SINKS_FOR_MS = 15 * 60_000;
/** It climbs again: the fire is back, °C in a minute. */
const CLIMB_C = 0.3;

/**
 * A pan that went out goes on falling, as evenly as it began. What is poured in cools at once and is warmed again by the
 * fire; a tip in the air or in steam falls ever more slowly towards where it hangs.
 */
function noteLost(signs: PanSigns, course: Course, { shape, noise, end, waterC }: Seen): void {
  const [a, b, c, d] = shape.parts;
  if (signs.lost !== null) {
    const climbs = d - b >= CLIMB_C + noise && d > c && c > b;
    const boils = course.phase === 'boiling' && course.boilingFrom > signs.lost.from;
    if (climbs || boils || course.reachedFinish) signs.lost = null;
    return;
  }
  const deep = sinks(shape, d - waterC);
  const lately = deep ? SINKS_FOR_MS : BOILED_LATELY_MS;
  const boiled = signs.boiledAt !== null && end - signs.boiledAt <= lately && !course.reachedFinish;
  const explained = signs.lifted !== null || course.pouredAt > shape.from - POUR_PASSES_MS;
  const { falling } = signs;
  if (boiled && !explained && (deep || fallsOn(shape, noise, d - waterC))) {
    const { from, fromC, since } = falling ?? { from: shape.from, fromC: a, since: end };
    signs.falling = { from, fromC, since, at: end };
    if (end - since >= (b - c >= STEEP_C ? GOES_ON_STEEPLY_MS : GOES_ON_MS)) signs.lost = { from, fromC };
  } else if (!boiled || explained || falling === null || end - falling.at > MISSED_MS) signs.falling = null;
}

/** Under anything that steam or foam could show, and still falling: so a slow fall is seen through a coarse probe, too. */
function sinks({ parts: [a, b, c, d] }: LastMinutes, riseC: number): boolean {
  const onlyDown = a >= b && b >= c && c >= d && Math.max(a - b, b - c, c - d) < STEEP_C;
  return onlyDown && riseC < -STEAM_UNDER_C && a - d >= SINKS_C;
}

/** As a dead fire makes it: deep enough, no slower than before, no faster than a pan can. */
function fallsOn({ parts: [a, b, c, d], lately }: LastMinutes, noise: number, riseC: number): boolean {
  const goesOn = riseC > -STEAM_UNDER_C || b - c >= STEEP_C ? EVENLY : GOES_ON;
  const last = c - d;
  return (
    a - d >= Math.max(FALL_C, FALL_NOISES * noise) &&
    b - c >= LEAST_PART_C &&
    last >= Math.max(LEAST_PART_C, goesOn * (b - c)) &&
    lately >= (LATELY * last) / 4 &&
    Math.max(a - b, b - c, last) <= FASTEST_PART_C
  );
}

/** Liquid of a pan falls by less than this in half a minute, °C, unless something is poured in; then it climbs within two minutes. */
const LIFTED_C = 12;
const LIFTED_PART_C = 5;

/** Whoever takes a pan off types it by then, ms. */
const LIFTED_FOR_MS = 240_000;

function noteLifted(signs: PanSigns, course: Course, { shape, noise, end, waterC }: Seen): void {
  const [a, b, c, d] = shape.parts;
  if (course.reachedFinish || (d - b >= CLIMB_C + noise && d > c)) signs.lifted = null;
  if (signs.lifted !== null) {
    signs.lifted.stands = end - signs.lifted.from >= LIFTED_FOR_MS;
    return;
  }
  if (signs.boiledAt === null || end - signs.boiledAt > BOILED_LATELY_MS + 60_000 || course.reachedFinish) return;
  const fast = Math.max(a - b, b - c) >= LIFTED_PART_C;
  const goesOn = c - d >= LEAST_PART_C + noise && b - c >= LEAST_PART_C;
  if (fast && goesOn && d < waterC - LIFTED_C && shape.lately > 0)
    signs.lifted = { from: shape.from, fromC: a, stands: false };
}

/** A tip in steam reads about the water point: between these of it, °C. */
const STEAM_UNDER_C = 2;
const STEAM_OVER_C = 0.5;
/** It was thick so lately, ms, and fell by so much at the least, °C. */
const THICK_LATELY_MS = 10 * 60_000;
const BARE_FALL_C = 1;
/** It stays there: so little in half a minute, °C. */
const FLAT_C = 0.15;

/**
 * Late in a boil a fall to the water point that stays there is no relief: a pan that was poured into falls below it and
 * climbs again, one that went out falls through it, but a tip that came out of the syrup hangs in its steam.
 */
function noteBare(signs: PanSigns, course: Course, { shape, noise, end, waterC }: Seen): void {
  const [, b, c, d] = shape.parts;
  if (signs.bare !== null) {
    const backIn = d >= signs.bare.fromC - BARE_FALL_C / 2;
    if (backIn || (course.phase === 'boiling' && d > waterC + STEAM_OVER_C + noise)) signs.bare = null;
    return;
  }
  const { thick } = signs;
  if (thick === null) return;
  const poured = course.pouredAt > thick.at - POUR_PASSES_MS;
  if (poured || end - thick.at > THICK_LATELY_MS || d < waterC - STEAM_UNDER_C - noise) {
    signs.thick = null;
    return;
  }
  const flat = Math.abs(c - d) <= Math.max(FLAT_C, 2 * noise) && b - c <= Math.max(4 * FLAT_C, 4 * noise);
  const inSteam = d <= waterC + STEAM_OVER_C && thick.celsius - d >= BARE_FALL_C;
  if (flat && inSteam) signs.bare = { from: thick.at, fromC: thick.celsius };
}

/** Out of thick syrup so much at once is no wander of a boil, °C; what is believed of it fits again to half of that. */
const FELL_C = 1;
const FITS_C = FELL_C / 2;

/** By so much in a block a tip still falls to where it will hang, °C: one that is taken off or lifted out passes by. */
const STILL_FALLS_C = 1;

/**
 * A thick pan that falls at once was poured into, or its tip came out, or its fire went: which, the temperature does not
 * say. It stands until somebody tells, the temperature is back, or the boil shows what is believed.
 */
function noteFell(signs: PanSigns, course: Course, setting: Setting, track: TemperatureTrack): void {
  const { fall, riseC } = course;
  const { waterC, limits } = setting.around;
  const finishC = limits.finish.riseC;
  if (riseC === null || waterC === null) return;
  if (signs.fell !== null) {
    const isBack = track.blockValues.at(-1)! >= signs.fell.fromC - FITS_C;
    const isTold = course.strengthAt >= signs.fell.from || isTurned(course, signs.fell.from);
    const fits = course.phase === 'boiling' && Math.abs(riseC - believedRiseC(course, setting)) <= FITS_C;
    if (isBack || isTold || fits) signs.fell = null;
    return;
  }
  if (fall === null || finishC === null || fall.fromC < THICK_SHARE * finishC || riseC >= finishC) return;
  const goesOn = (course.recentRises.at(-2) ?? Infinity) - riseC > STILL_FALLS_C;
  const isExplained =
    course.pouredAt > fall.at - POUR_PASSES_MS || course.strengthAt >= fall.at || isTurned(course, fall.at);
  if (!isExplained && !goesOn && fall.fromC - riseC >= FELL_C)
    signs.fell = { from: fall.at, fromC: waterC + fall.fromC };
}

/** Whoever turned the flame down so long before a fall, or after it began, knows why it fell, ms. */
const FLAME_EXPLAINS_MS = 10 * 60_000;
const isTurned = ({ loweredAt }: Course, at: number): boolean => loweredAt > at - FLAME_EXPLAINS_MS;

/** The rise that is expected of a boiling pan as it is believed, °C. */
function believedRiseC(course: Course, setting: Setting): number {
  const belief = beliefOf(course, setting);
  const { riseC } = riseOfWater(waterOf(belief), setting.design.shares, setting.around.pressureHpa ?? 1013.25);
  return belief.x[OFFSET]! + (1 + belief.x[SAP]!) * riseC;
}

/** Colder than this under the water point a pan was taken off, or its tip: nobody waits for what it boils to, °C. */
const TAKEN_OFF_C = 8;

/** The fall that stands of a pan that may still boil; null for none. */
export const fallInDoubt = ({ fell }: Pick<PanSigns, 'fell'>, { riseC }: Pick<Course, 'riseC'>): FallSign | null =>
  riseC !== null && riseC > -TAKEN_OFF_C ? fell : null;
