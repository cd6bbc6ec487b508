// What is not known of a pan, or only roughly, with the mark that would help.
import { notedStrength, plannedStrength } from '../../protocol/planned-strength.ts';
import { sayDrawn } from '../language/say.ts';
import type { JSX } from 'preact';
import type { Advice, MarkKind, Now, Reading } from '../client/types.ts';
import { settings } from '../client/store.ts';
import { openFormFor } from '../marks/open-form.ts';
import { degreesApart } from '../words/amounts.ts';
import { firstNote, markCall, notKnownYet } from '../words/pan-words.ts';

const MOST_UNKNOWNS = 2;

function NoteButton({ pan, mark, call }: { pan: string; mark: MarkKind; call?: string | undefined }): JSX.Element {
  return (
    <button type="button" onClick={() => openFormFor(pan, mark)}>
      {call ?? markCall(mark)}
    </button>
  );
}

interface NotKnownProps {
  now: Now;
  reading: Reading;
  advice: Advice | null;
  canMark: boolean;
}

export function NotKnown({ now, reading, advice, canMark }: NotKnownProps): JSX.Element | null {
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
  const fellC = advice?.fellC ?? null;
  const unknowns = notKnownYet(
    reading,
    advice?.ask ?? null,
    (plannedStrength(now, reading) ?? notedStrength(now, reading)) !== null,
    {
      fell: fellC === null ? null : degreesApart(fellC, settings.value),
      litresRoughly: (advice?.litresRoughly ?? null) !== null,
      moreThanNoted: advice?.moreThanNoted === true,
    },
  ).slice(0, MOST_UNKNOWNS);
  if (unknowns.length === 0) return null;
  return (
    <ul class="not-known">
      {unknowns.map(({ what, how, mark, roughly, inDoubt, call }) => (
        <li key={what}>
          <span>
            {sayDrawn(
              inDoubt === true ? 'pans.in_doubt' : roughly === true ? 'pans.known_roughly' : 'pans.not_known_yet',
              { what, how, b: (words) => <b>{words}</b> },
            )}
          </span>
          {canMark && mark !== null && <NoteButton pan={reading.pan} mark={mark} call={call} />}
        </li>
      ))}
    </ul>
  );
}
