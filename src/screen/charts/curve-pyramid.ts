// A pan's curve over ever longer stretches, each with its least and greatest, built once as it comes: any stretch is drawn at once.
import type { Curve } from '../client/types.ts';

/** What is drawn of a stretch; nulls lift the pen. No alarm and no number that somebody reads is ever taken from it. */
export type CurveSlice = Pick<Curve, 't' | 'low' | 'high' | 'water' | 'finish' | 'scorch'>;

/** The stretch of one row of the lowest floor, ms: as fine as the host keeps a curve. */
const FINEST_MS = 2000;
/** The rows of the uppermost floor are 2.3 h long: a boil of a month is a few hundred of them. */
const FLOORS = 13;
/** A gap longer than this is drawn as a gap, ms. */
const LONGEST_JOIN_MS = 60_000;
const LIMITS = ['water', 'finish', 'scorch'] as const;

interface Floor extends CurveSlice {
  /** Each row's place in time, in rows from the beginning of the boil; rows without a reading are left out. */
  places: number[];
  low: number[];
  high: number[];
}

type Row = Record<'t' | 'low' | 'high', number> & Record<(typeof LIMITS)[number], number | null>;

const emptyFloor = (): Floor => ({ places: [], t: [], low: [], high: [], water: [], finish: [], scorch: [] });

export class CurvePyramid {
  readonly #floors = Array.from({ length: FLOORS }, emptyFloor);

  /** Boil time of the last reading, ms; null while there is none. */
  get lastT(): number | null {
    return this.#floors[0]?.t.at(-1) ?? null;
  }

  /** Takes in what comes after; what is known already, such as the row that is still growing, may come again. */
  append({ t: times, low, high, water, finish, scorch }: CurveSlice): void {
    for (const [i, t] of times.entries()) {
      const [least, greatest] = [low[i] ?? null, high[i] ?? null];
      if (least === null || greatest === null || t < (this.lastT ?? 0)) continue;
      const limits = { water: water[i] ?? null, finish: finish[i] ?? null, scorch: scorch[i] ?? null };
      const row = { t, low: least, high: greatest, ...limits };
      for (const [level, floor] of this.#floors.entries()) addTo(floor, Math.floor(t / rowMs(level)), row);
    }
  }

  /**
   * What lies between two boil times, ms, and one row beyond each: from the lowest floor that has at most `most` rows
   * for it. Every row has the least and the greatest of all readings in it.
   */
  between(from: number, to: number, most: number): CurveSlice {
    const fits = this.#floors.findIndex((_, level) => (to - from) / rowMs(level) <= most);
    const level = fits < 0 ? FLOORS - 1 : fits;
    const floor = this.#floors[level] ?? emptyFloor();
    const first = Math.max(0, firstFrom(floor.places, Math.floor(from / rowMs(level))) - 1);
    const end = Math.min(floor.places.length, firstFrom(floor.places, Math.floor(to / rowMs(level)) + 1) + 1);
    return sliced(floor, first, end, rowMs(level));
  }
}

const rowMs = (level: number): number => FINEST_MS * 2 ** level;

function addTo(floor: Floor, place: number, row: Row): void {
  const last = floor.places.length - 1;
  if (floor.places[last] === place) {
    floor.low[last] = Math.min(floor.low[last] ?? row.low, row.low);
    floor.high[last] = Math.max(floor.high[last] ?? row.high, row.high);
    floor.t[last] = row.t;
    for (const name of LIMITS) floor[name][last] = row[name];
    return;
  }
  floor.places.push(place);
  floor.t.push(row.t);
  floor.low.push(row.low);
  floor.high.push(row.high);
  for (const name of LIMITS) floor[name].push(row[name]);
}

/** The index of the first place that is not before `place`, by halving. */
function firstFrom(places: readonly number[], place: number): number {
  let [low, high] = [0, places.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((places[middle] ?? 0) < place) low = middle + 1;
    else high = middle;
  }
  return low;
}

function sliced(floor: Floor, first: number, end: number, longMs: number): CurveSlice {
  const slice: CurveSlice = { t: [], low: [], high: [], water: [], finish: [], scorch: [] };
  for (let row = first; row < end; row += 1) {
    const gapMs = row === first ? 0 : ((floor.places[row] ?? 0) - (floor.places[row - 1] ?? 0) - 1) * longMs;
    if (gapMs > LONGEST_JOIN_MS) {
      slice.t.push((floor.t[row - 1] ?? 0) + 1);
      for (const name of ['low', 'high', ...LIMITS] as const) slice[name].push(null);
    }
    slice.t.push(floor.t[row] ?? 0);
    for (const name of ['low', 'high', ...LIMITS] as const) slice[name].push(floor[name][row] ?? null);
  }
  return slice;
}
