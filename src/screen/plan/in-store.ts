// How much sap of one kind is in store, and how strong it is together.
import type { CollectionsView } from '../../protocol/season-messages.ts';
import type { SapKind } from '../client/types.ts';
import { sapKeyOf } from '../words/sap-words.ts';
import type { SapKey } from '../words/sap-words.ts';

export interface InStore {
  /** L at 20 °C */
  litres: number;
  /** °Bx of all of it; null where the strength of a part is not known. */
  brix: number | null;
  /** L beside it that are older than they keep, and are not planned for. */
  pastLitres: number;
  /** All there is is older than it keeps. */
  isPast: boolean;
}

/** Early and late maple are kept as maple. */
const storedAs = (sap: SapKey): string => (sap.startsWith('maple') ? 'maple' : sap);

/** What is neither boiled nor poured away of a kind of sap, of what still keeps where there is any; null where there is none at all. */
export function inStoreOf(
  collections: CollectionsView['collections'],
  sap: SapKey,
  kinds: readonly SapKind[],
): InStore | null {
  const there = collections.filter(
    (one) => one.keeping !== null && storedAs(sapKeyOf(one.sap, kinds)) === storedAs(sap),
  );
  const sum = (ones: typeof there): number => ones.reduce((litres, one) => litres + one.litres, 0);
  const keeps = there.filter(({ keeping }) => keeping?.state !== 'past');
  const isPast = sum(keeps) === 0;
  const good = isPast ? there : keeps;
  const litres = sum(good);
  if (litres === 0) return null;
  const isMeasured = good.every(({ brix }) => brix !== undefined);
  const brix = isMeasured ? good.reduce((part, one) => part + one.litres * (one.brix ?? 0), 0) / litres : null;
  return { litres, brix, pastLitres: sum(there) - litres, isPast };
}
