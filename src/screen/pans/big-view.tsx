// The view for five metres: the pans alone, twice as large.
import { say } from '../language/say.ts';
import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import { KeyButton } from '../shell/key-button.tsx';
import { useKey } from '../shell/keys.ts';

export const isBig = signal(false);

function change(): void {
  isBig.value = !isBig.value;
  scrollTo(0, 0);
}

export function BigViewButton(): JSX.Element {
  useKey(isBig.value ? 'Escape' : null, change);
  return (
    <KeyButton letter="V" class="big-view-button" pressed={isBig.value} act={change}>
      {say('pans.big_view')}
    </KeyButton>
  );
}
