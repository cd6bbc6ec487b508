// The whole boil as a strip in shapes: lines of columns, and alarms that stand too near each other taken together.
import type { Call, PanStrip } from '../../protocol/replay-messages.ts';
import type { Priority } from '../client/types.ts';

/** One line upwards: what it goes by, and the least height that it fills, in its own unit. */
export type StripLine = 'temperature' | 'strength';
/** A pan that only simmers is not drawn as if it leapt, °C or °Bx. */
const LEAST_SPAN: Record<StripLine, number> = { temperature: 2, strength: 10 };
/** Below the water point so far down, °C, a pan only warms up: the strip ends there. */
const SHOWN_BELOW_WATER = 4;

export interface Scale {
  least: number;
  greatest: number;
}

const known = (values: readonly (number | null)[]): number[] => values.filter((value) => value !== null);
/** Over columns of a boil of any length, which are too many to be handed to Math.min as arguments. */
const leastOf = (values: readonly number[]): number =>
  values.reduce((least, value) => Math.min(least, value), Infinity);
const greatestOf = (values: readonly number[]): number =>
  values.reduce((greatest, value) => Math.max(greatest, value), -Infinity);

/** What all pans' lines lie between; null where nothing is known. */
export function scaleOf(pans: readonly PanStrip[], line: StripLine): Scale | null {
  const lows = pans.flatMap((pan) => known(line === 'strength' ? pan.brix : pan.low));
  const highs = pans.flatMap((pan) => known(line === 'strength' ? pan.brix : [...pan.high, ...pan.finish]));
  if (lows.length === 0) return null;
  const floor = line === 'strength' ? 0 : leastOf(pans.flatMap((pan) => known(pan.water))) - SHOWN_BELOW_WATER;
  const least = line === 'strength' ? 0 : Number.isFinite(floor) ? Math.max(floor, leastOf(lows)) : leastOf(lows);
  return { least, greatest: Math.max(greatestOf(highs), least + LEAST_SPAN[line]) };
}

/** Heights from 0 (top) to `height` for the columns of one pan, as the path of an SVG of one unit a column. */
export function pathOf(values: readonly (number | null)[], { least, greatest }: Scale, height: number): string {
  let pen = 'M';
  let path = '';
  for (const [i, value] of values.entries()) {
    if (value === null) {
      pen = 'M';
      continue;
    }
    const up = Math.min(1, Math.max(0, (value - least) / (greatest - least)));
    path += `${pen}${i + 0.5} ${(height * (1 - up)).toFixed(1)}`;
    pen = 'L';
  }
  return path;
}

/** Alarms at one place of the strip: the worst of them is shown, with how many there are. */
export interface Cluster {
  /** ms of boil time of the first. */
  at: number;
  priority: Priority;
  calls: Call[];
}

const RANK: Record<Priority, number> = { high: 0, medium: 1, low: 2 };

/** In order of time; those that lie nearer than `apartMs` to the first of a cluster join it. */
export function clustersOf(calls: readonly Call[], apartMs: number): Cluster[] {
  const clusters: Cluster[] = [];
  for (const call of [...calls].sort((a, b) => a.raised - b.raised)) {
    const last = clusters.at(-1);
    if (last === undefined || call.raised - last.at >= apartMs) {
      clusters.push({ at: call.raised, priority: call.priority, calls: [call] });
      continue;
    }
    last.calls.push(call);
    if (RANK[call.priority] < RANK[last.priority]) last.priority = call.priority;
  }
  return clusters;
}

/** The moment nearest to `t` within `withinMs`, else `t` itself: a press beside an alarm goes to the alarm. */
export function snapped(t: number, moments: readonly number[], withinMs: number): number {
  const near = moments.filter((at) => Math.abs(at - t) <= withinMs);
  return near.length === 0 ? t : near.reduce((best, at) => (Math.abs(at - t) < Math.abs(best - t) ? at : best));
}
