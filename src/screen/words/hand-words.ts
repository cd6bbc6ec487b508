// What a pan's card says of a thermometer that was read by hand: when, and what was typed where something else counts.
import type { Now, Reading, Settings } from '../client/types.ts';
import { say } from '../language/say.ts';
import { temperature } from './amounts.ts';
import { ago, timeOfDay } from './clock.ts';

/** For a pan without a probe whose thermometer somebody has read; null for any other. */
export function readByHand(now: Now, reading: Reading, settings: Settings): string | null {
  if (reading.probe !== null) return null;
  const last = lastRead(now, reading.pan);
  if (last === null) return null;
  const read = say('pans.read', { time: timeOfDay(now, last.at), ago: ago((now.t - last.at) / 1000) });
  const counts = reading.temperature_c === null ? null : temperature(reading.temperature_c, settings);
  const typed = temperature(last.celsius, settings);
  if (counts === null || counts === typed) return read;
  const byC = (reading.temperature_c ?? 0) - last.celsius;
  const standing = now.marks.filter((each) => !each.withdrawn && !each.questioned);
  const isChecked = standing.some(({ mark }) => mark.kind === 'water-check' && mark.probe === undefined);
  const readings = standing.filter(({ mark }) => mark.kind === 'density').length;
  if (Math.abs(byC) < READ_TO_C || (readings === 0 && !isChecked))
    return `${read}. ${say('pans.counts_as', { typed, counts })}`;
  if (isChecked)
    return `${read}. ${say(byC < 0 ? 'pans.checked_too_high' : 'pans.checked_too_low', { typed, counts })}`;
  return `${read}. ${say(byC < 0 ? 'pans.reads_too_high' : 'pans.reads_too_low', { typed, counts, readings })}`;
}

/** A thermometer in the hand is read to about this, °C: less says nothing against it (common practice). */
const READ_TO_C = 0.3;

function lastRead({ marks }: Now, pan: string): { at: number; celsius: number } | null {
  let last: { at: number; celsius: number } | null = null;
  for (const { mark, at, withdrawn } of marks) {
    if (mark.kind !== 'reading' || mark.pan !== pan || withdrawn) continue;
    if (last === null || at >= last.at) last = { at, celsius: mark.celsius };
  }
  return last;
}
