// The one press that starts the practice boil.
import { say } from '../language/say.ts';
import type { JSX } from 'preact';
import { tell } from '../client/store.ts';

/** Sixty boil seconds a second: an afternoon in a few minutes. */
const PRACTICE_SPEED = 60;

async function practise(): Promise<void> {
  const names = {
    boil: say('pans.practice.boil'),
    front: say('pans.practice.front'),
    middle: say('pans.practice.middle'),
    birch: say('pans.practice.birch'),
  };
  await tell({ practice: { speed: PRACTICE_SPEED, slow_for_calls: true, names } }, say('pans.practice.begun'));
}

export function PracticeButton({ class: looks }: { class: string }): JSX.Element {
  return (
    <button type="button" class={looks} onClick={() => void practise()}>
      {say('pans.practice')}
    </button>
  );
}
