// The JSON lines that `replay`, `watch` and `practice` print.
import type { AlarmTransition } from '../core/alarms/alarm.ts';
import type { PanReading } from '../core/pan/reading.ts';
import { readingFields } from '../host/export/reading-fields.ts';

export function readingLine(t: number, reading: PanReading): string {
  return JSON.stringify({ kind: 'reading', t, pan: reading.pan, ...readingFields(reading) });
}

export function alarmLine(transition: AlarmTransition): string {
  const { t, pan, port, alarm, event, priority, why } = transition;
  return JSON.stringify({ kind: 'alarm', t, pan, port, alarm, event, priority, why });
}
