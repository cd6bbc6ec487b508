// What is in the sap store of each kind of sap: birch and maple are never one sum.
import type { CollectionShown, CollectionsView } from '../../protocol/season-messages.ts';
import type { SapKind, Settings } from '../client/types.ts';
import { volume } from '../words/amounts.ts';
import { sapCalled, sapKeyOf } from '../words/sap-words.ts';
import { say } from '../language/say.ts';

type Stored = CollectionsView['collections'];
type KeepingState = NonNullable<CollectionShown['keeping']>['state'];

/** Whether more than one kind of sap is among them. */
export const areMixed = (collections: Stored, kinds: readonly SapKind[]): boolean =>
  new Set(collections.map(({ sap }) => sapKeyOf(sap, kinds))).size > 1;

/** What is neither boiled nor poured away. */
export const inStore = (collections: Stored): Stored => collections.filter(({ keeping }) => keeping !== null);

/**
 * "60 L of birch, 25 L of maple" of what is in store; or of what of it is in such a state, without the kinds where all
 * that is in store is of one. Empty for nothing.
 */
export function storedWords(
  collections: Stored,
  settings: Settings,
  kinds: readonly SapKind[],
  state: KeepingState | null = null,
): string {
  const there = inStore(collections);
  const isNamed = state === null || areMixed(there, kinds);
  const told = state === null ? there : there.filter(({ keeping }) => keeping?.state === state);
  const byKind = Map.groupBy(told, ({ sap }) => sapCalled(sap, kinds));
  return [...byKind]
    .map(([sap, ones]) => {
      const litres = volume(
        ones.reduce((sum, one) => sum + one.litres, 0),
        settings,
      );
      return isNamed ? say('store.of_kind', { litres, sap }) : litres;
    })
    .join(', ');
}
