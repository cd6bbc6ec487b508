// A number that tells where it comes from when it is pressed.
import type { ComponentChildren, JSX } from 'preact';
import type { Explained } from '../client/types.ts';
import { askAbout, asked } from './asked.ts';

/** Where the words stand that describe every such button; the panel's file puts them on the page. */
export const HINT_ID = 'tell-hint';

interface TellProps {
  /** null for the water point. */
  pan: string | null;
  what: Explained;
  children: ComponentChildren;
}

export function Tell({ pan, what, children }: TellProps): JSX.Element {
  const now = asked.value;
  const open = now !== null && now.pan === pan && now.what === what;
  return (
    <button
      type="button"
      class="tell"
      data-tell={what}
      aria-haspopup="dialog"
      aria-expanded={open}
      aria-describedby={HINT_ID}
      onClick={(event) => askAbout({ pan, what, button: event.currentTarget })}
    >
      {children}
    </button>
  );
}
