// Lays a past boil's pan behind tonight's: where it was as strong as tonight's is now, or from the start.
import {
  type BoilCourse,
  COURSE_EVERY_MS,
  finishOf,
  hasBoiled,
  type PanCourse,
  panOf,
} from '../../core/compare/course.ts';
import { stretchOf, timeAtBrix } from '../../core/compare/stretches.ts';
import type { BoilSummary } from '../../notebook/contract.ts';
import type { Ghost } from '../../protocol/compare-messages.ts';

/** A pan of the live boil now. */
export interface Tonight {
  pan: string;
  /** As sapKey names it. */
  sap: string;
  /** ms of boil time */
  t: number;
  /** null while it is not known. */
  brix: number | null;
}

/** Under this a thermometer hardly tells the strength, °Bx: then both begin at their start. */
const TELLING_BRIX = 8;
/** The best went fastest through this, °Bx. */
const FROM_BRIX = 30;
const TO_BRIX = 60;

/** A boil that came to no finish is one to be measured by only if it boiled for so long: what was only tried out is none, s (judgement). */
const LEAST_BEST_S = 3600;

/** null where the boil has no pan that was seen. */
export function ghostOf(summary: BoilSummary, course: BoilCourse, tonight: Tonight, points: number): Ghost | null {
  const pan = likePan(course, tonight.pan);
  return pan === null ? null : laid(summary, course, pan, tonight, points);
}

/** The fastest of those of the same pan, else of all, of the same sap; null where none went through the whole stretch. */
export function bestGhost(
  all: readonly { summary: BoilSummary; course: BoilCourse }[],
  tonight: Tonight,
  points: number,
): Ghost | null {
  const timed = all.flatMap(({ summary, course }) => {
    const pan = likePan(ofSap(course, tonight.sap), tonight.pan);
    const isOne = pan !== null && (finishOf(course, pan.id) !== null || hasBoiled(pan, LEAST_BEST_S));
    const minutes = !isOne ? null : (stretchOf(pan, FROM_BRIX, TO_BRIX)?.minutes ?? null);
    return pan === null || minutes === null ? [] : [{ summary, course, pan, minutes }];
  });
  const same = timed.filter(({ pan }) => pan.id === tonight.pan);
  const [best] = (same.length > 0 ? same : timed).toSorted((one, other) => one.minutes - other.minutes);
  return best === undefined ? null : laid(best.summary, best.course, best.pan, tonight, points);
}

/** The pans of one sap, with their finishes. */
function ofSap({ pans, finishes }: BoilCourse, sap: string): BoilCourse {
  const same = pans.filter((pan) => pan.sap === sap);
  return { pans: same, finishes: finishes.filter((one) => same.some(({ id }) => id === one.pan)) };
}

const likePan = (course: BoilCourse, pan: string): PanCourse | null => panOf(course, pan) ?? panOf(course, null);

function laid(
  { boil, name, started }: BoilSummary,
  course: BoilCourse,
  pan: PanCourse,
  { t: now, brix }: Tonight,
  points: number,
): Ghost {
  const asStrong = brix === null || brix < TELLING_BRIX ? null : timeAtBrix(pan, brix);
  const shiftMs = asStrong === null ? 0 : Math.round(now - asStrong * COURSE_EVERY_MS);
  const finished = finishOf(course, pan.id);
  const step = Math.max(1, Math.ceil(pan.celsius.length / points));
  const minutes = pan.celsius.map((_, minute) => minute).filter((minute) => minute % step === 0);
  return {
    ...{ boil, name, started },
    pan: { id: pan.id, name: pan.name },
    alignedBy: asStrong === null ? 'start' : 'strength',
    t: minutes.map((minute) => minute * COURSE_EVERY_MS + shiftMs),
    celsius: minutes.map((minute) => pan.celsius[minute] ?? null),
    brix: minutes.map((minute) => pan.brix[minute] ?? null),
    finished: finished === null ? null : finished + shiftMs,
  };
}
