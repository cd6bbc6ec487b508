// The course of a pan that only people read: each reading stands where it was read, not where it was typed, and none that was taken back.
import type { BoilState } from '../../core/boil/fold.ts';
import { counts, empties } from '../../core/boil/mark-flow.ts';
import { COURSE_EVERY_MS, type PanCourse } from '../../core/compare/course.ts';
import { sugarRiseC } from '../../core/pan/pan-state.ts';
import { strengthFromRise } from '../../core/physics/sugar-solution.ts';

/** A reading by hand stands so long, ms, as on the pan's card. */
const STANDS_MS = 10 * 60_000;

interface ReadByHand {
  at: number;
  celsius: number;
  /** Until when it stands, ms. */
  until: number;
}

/**
 * The course as the readings by hand of the pan tell it, where nothing else read it. What was believed of its strength while
 * the boil ran stays where every reading was noted as it was read; else the strength is what each reading shows.
 */
export function withHandReadings(course: PanCourse, state: BoilState): PanCourse {
  const { id } = course;
  const isProbed =
    (state.header.pans ?? []).some((pan) => pan.id === id && pan.probe !== undefined) ||
    state.marks.some(({ mark }) => mark.kind === 'move-probe' && mark.pan === id);
  const all = state.marks.filter(({ mark }) => mark.kind === 'reading' && mark.pan === id);
  if (isProbed || all.length === 0) return course;
  const readings = standing(state, id);
  const isAsItRan = all.every(({ t, at, withdrawn }) => !withdrawn && t - at < COURSE_EVERY_MS);
  const waterC = state.around[id]?.waterC ?? null;
  const [celsius, brix, water] = [empty(course), empty(course), [...course.water]];
  for (const reading of readings) {
    for (let minute = Math.floor(reading.at / COURSE_EVERY_MS); minute * COURSE_EVERY_MS < reading.until; minute += 1) {
      if (minute >= celsius.length) break;
      celsius[minute] = Number(reading.celsius.toFixed(2));
      water[minute] ??= waterC === null ? null : Number(waterC.toFixed(2));
      brix[minute] = strengthShown(state, id, reading.celsius - (water[minute] ?? Number.NaN));
    }
  }
  return { ...course, celsius, water, brix: isAsItRan ? course.brix : brix };
}

const empty = ({ celsius }: PanCourse): (number | null)[] => celsius.map(() => null);

/** In order of time; each until the next, until its pan was taken off or emptied, or as long as one stands. */
function standing({ marks }: BoilState, id: string): ReadByHand[] {
  const counted = marks.filter(counts);
  const readings = counted
    .flatMap(({ at, mark, takenC }) =>
      mark.kind === 'reading' && mark.pan === id ? [{ at, celsius: takenC ?? mark.celsius }] : [],
    )
    .toSorted((one, other) => one.at - other.at);
  const offs = counted.flatMap(({ at, mark }) =>
    (mark.kind === 'flame' && mark.pan === id && mark.level === 0) || empties(mark, id) ? [at] : [],
  );
  return readings.map((one, place) => {
    const next = readings[place + 1]?.at ?? Infinity;
    return { ...one, until: Math.min(one.at + STANDS_MS, next, ...offs.filter((off) => off > one.at)) };
  });
}

/** °Bx of a pan that boils `riseC` over water; null under a boil. */
function strengthShown(state: BoilState, id: string, riseC: number): number | null {
  const [around, design] = [state.around[id], state.designs[id]];
  if (around === undefined || design === undefined || !(riseC > 0)) return null;
  const brix = strengthFromRise(sugarRiseC(around, riseC), design.shares, around.pressureHpa ?? 1013.25);
  return brix === null ? null : Number(brix.toFixed(2));
}
