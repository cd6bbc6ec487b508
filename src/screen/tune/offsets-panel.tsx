// How much each probe shows too much, as past boils tell whose truth is known.
import type { JSX } from 'preact';
import { stillRead } from '../words/still-read.ts';
import type { OffsetsView } from '../../protocol/tune-messages.ts';
import { useAsked } from '../notebook/page-data.ts';
import { say } from '../language/say.ts';
import { settings } from '../client/store.ts';
import { offsetWords } from '../words/tune-words.ts';

export function OffsetsPanel(): JSX.Element | null {
  const { view, problem } = useAsked<OffsetsView>({ probe_offsets: true }, 'offsets', ({ working }) => working > 0);
  if (problem !== null || view === null || (view.probes.length === 0 && view.working === 0)) return null;
  return (
    <section class="panel" aria-label={say('tune.offsets')}>
      <h2>{say('tune.offsets')}</h2>
      {view.working > 0 && <p role="status">{stillRead(view.working)}</p>}
      <ul>
        {view.probes.map((offset) => (
          <li key={offset.probe}>{offsetWords(offset, settings.value)}</li>
        ))}
      </ul>
    </section>
  );
}
