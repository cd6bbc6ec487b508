// Which readings by hand were taken back, and a curve without the stretches that only they made.
import type { Now } from '../client/types.ts';
import type { CurveSlice } from './curve-pyramid.ts';

/** From when on, ms, and until when at the latest, a curve shows so many °C only because of a reading that was taken back. */
export interface TakenBack {
  from: number;
  to: number;
  celsius: number;
}

/** A row of the curve is so long at the finest, ms: what stood in part of it stands in all of it. */
const ROW_MS = 2000;
/** The same number, °C. */
const SAME_C = 0.005;

/** Of one pan. Where a reading that stands shows the same, the curve is right from then on. */
export function takenBackOf({ marks }: Pick<Now, 'marks'>, pan: string): TakenBack[] {
  const readings = marks.flatMap(({ t, mark, withdrawn, takenC }) =>
    mark.kind === 'reading' && mark.pan === pan ? [{ t, withdrawn, celsius: takenC ?? mark.celsius }] : [],
  );
  return readings
    .filter(({ withdrawn }) => withdrawn)
    .flatMap(({ t: from, celsius }) => {
      const alike = readings.filter((one) => !one.withdrawn && Math.abs(one.celsius - celsius) < SAME_C);
      const to = Math.min(...alike.map(({ t }) => t));
      return to <= from ? [] : [{ from, to, celsius }];
    });
}

/** The curve without them; what goes on before and after is drawn on as it was. */
export function withoutTakenBack(curve: CurveSlice, taken: readonly TakenBack[]): CurveSlice {
  const isOut = (t: number, values: readonly (number | null)[]): boolean =>
    taken.some(
      ({ from, to, celsius }) =>
        t >= from - ROW_MS && t < to && values.some((value) => value !== null && Math.abs(value - celsius) < SAME_C),
    );
  const keeps = curve.t.map((t, i) => !isOut(t, [curve.low[i] ?? null, curve.high[i] ?? null]));
  if (keeps.every(Boolean)) return curve;
  const only = <One>(values: readonly One[]): One[] => values.filter((_, i) => keeps[i]);
  return {
    t: only(curve.t),
    low: only(curve.low),
    high: only(curve.high),
    water: only(curve.water),
    finish: only(curve.finish),
    scorch: only(curve.scorch),
  };
}
