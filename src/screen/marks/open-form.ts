// Which form for a mark is open; kept apart so that a card can open the one that would help its pan.
import { signal } from '@preact/signals';
import type { MarkKind } from '../client/types.ts';
import { selectPan } from '../pans/selected-pan.ts';

export const openForm = signal<MarkKind | null>(null);

export function openFormFor(pan: string, kind: MarkKind): void {
  selectPan(pan);
  openForm.value = kind;
}
