// The shape of a pan's last two minutes: four means of half a minute each, in which a pour, a lifted tip and a dead fire look unlike.
import type { TemperatureTrack } from './temperature-track.ts';

const PART_MS = 30_000;
const PARTS = 4;
/** Fewer blocks than this are no mean. */
const LEAST_BLOCKS = 2;

/** Adding places, used again: this is looked at with every block. */
const sums = new Float64Array(PARTS);
const counts = new Float64Array(PARTS);

/** Means of four half minutes up to the last block, oldest first, °C, and the moment at which they begin, ms. */
export interface LastMinutes {
  from: number;
  parts: [number, number, number, number];
  /** How far the last quarter minute lies under the one before it, °C. */
  lately: number;
}

/** null where a part holds too few blocks, or where all that is before `since` (ms) says nothing of now. */
export function lastMinutes({ blockTimes, blockValues }: TemperatureTrack, since: number): LastMinutes | null {
  const end = blockTimes.at(-1);
  if (end === undefined || end - PARTS * PART_MS < since) return null;
  sums.fill(0);
  counts.fill(0);
  for (let i = blockTimes.length - 1; i >= 0; i--) {
    const part = PARTS - 1 - Math.floor((end - blockTimes[i]!) / PART_MS);
    if (part < 0) break;
    sums[part]! += blockValues[i]!;
    counts[part]! += 1;
  }
  for (let part = 0; part < PARTS; part++) if (counts[part]! < LEAST_BLOCKS) return null;
  const mean = (part: number): number => sums[part]! / counts[part]!;
  const last = mean(3);
  return {
    from: end - PARTS * PART_MS,
    parts: [mean(0), mean(1), mean(2), last],
    lately: last - meanOfLast(blockValues, Math.ceil(counts[3]! / 2)),
  };
}

function meanOfLast(values: readonly number[], count: number): number {
  let sum = 0;
  for (let i = values.length - count; i < values.length; i++) sum += values[i]!;
  return sum / count;
}
