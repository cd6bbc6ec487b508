// The band over a replay that cannot be missed: that it is one, of what, and the way out; it is printed, too.
import type { JSX } from 'preact';
import type { Now } from '../client/types.ts';
import { KeyButton } from '../shell/key-button.tsx';
import { lengthOfTime } from '../words/clock.ts';
import { printedWords } from '../words/replay-words.ts';
import { leave, play } from './replay-control.ts';

export function ReplayBand({ now }: { now: Now }): JSX.Element {
  const playing = now.replay?.playing ?? false;
  const length = now.replay?.length ?? now.t;
  const isOther = (now.replay?.choices ?? null) !== null;
  return (
    <div class="band band-replay" role="region" aria-label="Replay">
      <strong class="band-word">Replay</strong>
      <span class="band-note">not live{isOther && <b>, with other choices</b>}</span>
      <span class="band-note band-title">{now.replay?.title ?? now.header?.name ?? 'a kept boil'}</span>
      <span class="band-note seek-time">
        {lengthOfTime(now.t / 1000)} of {lengthOfTime(length / 1000)}
      </span>
      <button type="button" class="wide-only" onClick={() => print()}>
        Print
      </button>
      <KeyButton letter="Space" class="play-button" act={() => play(!playing)}>
        {playing ? 'Pause' : 'Play'}
      </KeyButton>
      <button type="button" aria-label="Close replay" onClick={() => void leave()}>
        Close<span class="wide-only"> replay</span>
      </button>
      <p class="print-only">{printedWords(now)}</p>
    </div>
  );
}
