// Second step: the raw lines of the board, with what is read in them, why, and what is left out; confirmed or set by hand.
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { ask } from '../client/store.ts';
import type { HeardPort, PortFormat, Proposal } from '../client/types.ts';
import { findingWords, verdictWords } from '../words/setup-words.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import { HandFormat } from './hand-format.tsx';
import { usePolled } from './polled.ts';
import { RawLines } from './raw-lines.tsx';
import { confirmFormat, draft } from './setup-draft.ts';

/** From so many lines on something can be said of them. */
const ENOUGH_LINES = 3;

/** What the program makes of the lines; asked anew while more of them come, up to what it looks at. */
function useProposal(lines: readonly string[]): Proposal | null {
  const [proposal, setProposal] = useState<Proposal | null>(null);
  const seen = Math.min(lines.length, 20);
  useEffect(() => {
    if (seen < ENOUGH_LINES) return;
    ask({ recognise: [...lines] }).then(
      (data) => setProposal(data as Proposal),
      () => undefined, // Asked again with the next lines.
    );
  }, [seen]);
  return proposal;
}

/** What is read, and why. */
function Proposed({ proposal: { reasons, verdict } }: { proposal: Proposal }): JSX.Element {
  return (
    <>
      <p class="setup-verdict">{verdictWords(verdict)}</p>
      <ul class="setup-reasons">
        {reasons.map((reason) => (
          <li key={reason}>{hostWords(reason)}</li>
        ))}
      </ul>
    </>
  );
}

interface ChoicesProps {
  proposal: Proposal | null;
  baud: number | null;
  byHand: () => void;
}

/** The proposal first, then the other ways it could be; where nothing is proposed, setting it by hand is what is left. */
function Choices({ proposal, baud, byHand }: ChoicesProps): JSX.Element {
  const format = proposal?.format ?? null;
  const confirm = (chosen: PortFormat, channels: Proposal['channels']): void =>
    void confirmFormat(
      chosen,
      baud,
      channels.filter(({ coldJunction }) => !coldJunction),
    );
  return (
    <div class="setup-choices">
      {proposal !== null && format !== null && (
        <button type="button" class="main-button" onClick={() => confirm(format, proposal.channels)}>
          {say('onboarding.yes')}
        </button>
      )}
      {proposal?.alternatives.map((other) => (
        <button key={other.why} type="button" onClick={() => confirm(other.format, other.channels)}>
          {say('setup.rather', { why: hostWords(other.why) })}
        </button>
      ))}
      <button type="button" class={proposal?.verdict === 'none' ? 'main-button' : ''} onClick={byHand}>
        {say('onboarding.no_by_hand')}
      </button>
    </div>
  );
}

export function LinesStep(): JSX.Element {
  const { path } = draft.value;
  const [byHand, setByHand] = useState(false);
  const heard = usePolled<HeardPort>({ heard_port: { path: path ?? '' } });
  const lines = (heard?.lines ?? []).map(({ text }) => text);
  const proposal = useProposal(lines);
  const baud = heard?.baud ?? null;
  return (
    <>
      <p role="status">{heard === null ? say('onboarding.opening') : findingWords(heard)}</p>
      {heard?.why !== null && heard?.why !== undefined && <p class="problem">✕ {hostWords(heard.why)}</p>}
      {lines.length > 0 && (
        <RawLines
          lines={proposal?.lines.slice(-3) ?? lines.slice(-3).map((text) => ({ text, spans: [], why: null }))}
        />
      )}
      {byHand ? (
        <HandFormat
          lines={lines}
          baud={baud}
          isProposed={(proposal?.format ?? null) !== null}
          close={() => setByHand(false)}
        />
      ) : (
        <>
          {proposal !== null && <Proposed proposal={proposal} />}
          <Choices proposal={proposal} baud={baud} byHand={() => setByHand(true)} />
        </>
      )}
    </>
  );
}
