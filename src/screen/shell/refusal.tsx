// Why a form was refused, in one sentence that comes into sight and is spoken at each press.
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { comesIntoSight } from './scroll-clear.ts';

/** `refuse` takes the sentence, or null where nothing is wrong any more; `sentence` stands where the form puts it. */
export function useRefusal(): { refuse: (why: string | null) => void; sentence: JSX.Element | null } {
  const [{ why, presses }, setRefused] = useState<{ why: string | null; presses: number }>({ why: null, presses: 0 });
  return {
    refuse: (next) => setRefused((before) => ({ why: next, presses: before.presses + 1 })),
    // Refused again it is a new sentence, and so it is seen and heard again.
    sentence:
      why === null ? null : (
        <p key={presses} class="problem" role="alert" ref={comesIntoSight}>
          ✕ {why}
        </p>
      ),
  };
}
