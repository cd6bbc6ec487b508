// Keeps the pans' curves for the charts and answers a stretch of one; no alarm or readout ever takes a number from here.
import { panReadings } from '../core/boil/fold.ts';
import type { BoilState } from '../core/boil/fold.ts';
import type { PanReading } from '../core/pan/reading.ts';
import { panLimits } from '../core/boil/view.ts';
import type { Curve } from '../protocol/messages.ts';
import { COLUMNS, CurveSeries } from './curve-series.ts';

/** Also how often a boil is sampled that is folded faster than it ran. */
export const BUCKET_MS = 2000;
/** A gap longer than this is drawn as a gap. */
const LONGEST_JOIN_MS = 60_000;

/** What was seen; what is ahead comes from the pan's model. */
export type CurveSeen = Omit<Curve, 'ahead'>;

export class CurveStore {
  readonly #series = new Map<string, CurveSeries>();
  #sampledT = Number.NEGATIVE_INFINITY;

  /** Adds what the pans show at boil time `t`, ms, unless the last sample is younger than `everyMs`. */
  sample(state: BoilState, t: number, everyMs: number): void {
    if (t - this.#sampledT < everyMs) return;
    this.take(state, t, panReadings(state, t));
  }

  /** Adds the readings that the pans show at boil time `t`, ms. */
  take(state: BoilState, t: number, readings: readonly PanReading[]): void {
    this.#sampledT = t;
    for (const { pan, temperature_c, water_c } of readings) {
      if (temperature_c === null) continue;
      const { finish_c, scorch_c } = panLimits(state, pan);
      this.#seriesOf(pan).add(Math.floor(t / BUCKET_MS), {
        low: temperature_c,
        high: temperature_c,
        water: water_c,
        finish: finish_c,
        scorch: scorch_c,
      });
    }
  }

  /** The curve between two boil times, ms, in at most `points` buckets; a pan never seen has an empty one. */
  between(pan: string, from: number, to: number, points: number): CurveSeen {
    const curve: CurveSeen = { pan, t: [], low: [], high: [], water: [], finish: [], scorch: [] };
    const series = this.#series.get(pan);
    if (series === undefined) return curve;
    const first = series.rowOf(Math.max(0, Math.floor(from / BUCKET_MS)));
    const end = series.rowOf(Math.max(0, Math.floor(to / BUCKET_MS) + 1));
    const step = Math.max(1, Math.ceil((end - first) / points));
    for (let row = first; row < end; row += step) pushRows(curve, series, row, Math.min(end, row + step));
    return curve;
  }

  #seriesOf(pan: string): CurveSeries {
    const series = this.#series.get(pan) ?? new CurveSeries();
    this.#series.set(pan, series);
    return series;
  }
}

/** One point for the rows from `start` up to, not with, `end`, at the time of the last of them. */
function pushRows(curve: CurveSeen, series: CurveSeries, start: number, end: number): void {
  const latest = end - 1;
  const gapMs = start === 0 ? 0 : (series.numberAt(start) - series.numberAt(start - 1)) * BUCKET_MS;
  const before = curve.t.at(-1);
  if (before !== undefined && gapMs > LONGEST_JOIN_MS) pushNulls(curve, before + BUCKET_MS);
  curve.t.push(series.numberAt(latest) * BUCKET_MS);
  curve.low.push(extreme(series, 'low', start, end, Math.min));
  curve.high.push(extreme(series, 'high', start, end, Math.max));
  for (const name of ['water', 'finish', 'scorch'] as const) curve[name].push(series.at(name, latest));
}

function extreme(
  series: CurveSeries,
  name: 'low' | 'high',
  start: number,
  end: number,
  choose: (one: number, other: number) => number,
): number | null {
  let found: number | null = null;
  for (let row = start; row < end; row += 1) {
    const value = series.at(name, row);
    if (value !== null) found = found === null ? value : choose(found, value);
  }
  return found;
}

function pushNulls(curve: CurveSeen, t: number): void {
  curve.t.push(t);
  for (const name of COLUMNS) curve[name].push(null);
}
