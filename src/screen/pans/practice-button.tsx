// The one press that starts the practice boil.
import { say } from '../language/say.ts';
import type { JSX } from 'preact';
import { tell } from '../client/store.ts';

/** Sixty boil seconds a second: an afternoon in a few minutes. */
const PRACTICE_SPEED = 60;

export function PracticeButton({ class: looks }: { class: string }): JSX.Element {
  return (
    <button type="button" class={looks} onClick={() => void tell({ practice: { speed: PRACTICE_SPEED } })}>
      {say('pans.practice')}
    </button>
  );
}
