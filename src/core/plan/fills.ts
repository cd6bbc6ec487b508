// How full each pan is before its fire is lit, and how much sap it takes each time that it wants some again.
import { HOT_VOLUME } from '../pan/filter/liquid.ts';
import type { PanDesign } from '../pan/setup.ts';
import { litresAtDepth } from '../physics/vessel.ts';

/** Litres as they are poured, at 20 °C; depths as they stand at the boil, mm. */
export interface Fill {
  litres: number;
  mm: number;
  /** From where it wants sap again up to full; null where all the sap is in the pans, or it is kept full. */
  againLitres: number | null;
}

/** Filled for boiling, mm: a hand's breadth, below the rim of most pots (common practice). */
const FULL_MM = 100;
/** Poured in again when it stands at twice its least depth (common practice). */
const AGAIN = 2;

const againMm = ({ minDepthMm }: PanDesign): number => AGAIN * minDepthMm;
const fullMm = (design: PanDesign): number => Math.max(FULL_MM, againMm(design));

/** L at 20 °C that stand so deep at the boil; null where the vessel is not known, or closes below. */
function pouredTo({ vessel }: PanDesign, mm: number): number | null {
  const hot = vessel === null ? null : litresAtDepth(vessel, mm);
  return hot === null ? null : hot / HOT_VOLUME;
}

/**
 * By the pan's id: the pans that boil first, each full, or equally deep where there is not sap enough for that. What
 * then stands where nobody knows is left out: a pan without a size, and every other that has to share with it.
 */
export function fillsOf(designs: readonly PanDesign[], first: readonly string[], sapLitres: number): Map<string, Fill> {
  const filled = designs.filter(({ id }) => first.includes(id));
  const sized = filled.filter((design) => pouredTo(design, fullMm(design)) !== null);
  const upTo = (design: PanDesign, mm: number): number => pouredTo(design, Math.min(mm, fullMm(design))) ?? 0;
  const all = (mm: number): number => sized.reduce((sum, design) => sum + upTo(design, mm), 0);
  const isEnough = all(Infinity) < sapLitres;
  if (!isEnough && sized.length < filled.length) return new Map();
  const mm = isEnough ? Infinity : evenMm(all, sapLitres, Math.max(...sized.map(fullMm)));
  return new Map(
    sized.map((design) => {
      const litres = upTo(design, mm);
      const again = isEnough ? litres - upTo(design, againMm(design)) : 0;
      return [design.id, { litres, mm: Math.min(mm, fullMm(design)), againLitres: again > 0 ? again : null }];
    }),
  );
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
