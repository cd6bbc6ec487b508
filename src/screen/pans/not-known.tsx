// What is not known of a pan, or only roughly, with the mark that would help.
import { plannedStrength } from '../../protocol/planned-strength.ts';
import { sayDrawn } from '../language/say.ts';
import type { JSX } from 'preact';
import type { Advice, MarkKind, Now, Reading } from '../client/types.ts';
import { openFormFor } from '../marks/open-form.ts';
import { firstNote, markCall, notKnownYet } from '../words/pan-words.ts';

const MOST_UNKNOWNS = 2;

function NoteButton({ pan, mark }: { pan: string; mark: MarkKind }): JSX.Element {
  return (
    <button type="button" onClick={() => openFormFor(pan, mark)}>
      {markCall(mark)}
    </button>
  );
}

interface NotKnownProps {
  now: Now;
  reading: Reading;
  ask: Advice['ask'];
  canMark: boolean;
}

export function NotKnown({ now, reading, ask, canMark }: NotKnownProps): JSX.Element | null {
  const first = firstNote(now, reading);
  if (first !== null)
    return (
      <ul class="not-known">
        <li>
          <span>{first.words}</span>
          {canMark && <NoteButton pan={reading.pan} mark={first.mark} />}
        </li>
      </ul>
    );
  const unknowns = notKnownYet(reading, ask, plannedStrength(now, reading) !== null).slice(0, MOST_UNKNOWNS);
  if (unknowns.length === 0) return null;
  return (
    <ul class="not-known">
      {unknowns.map(({ what, how, mark, roughly, inDoubt }) => (
        <li key={what}>
          <span>
            {sayDrawn(
              inDoubt === true ? 'pans.in_doubt' : roughly === true ? 'pans.known_roughly' : 'pans.not_known_yet',
              { what, how, b: (words) => <b>{words}</b> },
            )}
          </span>
          {canMark && mark !== null && <NoteButton pan={reading.pan} mark={mark} />}
        </li>
      ))}
    </ul>
  );
}
