// The JSON lines that `replay`, `watch` and `practice` print.
import type { AlarmTransition } from '../core/alarms/alarm.ts';
import type { PanReading } from '../core/pan/reading.ts';
import { readingFields } from '../host/export/reading-fields.ts';

/** A reading as a JSON line; t in ms of boil time. */
export function readingLine(t: number, reading: PanReading): string {
  return JSON.stringify({ kind: 'reading', t, pan: reading.pan, ...readingFields(reading) });
}

/** A change of an alarm as a JSON line. */
export function alarmLine(transition: AlarmTransition): string {
  const { t, pan, port, alarm, event, priority, why } = transition;
  return JSON.stringify({ kind: 'alarm', t, pan, port, alarm, event, priority, why });
}
