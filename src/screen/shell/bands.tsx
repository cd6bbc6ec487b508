// The bands that cannot be missed: practice, replay, connection lost, and what the host has to say.
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { closeReplay, isLost, linkState, said, silentSeconds, tell } from '../client/store.ts';
import type { Now } from '../client/types.ts';
import { knowsOfLoss, quietLoss } from '../sound/sounding.ts';
import { lengthOfTime, timeOfDay } from '../words/clock.ts';
import { KeyButton } from './key-button.tsx';
import { goTo } from './routes.ts';

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

const ARROW_MS = 10_000;

/** Ticks where something was noted or called so far; the replay does not tell what is still to come. */
function Ticks({ now, length }: { now: Now; length: number }): JSX.Element {
  const moments = new Set([...now.marks.map((each) => each.at), ...now.alarms.map((each) => each.since)]);
  return (
    <span class="seek-ticks" aria-hidden="true">
      {[...moments].map((at) => (
        <span key={at} style={{ left: `${((100 * at) / Math.max(1, length)).toFixed(2)}%` }} />
      ))}
    </span>
  );
}

/** The whole boil as a strip. While it is dragged it stays under the finger, whatever the replay says meanwhile. */
function SeekStrip({ now, length, seek }: { now: Now; length: number; seek: (t: number) => void }): JSX.Element {
  const [dragged, setDragged] = useState<number | null>(null);
  const shown = dragged ?? now.t;
  const go = (t: number): void => {
    setDragged(null);
    seek(Math.round(Math.min(length, Math.max(0, t))));
  };
  return (
    <span class="seek-strip">
      <Ticks now={now} length={length} />
      <input
        type="range"
        class="seek"
        aria-label="Go to a moment of the boil"
        aria-valuetext={timeOfDay(now, shown)}
        title="Arrow keys move 10 s"
        min={0}
        max={length}
        step={1000}
        value={shown}
        onInput={(event) => setDragged(Number(event.currentTarget.value))}
        onChange={(event) => go(Number(event.currentTarget.value))}
        onKeyDown={(event) => {
          const way = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1 }[event.key];
          if (way === undefined) return;
          event.preventDefault();
          go(shown + way * ARROW_MS);
        }}
      />
    </span>
  );
}

export function ReplayBand({ now }: { now: Now }): JSX.Element {
  const playing = now.replay?.playing ?? false;
  const length = now.replay?.length ?? now.t;
  const control = (change: { playing: boolean } | { speed: number } | { seek: number }): void =>
    void tell({ replay_control: change });
  const leave = async (): Promise<void> => {
    await closeReplay();
    goTo('notebook');
  };
  return (
    <div class="band band-replay" role="region" aria-label="Replay">
      <strong class="band-word">Replay</strong>
      <span class="band-note">not live</span>
      <span class="band-note band-title">{now.replay?.title ?? now.header?.name ?? 'a kept boil'}</span>
      <KeyButton letter="Space" class="play-button" act={() => control({ playing: !playing })}>
        {playing ? 'Pause' : 'Play'}
      </KeyButton>
      <Speeds speed={now.speed} choose={(speed) => control({ speed })} />
      <span class="band-note seek-time">
        {lengthOfTime(now.t / 1000)} of {lengthOfTime(length / 1000)}
      </span>
      <button type="button" onClick={() => void leave()}>
        Close replay
      </button>
      <SeekStrip now={now} length={length} seek={(t) => control({ seek: t })} />
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
