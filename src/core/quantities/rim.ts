// How high a vessel's wall stands, where that was told.
import type { Vessel } from '../boil/entries.ts';

/**
 * Depth at which a vessel runs over, mm: the top of its leaning wall, or the last row of a table that was measured until
 * it was full. Null for straight walls, of which only the width was told.
 */
export function rimMm(vessel: Vessel): number | null {
  if (vessel.shape === 'round-sloped') return vessel.height_mm;
  return vessel.shape === 'measured' ? (vessel.fill.at(-1)?.mm ?? null) : null;
}
