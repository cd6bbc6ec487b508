// The note by which a boil knows that its sound was heard: kept in English, as what the host says, and told in any language.
import type { Mark } from '../core/boil/entries.ts';

/** The ids of such notes begin so; what follows tells one from another. */
const NOTE_ID = 'sound-check-';

/** The note itself; `when` is boil time, ms, or the start. */
export const heardNote = (loudness: string, when: number | 'start'): Mark => ({
  kind: 'note',
  id: `${NOTE_ID}${when}`,
  text: `The call was tried and heard (${loudness}).`,
});

/** Whether the program wrote this note, and no person. */
export const isHeardNote = (mark: Mark): boolean => mark.kind === 'note' && mark.id?.startsWith(NOTE_ID) === true;
