// On a page as narrow as a phone the notes stand under all cards: this button, always in reach, goes there.
import type { JSX } from 'preact';
import { isNarrow } from '../alarms/narrow.ts';
import type { Now } from '../client/types.ts';
import { say } from '../language/say.ts';
import { selectedPan } from '../pans/selected-pan.ts';
import { scrollClear } from '../shell/scroll-clear.ts';
import { panName } from '../words/pan-words.ts';
import { openForm } from './open-form.ts';

function goToNotes(): void {
  const notes = document.querySelector('.marks');
  if (notes === null) return;
  scrollClear(notes);
  notes.querySelector('button')?.focus({ preventScroll: true });
}

/** Names the pan that is chosen, for a note goes to that one. */
export function NoteDoor({ now }: { now: Now }): JSX.Element | null {
  const pan = selectedPan(now);
  if (!isNarrow.value || pan === null || now.view !== 'live' || now.ended || openForm.value !== null) return null;
  return (
    <button type="button" class="note-door" onClick={goToNotes}>
      {say('marks.note_for', { pan: panName(now.header, pan) })}
    </button>
  );
}
