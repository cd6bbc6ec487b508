// When a pan that has no probe is to be read by hand again.
import type { PanReading } from '../pan/reading.ts';

/** A share of the soonest time to the finish, so that a pan is read some times before it; not oftener and not seldomer than this, ms. */
const SHARE_OF_TIME_LEFT = 0.25;
const SOONEST_MS = 2 * 60_000;
const LATEST_MS = 30 * 60_000;

/**
 * A pan from this strength on of which the finish, or the amount that it rests on, cannot be told is read this often, ms:
 * it may be minutes from it (judgement).
 */
const THICK_BRIX = 45;
const THICK_MS = 5 * 60_000;

/** The next time, ms; null for a pan with a probe, one that is off or done, and one that was never read. */
export function readAgainAt(reading: PanReading, readAt: number | null): number | null {
  if (reading.probe !== null || readAt === null) return null;
  if (reading.stage === 'off' || reading.stage === 'finished') return null;
  const soonest = reading.finish_low_s ?? reading.finish_in_s;
  const isOpen = (reading.brix ?? 0) >= THICK_BRIX && (soonest === null || reading.litres === null);
  const latest = isOpen ? THICK_MS : LATEST_MS;
  if (soonest === null) return readAt + latest;
  return readAt + Math.min(latest, Math.max(SOONEST_MS, soonest * 1000 * SHARE_OF_TIME_LEFT));
}
