// How much a pan holds up to its rim, where its size was told.
import type { Vessel } from '../core/boil/entries.ts';
import { litresAtDepth } from '../core/physics/vessel.ts';
import { rimMm } from '../core/quantities/rim.ts';

/** Litres up to the rim; null where nobody told the vessel or how high its wall is. */
export function heldLitres(vessel: Vessel | undefined): number | null {
  const rim = vessel === undefined ? null : rimMm(vessel);
  return vessel === undefined || rim === null ? null : litresAtDepth(vessel, rim);
}
