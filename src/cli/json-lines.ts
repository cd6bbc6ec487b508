// The JSON lines that `replay`, `watch` and `practice` print, with the digits that each value deserves.
import type { AlarmTransition } from '../core/alarms/alarm.ts';
import type { PanReading } from '../core/pan/reading.ts';

export function readingLine(t: number, reading: PanReading): string {
  return JSON.stringify({
    kind: 'reading',
    t,
    pan: reading.pan,
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
  });
}

export function alarmLine(transition: AlarmTransition): string {
  const { t, pan, port, alarm, event, priority, why } = transition;
  return JSON.stringify({ kind: 'alarm', t, pan, port, alarm, event, priority, why });
}

/** `parts` is how many steps one unit has: 100 for two decimals. */
function rounded(value: number | null, parts: number): number | null {
  return value === null || !Number.isFinite(value) ? null : Math.round(value * parts) / parts;
}
