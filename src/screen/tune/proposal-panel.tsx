// What the search would set, what that gains and what it costs; nothing is set but by a press.
import type { JSX } from 'preact';
import type { TuneProposal } from '../../protocol/tune-messages.ts';
import { settings, tell } from '../client/store.ts';
import { fieldWords } from '../words/tune-words.ts';

export function ProposalPanel({ proposal }: { proposal: TuneProposal | { why: string } }): JSX.Element {
  if ('why' in proposal) {
    return (
      <section class="panel" aria-label="Proposal">
        <h2>No proposal</h2>
        <p>{proposal.why}</p>
      </section>
    );
  }
  const changes = Object.entries(proposal.settings);
  const isSet = changes.every(([name, value]) => settings.value[name as keyof typeof proposal.settings] === value);
  return (
    <section class="panel proposal" aria-label="Proposal">
      <h2>Proposal</h2>
      <ul>
        {changes.map(([name, value]) => (
          <li key={name}>
            <b>{fieldWords(name, value)}</b> (now:{' '}
            {fieldWords(name, settings.value[name as keyof typeof proposal.settings])})
          </li>
        ))}
      </ul>
      <h3>It would have gained</h3>
      <ul>
        {proposal.gains.map((each) => (
          <li key={each}>+ {each}</li>
        ))}
      </ul>
      <h3>It would have cost</h3>
      <ul>
        {proposal.costs.length === 0 && <li>nothing that these boils can tell</li>}
        {proposal.costs.map((each) => (
          <li key={each}>− {each}</li>
        ))}
      </ul>
      <p class="hint">It rests on {proposal.truths} boils whose finish was measured. The next boil can be another.</p>
      {isSet ? (
        <p role="status">✓ Your settings are these.</p>
      ) : (
        <button
          type="button"
          class="main-button"
          onClick={() => void tell({ settings: proposal.settings }, 'Your settings are now as proposed.')}
        >
          Take these into Settings
        </button>
      )}
    </section>
  );
}
