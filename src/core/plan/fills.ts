// How full each pan is before its fire is lit, how much sap it takes each time that it wants some again, and what stands too high in it.
import { HOT_VOLUME } from '../pan/filter/liquid.ts';
import type { PanDesign } from '../pan/setup.ts';
import { litresAtDepth } from '../physics/vessel.ts';
import { rimMm } from '../quantities/rim.ts';

export interface Fill {
  /** Litres at 20 °C, as they are poured, and how deep they stand while they are cold, mm. */
  litres: number;
  mm: number;
  /** From where it wants sap again up to full, litres at 20 °C; null where all the sap is in the pans. */
  againLitres: number | null;
}

/** Filled for boiling, mm: a hand's breadth, below the rim of most pots (common practice). */
const FULL_MM = 100;
/** Twice its least depth at the least, where that is over a hand's breadth (common practice). */
const LEAST_TIMES = 2;
/** Of a wall whose height is known so much may be wetted: foam rises over the rest (judgement; no source). */
const FOAM_SHARE = 0.75;

/** A pan of a plan, and how much of it is left when the boil would call for sap, litres at 20 °C: where its fire is not known, its least. */
export interface PanToFill {
  design: PanDesign;
  calledLitres: number;
}

/** Depth up to which it may be filled so that foam has room, mm; Infinity where nobody said how high its wall is. */
function roomMm({ vessel }: PanDesign): number {
  const rim = vessel === null ? null : rimMm(vessel);
  return rim === null ? Infinity : FOAM_SHARE * rim;
}

/** A pot of which nobody said how high its wall is, is boiled in up to half its width at the end (judgement; no source). */
const END_SHARE = 0.5;

/** Depth up to which syrup may be boiled to its end in a vessel, mm: by its wall, else as is usual for its width. */
export function endRoomMm(design: PanDesign): number {
  const { vessel } = design;
  const room = roomMm(design);
  if (room < Infinity) return room;
  const usual = Math.max(FULL_MM, LEAST_TIMES * design.minDepthMm);
  return vessel?.shape === 'round' ? Math.max(usual, END_SHARE * vessel.diameter_mm) : usual;
}

const fullMm = (design: PanDesign): number =>
  Math.min(roomMm(design), Math.max(FULL_MM, LEAST_TIMES * design.minDepthMm));

/** L of cold sap that stand so deep; null where the vessel is not known, or closes below. */
const pouredTo = ({ vessel }: PanDesign, mm: number): number | null =>
  vessel === null ? null : litresAtDepth(vessel, mm);

/**
 * By the pan's id: the pans that boil first, each full, or equally deep where there is not sap enough for that. What
 * then stands where nobody knows is left out: a pan without a size, and every other that has to share with it.
 */
export function fillsOf(pans: readonly PanToFill[], first: readonly string[], sapLitres: number): Map<string, Fill> {
  const filled = pans.filter(({ design }) => first.includes(design.id));
  const sized = filled.filter(({ design }) => pouredTo(design, fullMm(design)) !== null);
  const upTo = ({ design }: PanToFill, mm: number): number => pouredTo(design, Math.min(mm, fullMm(design))) ?? 0;
  const all = (mm: number): number => sized.reduce((sum, pan) => sum + upTo(pan, mm), 0);
  const isEnough = all(Infinity) < sapLitres;
  if (!isEnough && sized.length < filled.length) return new Map();
  const mm = isEnough ? Infinity : evenMm(all, sapLitres, Math.max(...sized.map(({ design }) => fullMm(design))));
  return new Map(
    sized.map((pan) => {
      const litres = upTo(pan, mm);
      // A fire that boils a shallow pan down within that time is seen to when half of what it has is gone.
      const least = Math.min(litres, (pouredTo(pan.design, pan.design.minDepthMm) ?? 0) / HOT_VOLUME);
      const again = isEnough ? litres - Math.min(pan.calledLitres, (least + litres) / 2) : 0;
      return [pan.design.id, { litres, mm: Math.min(mm, fullMm(pan.design)), againLitres: again > 0 ? again : null }];
    }),
  );
}

/** A pan that cannot take its part of what is poured together, and up to which depth it may be filled, mm. */
export interface TooFull {
  pan: string;
  room_mm: number;
}

/** Far over any wall, mm. */
const DEEPEST_MM = 5000;

/** Those of these pans in which so many litres (at 20 °C), at the boil and equally deep, leave foam no room; none where a size is not known. */
export function tooFull(designs: readonly PanDesign[], litres: number): TooFull[] {
  if (designs.some(({ vessel }) => vessel === null)) return [];
  const hot = litres * HOT_VOLUME;
  const all = (mm: number): number => designs.reduce((sum, design) => sum + (pouredTo(design, mm) ?? 0), 0);
  const mm = evenMm(all, hot, DEEPEST_MM);
  return designs.filter((design) => mm > roomMm(design)).map((design) => ({ pan: design.id, room_mm: roomMm(design) }));
}

/** The one depth at which all the pans together hold so many litres, at most `most`. */
function evenMm(all: (mm: number) => number, litres: number, most: number): number {
  let [low, high] = [0, most];
  for (let round = 0; round < 40; round += 1) {
    const middle = (low + high) / 2;
    if (all(middle) < litres) low = middle;
    else high = middle;
  }
  return high;
}
