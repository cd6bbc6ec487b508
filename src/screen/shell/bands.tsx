// The bands that cannot be missed: practice, replay, connection lost, and what the host has to say.
import type { JSX } from 'preact';
import { isLost, linkState, said, silentSeconds, tell } from '../client/store.ts';
import type { Now } from '../client/types.ts';
import { knowsOfLoss, quietLoss } from '../sound/sounding.ts';
import { lengthOfTime } from '../words/clock.ts';

const SPEEDS = [1, 10, 60, 600];

function Speeds({ speed, choose }: { speed: number; choose: (speed: number) => void }): JSX.Element {
  return (
    <span class="speeds" role="group" aria-label="Speed">
      {SPEEDS.map((each) => (
        <button key={each} type="button" aria-pressed={speed === each} onClick={() => choose(each)}>
          {each}×
        </button>
      ))}
    </span>
  );
}

async function endPractice(): Promise<void> {
  if (await tell({ end: true }, 'The practice boil is over and kept.')) scrollTo(0, 0);
}

export function PracticeBand({ now }: { now: Now }): JSX.Element {
  return (
    <div class="band band-practice">
      <strong class="band-word">Practice</strong>
      <span class="band-note">
        made-up pans<span class="wide-only">, no fire, nothing here is real</span>
      </span>
      {!now.ended && (
        <>
          <Speeds speed={now.speed} choose={(speed) => void tell({ practice_speed: speed })} />
          <button type="button" aria-label="End practice" onClick={() => void endPractice()}>
            End<span class="wide-only"> practice</span>
          </button>
        </>
      )}
    </div>
  );
}

/** Said in large letters when the numbers can no longer be trusted to be of now. */
export function LostBand(): JSX.Element | null {
  const state = linkState.value;
  if (state.state === 'refused') {
    return (
      <div class="band-lost" role="alert">
        <strong>Not let in</strong> <span>{state.why}</span>
      </div>
    );
  }
  if (!isLost.value) return null;
  return (
    <div class="band-lost">
      <div>
        {/* Its words alone: the seconds beside them would be read out again and again. */}
        <strong role="alert">Connection lost</strong>
        <span>
          Numbers are <b>{lengthOfTime(silentSeconds.value)}</b> old. Go to the pans and look; trying again by itself.
        </span>
      </div>
      {!knowsOfLoss.value && (
        <button type="button" onClick={quietLoss}>
          I have seen it
        </button>
      )}
    </div>
  );
}

/** What the last command did, or why it did nothing. */
export function SaidLine(): JSX.Element {
  const last = said.value;
  return (
    <div class="said" role="status">
      {last !== null && (
        <p class={last.good ? 'said-good' : 'said-bad'}>
          <span>
            {last.good ? '✓ ' : '✕ '}
            {last.sentence}
          </span>
          <button type="button" aria-label="Put this message away" onClick={() => (said.value = null)}>
            OK
          </button>
        </p>
      )}
    </div>
  );
}

export function Notices({ now }: { now: Now }): JSX.Element | null {
  if (now.notices.length === 0) return null;
  return (
    <ul class="notices" role="status">
      {now.notices.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}
