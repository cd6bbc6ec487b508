// How much a vessel holds up to its rim, where its size was told.
import type { Vessel } from '../boil/entries.ts';
import { litresAtDepth } from '../physics/vessel.ts';
import { rimMm } from '../quantities/rim.ts';

/** Litres up to the rim; null where nobody told the vessel or how high its wall is. */
export function heldLitres(vessel: Vessel | null): number | null {
  const rim = vessel === null ? null : rimMm(vessel);
  return vessel === null || rim === null ? null : litresAtDepth(vessel, rim);
}
