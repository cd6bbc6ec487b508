// The sound check at the start of a live boil: one press plays the call, one says that it was heard, and that is noted.
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { settings, tell } from '../client/store.ts';
import type { Now } from '../client/types.ts';
import { heardNote, isHeardNote } from '../../protocol/sound-check.ts';
import { isBig } from '../pans/big-view.tsx';
import { maySleep } from '../shell/keep-awake.ts';
import { allowSound, playBurst } from '../sound/player.ts';
import { callsNow } from '../words/alarm-words.ts';
import { isNarrow } from './narrow.ts';

function wasHeard({ marks }: Pick<Now, 'marks'>): boolean {
  return marks.some(({ mark, withdrawn }) => !withdrawn && isHeardNote(mark));
}

async function play(): Promise<boolean> {
  return (await allowSound()) && playBurst('high', settings.value.loudness);
}

/** Notes in the boil that runs that its sound was heard; `when` tells one such note from another. */
export function noteHeard(when: number | 'start'): Promise<boolean> {
  return tell({ mark: heardNote(settings.value.loudness, when) }, say('sound.noted'));
}

/** What would put this machine to sleep, as the host knows it; else that the browser cannot keep it awake. */
function SleepLine({ now }: { now: Now }): JSX.Element | null {
  const sleep = now.sleep ?? null;
  if (sleep !== null)
    return (
      <p class={sleep.warns ? 'sleep-line sleep-warns' : 'sleep-line'}>
        {sleep.warns && '▲ '}
        {hostWords(sleep.sentence)}
      </p>
    );
  if (!maySleep.value) return null;
  return <p class="sleep-line">{say('sound.may_sleep')}</p>;
}

/**
 * Shown until somebody says that they heard it, but not to those who look from afar; on a phone not over the pan that
 * calls either.
 */
export function SoundCheck({ now }: { now: Now }): JSX.Element | null {
  const [played, setPlayed] = useState<'no' | 'yes' | 'failed'>('no');
  if (now.mode !== 'live' || now.ended || isBig.value || wasHeard(now)) return null;
  if (isNarrow.value && callsNow(now.alarms) !== null) return null;
  return (
    <section class="sound-check" aria-label={say('sound.check')}>
      <span role="status">{played === 'failed' ? say('sound.failed') : say('sound.go')}</span>
      <button type="button" onClick={() => void play().then((isPlaying) => setPlayed(isPlaying ? 'yes' : 'failed'))}>
        {say('sound.play')}
      </button>
      <button type="button" disabled={played !== 'yes'} onClick={() => void noteHeard(now.t)}>
        {say('sound.heard')}
      </button>
      <SleepLine now={now} />
    </section>
  );
}
