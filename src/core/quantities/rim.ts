// How high a vessel's wall stands, where that was told.
import type { Vessel } from '../boil/entries.ts';

/**
 * Depth at which a vessel runs over, mm: the top of its wall, or the last row of a table that was measured until it was
 * full. Null where nobody said how high a straight wall is.
 */
export function rimMm(vessel: Vessel): number | null {
  return (vessel.shape === 'measured' ? vessel.fill.at(-1)?.mm : vessel.height_mm) ?? null;
}
