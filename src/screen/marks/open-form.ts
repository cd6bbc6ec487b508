// Which form for a mark is open; kept apart so that a card can open the one that would help its pan.
import { signal } from '@preact/signals';
import type { MarkKind, MarkView, Pour } from '../client/types.ts';
import { selectPan } from '../pans/selected-pan.ts';

export interface OpenedForm {
  kind: MarkKind;
  /** The pour that was seen and is being told of more exactly. */
  pour: Pour | null;
  /** The note that is corrected, whose place the next one takes. */
  again?: MarkView;
  /** What stands in its fields as it is opened, by field. */
  start?: Readonly<Record<string, string>>;
}

export const openForm = signal<OpenedForm | null>(null);

/** Opens the form of a kind of mark for a pan, which is chosen with it; `start` is what stands in its fields then. */
export function openFormFor(pan: string, kind: MarkKind, start?: OpenedForm['start']): void {
  selectPan(pan);
  openForm.value = { kind, pour: null, ...(start === undefined ? {} : { start }) };
}

/** The form for a pour that was seen, with its time and amount filled in. */
export function openFormForPour(pour: Pour): void {
  selectPan(pour.pan);
  openForm.value = { kind: 'top-up', pour };
}

/** The form with what was typed in it, to correct a note. */
export function openFormAgain(again: MarkView, pan: string | null): void {
  if (pan !== null) selectPan(pan);
  openForm.value = { kind: again.mark.kind, pour: null, again };
}
