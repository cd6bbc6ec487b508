// Asks for boils beside each other, again while some are still being read.
import { useAsked } from '../notebook/page-data.ts';
import type { Asked } from '../notebook/page-data.ts';
import type { Alignment, Compared, CompareView, SmallCurves } from '../../protocol/compare-messages.ts';

const POINTS = 600;
const SMALL_POINTS = 120;

/** Boils beside each other, aligned (both null: as the host finds that all are drawn) and drawn as asked, of one pan or of each boil's last that was finished (null); asked for again while some are being read. */
export function useCompared(
  boils: readonly string[],
  align: Alignment | null,
  what: Compared | null,
  pan: string | null,
): Asked<CompareView> {
  const wish = { compare: { boils: [...boils], align, what, pan, points: POINTS } };
  return useAsked<CompareView>(wish, JSON.stringify(wish), ({ working }) => working > 0);
}

/** null is the newest year. */
export function useSmallCurves(year: number | null): Asked<SmallCurves> {
  const wish = { small_curves: { year, points: SMALL_POINTS } };
  return useAsked<SmallCurves>(wish, String(year), ({ working }) => working > 0);
}
