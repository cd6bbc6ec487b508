// Offers to plan for the sap that was collected and is still in store.
import type { JSX } from 'preact';
import type { CollectionsView } from '../../protocol/season-messages.ts';
import { saps, settings } from '../client/store.ts';
import { say } from '../language/say.ts';
import { useAsked } from '../notebook/page-data.ts';
import { exactStrength, volume } from '../words/amounts.ts';
import type { SapKey } from '../words/sap-words.ts';
import { inStoreOf } from './in-store.ts';
import type { InStore } from './in-store.ts';

function inStoreWords({ litres, brix, isPast }: InStore): string {
  const amount = volume(litres, settings.value);
  if (isPast) return say('plan.in_store_old', { amount });
  if (brix === null) return say('plan.in_store', { amount });
  return say('plan.in_store_at', { amount, strength: exactStrength(brix, settings.value) });
}

export function StoreOffer({ sap, take }: { sap: SapKey; take: (stored: InStore) => void }): JSX.Element | null {
  const { view } = useAsked<CollectionsView>({ collections: true }, 'collections', () => false);
  const stored = inStoreOf(view?.collections ?? [], sap, saps.value);
  if (stored === null) return null;
  return (
    <p class="row">
      <span>
        {inStoreWords(stored)}
        {stored.pastLitres > 0 &&
          ` ${say('plan.in_store_past', { amount: volume(stored.pastLitres, settings.value) })}`}
      </span>
      <button type="button" onClick={() => take(stored)}>
        {say('plan.take_store')}
      </button>
    </p>
  );
}
