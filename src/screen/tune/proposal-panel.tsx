// What the search would set, what that gains and what it costs; nothing is set but by a press.
import type { JSX } from 'preact';
import type { TuneProposal } from '../../protocol/tune-messages.ts';
import { settings, changeSettings } from '../client/store.ts';
import { fieldWords } from '../words/tune-words.ts';
import { say } from '../language/say.ts';
import { hostWords } from '../language/host-words.ts';

export function ProposalPanel({ proposal }: { proposal: TuneProposal | { why: string } }): JSX.Element {
  if ('why' in proposal) {
    return (
      <section class="panel" aria-label={say('tune.proposal')}>
        <h2>{say('tune.no_proposal')}</h2>
        <p>{hostWords(proposal.why)}</p>
      </section>
    );
  }
  const changes = Object.entries(proposal.settings);
  const isSet = changes.every(([name, value]) => settings.value[name as keyof typeof proposal.settings] === value);
  return (
    <section class="panel proposal" aria-label={say('tune.proposal')}>
      <h2>{say('tune.proposal')}</h2>
      <ul>
        {changes.map(([name, value]) => (
          <li key={name}>
            <b>{fieldWords(name, value)}</b>{' '}
            {say('tune.now_is', {
              field: fieldWords(name, settings.value[name as keyof typeof proposal.settings]),
            })}
          </li>
        ))}
      </ul>
      <h3>{say('tune.gained')}</h3>
      <ul>
        {proposal.gains.map((each) => (
          <li key={each}>+ {hostWords(each)}</li>
        ))}
      </ul>
      <h3>{say('tune.cost')}</h3>
      <ul>
        {proposal.costs.length === 0 && <li>{say('tune.no_cost')}</li>}
        {proposal.costs.map((each) => (
          <li key={each}>− {hostWords(each)}</li>
        ))}
      </ul>
      <p class="hint">{say('tune.rests_on', { truths: proposal.truths })}</p>
      {isSet ? (
        <p role="status">{say('tune.are_these')}</p>
      ) : (
        <button type="button" class="main-button" onClick={() => changeSettings(proposal.settings, say('tune.taken'))}>
          {say('tune.take')}
        </button>
      )}
    </section>
  );
}
