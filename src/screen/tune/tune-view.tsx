// Tuning: past boils run again under other settings, how far that is, what it tells, and a proposal.
import type { JSX } from 'preact';
import type { TuneView as Tuned } from '../../protocol/tune-messages.ts';
import { tell, tuning } from '../client/store.ts';
import type { BoilListing } from '../client/types.ts';
import { useAsked } from '../notebook/page-data.ts';
import { addressOf, place } from '../shell/routes.ts';
import { progressWords } from '../words/tune-words.ts';
import { OffsetsPanel } from './offsets-panel.tsx';
import { ProposalPanel } from './proposal-panel.tsx';
import { TuneForm } from './tune-form.tsx';
import { TuneResults } from './tune-results.tsx';
import { say } from '../language/say.ts';
import { hostWords } from '../language/host-words.ts';

function Progress({ view }: { view: Tuned }): JSX.Element {
  const now = tuning.value ?? view;
  return (
    <section class="panel tune-progress" aria-label={say('tune.running')}>
      <p role="status">{progressWords(now)}</p>
      <progress value={now.share} max={1} aria-label={say('tune.share')} />
      <button type="button" onClick={() => void tell({ tune_stop: true }, say('tune.stop_done'))}>
        {say('tune.stop')}
      </button>
    </section>
  );
}

export function TuneView(): JSX.Element {
  const { view: boils, problem } = useAsked<BoilListing[]>({ boils: true }, 'boils', () => false);
  const told = tuning.value;
  const stamp = told === null ? '' : `${told.running} ${told.done} ${told.share}`;
  const { view } = useAsked<Tuned | null>({ tune_look: true }, stamp, () => false);
  const ended = (boils ?? []).filter(
    ({ boil, running, hidden }) => !running && (hidden !== true || boil === place.value[0]),
  );
  const only = ended.find(({ boil }) => boil === place.value[0])?.boil ?? null;
  return (
    <div class="page tune">
      <p>
        <a href={addressOf('notebook')}>{say('compare.to_notebook')}</a>
      </p>
      <h1>{say('tune.title')}</h1>
      {problem !== null && <p class="problem">✕ {hostWords(problem)}</p>}
      {boils !== null && ended.length === 0 && <p>{say('tune.no_boil')}</p>}
      {ended.length > 0 && <TuneForm key={only} boils={ended} only={only} />}
      {view?.running === true && <Progress view={view} />}
      {view !== null && view.proposal !== null && <ProposalPanel proposal={view.proposal} />}
      {view !== null && <TuneResults view={view} />}
      <OffsetsPanel />
    </div>
  );
}
