// A button that shows the key that presses it.
import type { ComponentChildren, JSX } from 'preact';
import { say } from '../language/say.ts';
import { useKey } from './keys.ts';

interface KeyButtonProps {
  letter: string;
  act: () => void;
  class?: string;
  disabled?: boolean;
  pressed?: boolean;
  /** A small line under the words; a reader for the blind gives it as the description. */
  hint?: string;
  children: ComponentChildren;
}

const SHOWN: Record<string, () => string> = {
  ArrowLeft: () => '←',
  ArrowRight: () => '→',
  Space: () => say('shell.key_space'),
};

export function KeyButton(props: KeyButtonProps): JSX.Element {
  const off = props.disabled ?? false;
  useKey(off ? null : props.letter, props.act);
  return (
    <button
      type="button"
      class={props.class}
      disabled={off}
      aria-pressed={props.pressed}
      aria-keyshortcuts={props.letter}
      title={props.hint}
      onClick={props.act}
    >
      <span>
        {props.children}
        {props.hint !== undefined && <small aria-hidden="true">{props.hint}</small>}
      </span>
      <kbd aria-hidden="true">{SHOWN[props.letter]?.() ?? props.letter}</kbd>
    </button>
  );
}
