// The pan model: readings become blocks, and blocks, marks and time move the course of the pan.
import type { Steam } from './burner.ts';
import type { Base } from './filter/base.ts';
import { beliefOf, baseOf, GRID_MS, passTo, type Setting } from './course-time.ts';
import type { PanModel, Surroundings } from './pan-state.ts';
import { closeBlock, forgetRecent, hearReading, rateOfRise } from './temperature-track.ts';
import { BASE_ORDER, BLOCK_ORDER, type Boiling, happenNow, runAgain } from './timeline.ts';

/** A reading of this pan's probe, offset included, °C; t in ms, not before the last one. */
export function panHears(pan: PanModel, t: number, celsius: number): void {
  hearReading(pan.track, t, celsius);
}

/** A ten-thousandth of a degree is far under any noise, and keeps what is kept of the past short. */
const rounded = (celsius: number): number => Math.round(celsius * 1e4) / 1e4;

/** Brings the model to t (ms): at most once a second; blocks of readings are used as they close. */
export function panStep(pan: PanModel, setting: Setting, t: number): void {
  const block = closeBlock(pan.track, t);
  const { course } = pan;
  const { waterC } = setting.around;
  if (block !== null) {
    pan.rateCPerMin = rateOfRise(
      pan.track,
      t,
      Math.max(course.disturbedAt, course.boilingFrom, course.heardFrom, course.deafUntil),
    );
    if (waterC === null) course.riseC = null;
    else {
      beliefOf(course, setting);
      const riseC = rounded(block.celsius - waterC);
      const noiseC = rounded(pan.track.noise ?? 0.1);
      const end = Math.max(course.t, block.t + GRID_MS / 2);
      happenNow(pan, setting, {
        t: end,
        order: BLOCK_ORDER,
        what: 'block',
        riseC,
        noiseC,
        stepC: rounded(pan.track.stepC),
      });
    }
  }
  passTo(course, setting, Math.floor(t / GRID_MS) * GRID_MS);
}

/** After a gap nothing recent is known; contents and what was learnt stay. */
export function panAfterGap(pan: PanModel, setting: Setting, t: number): void {
  const last = pan.past.happened.at(-1);
  const again = last?.what === 'gap' && last.t === t;
  if (!again) happenNow(pan, setting, { t: Math.max(pan.course.t, t), order: BASE_ORDER, what: 'gap' });
  nothingRecent(pan);
}

/** What was read from a moment (ms) on was not this pan: its probe had been lifted out. The last half hour can be so mended. */
export function forgetBlocksFrom(boiling: Boiling, id: string, from: number): void {
  const { past } = boiling.pans[id]!;
  const stays = past.happened.filter((one) => one.what !== 'block' || one.t <= from);
  if (stays.length === past.happened.length) return;
  past.happened = stays;
  runAgain(boiling, [id], from);
}

/** Where the probe of a pan went elsewhere or came back: the first minute is its lag, not the pan. */
export function panProbeMoved(pan: PanModel, setting: Setting, t: number): void {
  happenNow(pan, setting, { t: Math.max(pan.course.t, t), order: BASE_ORDER, what: 'probe' });
  nothingRecent(pan);
}

/** The pan stands on another burner, or its power was corrected: from now on as `steam` says, until the pan itself tells. */
export function panBurnerChanged(pan: PanModel, setting: Setting, { lnKgPerS, share }: Steam): void {
  happenNow(pan, setting, { t: pan.course.t, order: BASE_ORDER, what: 'burner', lnKgPerS, share });
}

function nothingRecent(pan: PanModel): void {
  forgetRecent(pan.track);
  pan.rateCPerMin = null;
}

/** What moved the water point or a probe's correction: something that was learnt, or only the weather as time went by. */
export type Moved = 'learnt' | 'weather';

/**
 * The same pan seen through a corrected probe (its temperatures move by `byC`, °C), water point or sap, as `setting` now
 * tells them. No rate and no slope comes of it.
 */
export function panCorrected(pan: PanModel, before: Surroundings, setting: Setting, byC: number, moved: Moved): void {
  const after = setting.around;
  if (before === after && byC === 0) return;
  const { track, course } = pan;
  if (byC !== 0) {
    track.values = track.values.map((value) => value + byC);
    track.blockValues = track.blockValues.map((value) => value + byC);
    track.open = track.open.map((value) => value + byC);
  }
  if (course.belief === null || course.base === null) return;
  const when = { t: course.t, order: BASE_ORDER };
  const base = baseOf(after);
  if (moved === 'weather') {
    happenNow(pan, setting, { ...when, what: 'weather', base });
    return;
  }
  const waterBy = before.waterC === null || after.waterC === null ? 0 : after.waterC - before.waterC;
  const shiftC = rounded(byC - waterBy);
  const since = { ...course.base, offsetVariance: course.base.offsetVariance + course.weatherVariance };
  if (shiftC === 0 && isSame(base, since)) return;
  happenNow(pan, setting, { ...when, what: 'base', shiftC, base });
}

/** Nothing of the base has changed that counts: a fiftieth. */
function isSame(one: Base, other: Base): boolean {
  const near = (a: number, b: number): boolean => Math.abs(a - b) <= 0.02 * Math.max(Math.abs(a), Math.abs(b)) + 1e-9;
  return (
    near(one.offsetVariance, other.offsetVariance) &&
    near(one.sapVariance, other.sapVariance) &&
    near(one.sapShare, other.sapShare) &&
    near(one.covariance, other.covariance)
  );
}
