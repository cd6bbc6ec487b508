// What a pan's card says of a thermometer that was read by hand: when, and what was typed where something else counts.
import { counts } from '../../protocol/mark-flow.ts';
import type { Now, Reading, Settings } from '../client/types.ts';
import { say } from '../language/say.ts';
import { temperature } from './amounts.ts';
import { ago, standsAtItsEnd, timeOfDay } from './clock.ts';
import { lastHeat } from './last-heat.ts';
import { isEmptied } from './pan-words.ts';

/**
 * For a pan without a probe whose thermometer somebody has read; null for any other, and for one that was emptied since. `finishC` is where it is done, true °C,
 * null where that is not known.
 */
export function readByHand(now: Now, reading: Reading, settings: Settings, finishC: number | null): string | null {
  if (reading.probe !== null || isEmptied(reading)) return null;
  const last = lastRead(now, reading.pan);
  if (last === null) return null;
  const done = doneAt(now, reading, last.celsius, finishC);
  const read = readWords(now, reading, settings, last);
  return done === null
    ? read
    : `${read.replace(/\.$/u, '')}. ${say('pans.done_when', { at: temperature(done, settings) })}`;
}

/** "read 12 min ago", of a temperature that is shown as it was read by hand; null for any other. */
export function readAgo(now: Now, { pan, probe, temperature_c: celsius }: Reading): string | null {
  const last = probe === null && celsius !== null ? lastRead(now, pan) : null;
  return last === null ? null : say('pans.read_ago', { ago: ago((now.t - last.at) / 1000) });
}

/** Less a thermometer in the hand does not tell, °C. */
const TELLS_C = 0.1;

/** Somebody waits for the finish. */
const AWAITED: ReadonlySet<Reading['stage']> = new Set(['thickening', 'near-finish']);

/** What a thermometer that is known to be off shows where the pan is done, °C; null where it shows that itself, or nobody waits for it. */
function doneAt(
  now: Now,
  { pan, stage, temperature_c: is }: Reading,
  typedC: number,
  finishC: number | null,
): number | null {
  const countsC = is ?? lastHeat(now, pan)?.celsius ?? null;
  if (finishC === null || countsC === null || !AWAITED.has(stage)) return null;
  const byC = countsC - typedC;
  return Math.abs(byC) < TELLS_C ? null : finishC - byC;
}

function readWords(now: Now, reading: Reading, settings: Settings, last: { at: number; celsius: number }): string {
  const time = timeOfDay(now, last.at);
  const read = standsAtItsEnd(now)
    ? say('pans.read_then', { time })
    : say('pans.read', { time, ago: ago((now.t - last.at) / 1000) });
  const believed = reading.temperature_c === null ? null : temperature(reading.temperature_c, settings);
  const typed = temperature(last.celsius, settings);
  if (believed === null || believed === typed) return read;
  const byC = (reading.temperature_c ?? 0) - last.celsius;
  const { isChecked, readings } = whatTaught(now, byC);
  if (Math.abs(byC) < READ_TO_C || (readings === 0 && !isChecked))
    return `${read}. ${say('pans.counts_as', { typed, counts: believed })}`;
  const [high, low] = isChecked ? (readings > 0 ? BY_BOTH : BY_WATER) : BY_DENSITY;
  return `${read}. ${say(byC < 0 ? high : low, { typed, counts: believed, readings })}`;
}

const BY_WATER = ['pans.checked_too_high', 'pans.checked_too_low'] as const;
const BY_DENSITY = ['pans.reads_too_high', 'pans.reads_too_low'] as const;
const BY_BOTH = ['pans.taught_too_high', 'pans.taught_too_low'] as const;

/** What showed that the thermometer in the hand is off by `byC`, °C: boiling water, and so many density readings of pans that are read with it. */
function whatTaught(now: Now, byC: number): { isChecked: boolean; readings: number } {
  const standing = now.marks.filter(counts).map(({ mark }) => mark);
  const read = new Set(standing.flatMap((mark) => (mark.kind === 'reading' ? [mark.pan] : [])));
  const readings = standing.filter((mark) => mark.kind === 'density' && read.has(mark.pan)).length;
  const checks = standing.flatMap((mark) =>
    mark.kind === 'water-check' && mark.probe === undefined ? [mark.celsius] : [],
  );
  const [check, waterC] = [checks.at(-1), now.water.celsius];
  if (check === undefined || waterC === null) return { isChecked: check !== undefined, readings };
  const byWaterC = waterC - check;
  const isChecked = Math.abs(byWaterC) >= READ_TO_C && byWaterC > 0 === byC > 0;
  // Where boiling water showed all of it, the density readings only agreed.
  return { isChecked, readings: isChecked && Math.abs(byC - byWaterC) < READ_TO_C ? 0 : readings };
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
