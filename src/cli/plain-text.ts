// What commands print for a person: one line for a pan, one for an alarm, with plain units.
import type { AlarmTransition } from '../core/alarms/alarm.ts';
import type { Header } from '../core/boil/entries.ts';
import type { PanReading } from '../core/pan/reading.ts';

/** Boil time as hours, minutes and seconds. */
export function clockText(t: number): string {
  const seconds = Math.floor(t / 1000);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${Math.floor(seconds / 3600)}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
}

/** A reading as a line of columns; t in ms of boil time. */
export function readingText(t: number, reading: PanReading, header: Header): string {
  const name = header.pans?.find(({ id }) => id === reading.pan)?.name ?? reading.pan;
  return [
    clockText(t).padStart(9),
    name.padEnd(16),
    reading.stage.padEnd(12),
    quantity(reading.temperature_c, 1, '°C').padStart(10),
    `rise ${quantity(reading.rise_c, 1, '°C')}`.padEnd(14),
    quantity(reading.brix, 0, '°Bx').padStart(8),
    quantity(reading.litres, 1, 'l').padStart(8),
    finishText(reading),
    reading.probe === null || reading.probe === 'ok' ? '' : `probe ${reading.probe}`,
  ]
    .join('  ')
    .trimEnd();
}

/** A change of an alarm as a line. */
export function alarmText(transition: AlarmTransition): string {
  const where = transition.pan ?? transition.port ?? '';
  const words = [clockText(transition.t).padStart(9), transition.event.toUpperCase(), transition.alarm, where];
  return `${words.filter((word) => word !== '').join('  ')}: ${transition.why}`;
}

/** Whether somebody has to come. */
export function isCall({ event }: AlarmTransition): boolean {
  return event === 'raised' || event === 'escalated' || event === 'returned';
}

function finishText({ finish_in_s, finish_low_s, finish_high_s }: PanReading): string {
  if (finish_in_s === null) return '';
  const minutes = (seconds: number) => Math.round(seconds / 60);
  const range =
    finish_low_s === null || finish_high_s === null ? '' : ` (${minutes(finish_low_s)}–${minutes(finish_high_s)})`;
  return `finish in ${minutes(finish_in_s)} min${range}`;
}

function quantity(value: number | null, decimals: number, unit: string): string {
  return value === null ? `– ${unit}` : `${value.toFixed(decimals)} ${unit}`;
}
