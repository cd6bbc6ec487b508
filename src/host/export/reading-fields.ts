// The fields of a `reading` in their order, with the digits that each value deserves: one place for replay, live output and CSV.
import type { PanReading } from '../../core/pan/reading.ts';

/** Everything behind `pan`; what is not known is null. */
export function readingFields(reading: PanReading): Omit<PanReading, 'pan'> {
  return {
    temperature_c: rounded(reading.temperature_c, 100),
    water_c: rounded(reading.water_c, 100),
    rise_c: rounded(reading.rise_c, 100),
    rate_c_per_min: rounded(reading.rate_c_per_min, 1000),
    brix: rounded(reading.brix, 10),
    brix_low: rounded(reading.brix_low, 10),
    brix_high: rounded(reading.brix_high, 10),
    litres: rounded(reading.litres, 100),
    depth_mm: rounded(reading.depth_mm, 10),
    evaporation_l_per_h: rounded(reading.evaporation_l_per_h, 100),
    finish_in_s: rounded(reading.finish_in_s, 1),
    finish_low_s: rounded(reading.finish_low_s, 1),
    finish_high_s: rounded(reading.finish_high_s, 1),
    scorch_in_s: rounded(reading.scorch_in_s, 1),
    top_up_in_s: rounded(reading.top_up_in_s, 1),
    stage: reading.stage,
    probe: reading.probe,
  };
}

export type ReadingField = keyof ReturnType<typeof readingFields>;

export const READING_FIELDS = [
  'temperature_c',
  'water_c',
  'rise_c',
  'rate_c_per_min',
  'brix',
  'brix_low',
  'brix_high',
  'litres',
  'depth_mm',
  'evaporation_l_per_h',
  'finish_in_s',
  'finish_low_s',
  'finish_high_s',
  'scorch_in_s',
  'top_up_in_s',
  'stage',
  'probe',
] as const satisfies readonly ReadingField[];

/** `parts` is how many steps one unit has: 100 for two decimals. */
function rounded(value: number | null, parts: number): number | null {
  return value === null || !Number.isFinite(value) ? null : Math.round(value * parts) / parts;
}
