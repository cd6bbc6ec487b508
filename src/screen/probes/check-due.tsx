// Says that a check in boiling water is due: before the first boil of a day, and after the air pressure has moved.
import type { JSX } from 'preact';
import { hostWords } from '../language/host-words.ts';
import type { KeptProbes } from '../client/types.ts';
import { usePolled } from '../onboarding/polled.ts';

/** Nothing while none is due. */
export function CheckDue(): JSX.Element | null {
  const kept = usePolled<KeptProbes>({ probes_kept: true });
  return typeof kept?.due === 'string' ? (
    <p class="check-due" role="status">
      ▲ {hostWords(kept.due)}
    </p>
  ) : null;
}
