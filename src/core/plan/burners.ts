// What each pan of a plan is taken to boil away, and how little liquid it may hold.
import type { Heat } from '../boil/entries.ts';
import { HOT_VOLUME } from '../pan/filter/liquid.ts';
import type { PanDesign } from '../pan/setup.ts';
import { usualEfficiency } from '../physics/fuel.ts';
import { litresAtDepth, surfaceM2 } from '../physics/vessel.ts';
import { endRoomMm } from './fills.ts';

export interface Burner {
  pan: string;
  name: string;
  kind: Heat['kind'];
  /** Heat that ends as steam or warms the sap, W; null where neither a power nor a size says it. */
  usefulW: number | null;
  /** Heat of the fuel that burns for it, W. */
  burntW: number | null;
  /** Its own uncertainty, the standard deviation of its logarithm. */
  share: number;
  /** Share of the nominal power that is taken to end in the sap, as is usual for such a fire and pan; null where it goes by earlier boils or by the size. */
  powerShare: number | null;
  /** Earlier boils showed it. */
  seen: boolean;
  /** What the day does to all fires alike (wind, cold), the standard deviation of its logarithm. */
  dayShare: number;
  /** Litres at 20 °C that stand at the least depth; 0 where the vessel is not known. */
  leastLitres: number;
  /** Litres at 20 °C over which foam still has room at the boil, by its wall or as is usual for its width; Infinity where the vessel is not known. */
  roomLitres: number;
  /** Its size is known. */
  sized: boolean;
  /** It stays cold and empty until the others are poured into it; false for all where no pan would be left to light first. */
  forEnd: boolean;
}

/** The heat of one pan's fire as earlier boils showed it. */
export interface KnownHeat {
  pan: string;
  /** Heat that ends as steam at full flame, W. */
  useful_w: number;
  /** Standard deviation of its logarithm, from boil to boil. */
  spread: number;
}

/** An open surface boils a US gallon an hour off a square foot (a rule of the trade): W/m² of useful heat. */
const WATTS_PER_M2 = 25_500;
/** A surface's depth hardly matters: half a pot, mm. */
const USUAL_DEPTH_MM = 110;

/**
 * How far one burner is from its nominal heat, beside what all share (practice: efficiencies of 25 to 60 % are seen
 * on open burners, and one that is told by its surface is a rule of thumb).
 */
const BY_POWER_SHARE = 0.2;
const BY_SURFACE_SHARE = 0.4;
/** Of a fire that was seen before, its usual weather is known too. */
const DAY_SHARE = 0.08;
const SEEN_DAY_SHARE = 0.04;

/** What earlier boils showed of a fire goes before its nominal power, and that before what a surface usually takes. */
export function burnersOf(designs: readonly PanDesign[], known: readonly KnownHeat[]): Burner[] {
  const isAnyFirst = designs.some(({ forEnd }) => !forEnd);
  return designs.map((design) => ({
    pan: design.id,
    name: design.name,
    kind: design.heatKind,
    ...heatOf(design, known.find(({ pan }) => pan === design.id) ?? null),
    ...leastOf(design),
    forEnd: design.forEnd && isAnyFirst,
  }));
}

type BurnerHeat = Pick<Burner, 'usefulW' | 'burntW' | 'powerShare' | 'share' | 'dayShare' | 'seen'>;

function heatOf({ usefulPowerW, heatKind, vessel }: PanDesign, known: KnownHeat | null): BurnerHeat {
  const efficiency = usualEfficiency(heatKind, vessel?.shape === 'rectangular');
  if (known !== null) {
    const burntW = (usefulPowerW ?? known.useful_w) / efficiency;
    return {
      usefulW: known.useful_w,
      burntW,
      powerShare: null,
      share: known.spread,
      dayShare: SEEN_DAY_SHARE,
      seen: true,
    };
  }
  if (usefulPowerW !== null)
    return {
      usefulW: usefulPowerW,
      burntW: usefulPowerW / efficiency,
      powerShare: efficiency,
      share: BY_POWER_SHARE,
      dayShare: DAY_SHARE,
      seen: false,
    };
  if (vessel === null) return { usefulW: null, burntW: null, powerShare: null, share: 0, dayShare: 0, seen: false };
  const usefulW = WATTS_PER_M2 * surfaceM2(vessel, USUAL_DEPTH_MM);
  return {
    usefulW,
    burntW: usefulW / efficiency,
    powerShare: null,
    share: BY_SURFACE_SHARE,
    dayShare: DAY_SHARE,
    seen: false,
  };
}

function leastOf(design: PanDesign): Pick<Burner, 'leastLitres' | 'roomLitres' | 'sized'> {
  const { vessel, minDepthMm } = design;
  const hot = vessel === null ? null : litresAtDepth(vessel, minDepthMm);
  const room = vessel === null ? null : litresAtDepth(vessel, endRoomMm(design));
  return { leastLitres: (hot ?? 0) / HOT_VOLUME, roomLitres: (room ?? Infinity) / HOT_VOLUME, sized: hot !== null };
}
