// The band over a replay that cannot be missed: that it is one, of what, and the way out; it is printed, too.
import { lengthOfTime } from '../../core/quantities/time.ts';
import type { JSX } from 'preact';
import type { Now } from '../client/types.ts';
import { KeyButton } from '../shell/key-button.tsx';
import { printedWords, titleWords } from '../words/replay-words.ts';
import { leave, play } from './replay-control.ts';
import { say } from '../language/say.ts';

export function ReplayBand({ now }: { now: Now }): JSX.Element {
  const playing = now.replay?.playing ?? false;
  const length = now.replay?.length ?? now.t;
  const isOther = (now.replay?.choices ?? null) !== null;
  return (
    <div class="band band-replay" role="region" aria-label={say('replay.band')}>
      <strong class="band-word">{say('replay.band')}</strong>
      <span class="band-note">
        {say('replay.not_live')}
        {isOther && <b>{say('replay.with_other')}</b>}
      </span>
      <span class="band-note band-title">{titleWords(now)}</span>
      <span class="band-note seek-time">
        {say('replay.of_length', { time: lengthOfTime(now.t / 1000), length: lengthOfTime(length / 1000) })}
      </span>
      <button type="button" class="wide-only" onClick={() => print()}>
        {say('replay.print')}
      </button>
      <KeyButton letter="Space" class="play-button" act={() => play(!playing)}>
        {playing ? say('replay.pause') : say('replay.play')}
      </KeyButton>
      <button type="button" aria-label={say('replay.close')} onClick={() => void leave()}>
        {say('replay.close_short')}
        <span class="wide-only">{say('replay.close_more')}</span>
      </button>
      <p class="print-only">{printedWords(now)}</p>
    </div>
  );
}
