// What each pan of a plan asks of a person: how fast it boils away, how often it wants cold sap, and the smallest batch that it can finish.
import { HOT_VOLUME } from '../pan/filter/liquid.ts';
import type { PanDesign } from '../pan/setup.ts';
import { boiledOffKgPerS } from '../physics/heat.ts';
import { litresAtDepth } from '../physics/vessel.ts';
import { Z80 } from '../quantities/spread.ts';
import type { Burner } from './burners.ts';

/** null is not known; ranges hold the middle 80 %. */
export interface PanPlanned {
  pan: string;
  name: string;
  /** Water that leaves it an hour at a full boil, litres at 20 °C. */
  litres_per_hour: number | null;
  litres_per_hour_low: number | null;
  litres_per_hour_high: number | null;
  /** By what earlier boils showed of its fire; else by its power or size. */
  seen_before: boolean;
  /** Share of the fire's nominal power that is taken to end in the sap; null where no power counts, but the size or earlier boils. */
  power_share: number | null;
  /** Hours from full to where it wants sap again; a longer absence leaves it too shallow. */
  hand_every_hours: number | null;
  /** How deep full is taken to be, mm. */
  full_mm: number;
  /** Sap that makes just enough syrup to stand at the least depth in this pan, litres at 20 °C. */
  smallest_batch_litres: number | null;
  /** Syrup of the whole batch stands at its least depth in this pan or deeper. */
  can_finish: boolean | null;
}

/** Filled for boiling, mm: a hand's breadth, below the rim of most pots (common practice). */
const FULL_MM = 100;
/** Poured in again when it stands at twice its least depth (common practice). */
const AGAIN = 2;

export interface Batch {
  /** All the sap and all the syrup, litres at 20 °C. */
  sapLitres: number;
  syrupLitres: number;
  waterC: number;
}

/** What each pan asks of a person during the batch; `burners` in the order of the designs. */
export function pansPlanned(designs: readonly PanDesign[], burners: readonly Burner[], batch: Batch): PanPlanned[] {
  return designs.map((design, index) => panPlanned(design, burners[index]!, batch));
}

function panPlanned(design: PanDesign, burner: Burner, batch: Batch): PanPlanned {
  const perHour = litresPerHour(burner.usefulW, batch.waterC);
  const spread = Math.exp(Z80 * burner.share);
  const held = burner.sized ? burner.leastLitres : null;
  return {
    pan: design.id,
    name: design.name,
    litres_per_hour: perHour,
    litres_per_hour_low: perHour === null ? null : perHour / spread,
    litres_per_hour_high: perHour === null ? null : perHour * spread,
    seen_before: burner.seen,
    power_share: burner.powerShare,
    hand_every_hours: handEveryHours(design, perHour),
    full_mm: Math.max(FULL_MM, AGAIN * design.minDepthMm),
    smallest_batch_litres: held === null ? null : (batch.sapLitres * held) / batch.syrupLitres,
    can_finish: held === null ? null : batch.syrupLitres >= held,
  };
}

function litresPerHour(usefulW: number | null, waterC: number): number | null {
  const kgPerS = usefulW === null ? null : boiledOffKgPerS(usefulW, waterC);
  return kgPerS === null ? null : kgPerS * 3600;
}

function handEveryHours({ vessel, minDepthMm }: PanDesign, perHour: number | null): number | null {
  if (vessel === null || perHour === null || perHour === 0) return null;
  const full = litresAtDepth(vessel, Math.max(FULL_MM, AGAIN * minDepthMm));
  const again = litresAtDepth(vessel, AGAIN * minDepthMm);
  return full === null || again === null ? null : (full - again) / HOT_VOLUME / perHour;
}
