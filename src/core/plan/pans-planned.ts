// What each pan of a plan asks of a person: how fast it boils away, how often it wants cold sap, and the smallest batch that it can finish.
import type { PanDesign } from '../pan/setup.ts';
import { boiledOffKgPerS } from '../physics/heat.ts';
import { rimMm } from '../quantities/rim.ts';
import { Z80 } from '../quantities/spread.ts';
import type { Burner } from './burners.ts';
import { endRoomMm, fillsOf } from './fills.ts';
import type { Fill } from './fills.ts';

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
  /** Sap to fill it with before the fire is lit, litres at 20 °C, and how deep that stands while it is cold, mm. */
  fill_litres: number | null;
  fill_mm: number | null;
  /** How high its wall is was told; else it is filled as deep as is usual. */
  wall_known: boolean;
  /** Depth up to which syrup may be boiled to its end in it, mm; null where its size is not known. */
  end_room_mm: number | null;
  /** Sap that it takes each time it wants some again, litres at 20 °C; null, too, where all the sap is in the pans. */
  refill_litres: number | null;
  /** Hours from full to where the boil calls for sap; a longer absence leaves it too shallow. */
  hand_every_hours: number | null;
  /** Sap that makes just enough syrup to stand at the least depth in this pan, litres at 20 °C. */
  smallest_batch_litres: number | null;
  /** Syrup of the whole batch stands at its least depth in this pan or deeper. */
  can_finish: boolean | null;
}

export interface Batch {
  /** All the sap and all the syrup, litres at 20 °C. */
  sapLitres: number;
  syrupLitres: number;
  waterC: number;
  /** The pans that the fire is lit under. */
  first: readonly string[];
  /** How long before its least depth the boil calls for sap, s. */
  callLeadS: (pan: string) => number;
}

/** What each pan asks of a person during the batch; `burners` in the order of the designs. */
export function pansPlanned(designs: readonly PanDesign[], burners: readonly Burner[], batch: Batch): PanPlanned[] {
  const toFill = designs.map((design, index) => {
    const { leastLitres, usefulW } = burners[index]!;
    const boiledOff = ((litresPerHour(usefulW, batch.waterC) ?? 0) * batch.callLeadS(design.id)) / 3600;
    return { design, calledLitres: leastLitres + boiledOff };
  });
  const fills = fillsOf(toFill, batch.first, batch.sapLitres);
  return designs.map((design, index) => ({
    ...panPlanned(burners[index]!, fills.get(design.id) ?? null, batch),
    wall_known: design.vessel !== null && rimMm(design.vessel) !== null,
    end_room_mm: design.vessel === null ? null : endRoomMm(design),
  }));
}

function panPlanned(burner: Burner, fill: Fill | null, batch: Batch): Omit<PanPlanned, 'wall_known' | 'end_room_mm'> {
  const perHour = litresPerHour(burner.usefulW, batch.waterC);
  const spread = Math.exp(Z80 * burner.share);
  const again = fill?.againLitres ?? null;
  const held = burner.sized ? burner.leastLitres : null;
  return {
    pan: burner.pan,
    name: burner.name,
    litres_per_hour: perHour,
    litres_per_hour_low: perHour === null ? null : perHour / spread,
    litres_per_hour_high: perHour === null ? null : perHour * spread,
    seen_before: burner.seen,
    power_share: burner.powerShare,
    fill_litres: fill?.litres ?? null,
    fill_mm: fill?.mm ?? null,
    refill_litres: again,
    hand_every_hours: again === null || perHour === null || perHour === 0 ? null : again / perHour,
    smallest_batch_litres: held === null ? null : (batch.sapLitres * held) / batch.syrupLitres,
    can_finish: held === null ? null : batch.syrupLitres >= held,
  };
}

function litresPerHour(usefulW: number | null, waterC: number): number | null {
  const kgPerS = usefulW === null ? null : boiledOffKgPerS(usefulW, waterC);
  return kgPerS === null ? null : kgPerS * 3600;
}
