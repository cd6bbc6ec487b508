// The first line of every view: the next thing to do and when, beside the time of day and the state of the sound.
import { say } from '../language/say.ts';
import type { JSX } from 'preact';
import { AlarmShape } from '../alarms/alarm-shape.tsx';
import { isLost, settings, silentSeconds } from '../client/store.ts';
import type { Now } from '../client/types.ts';
import { endQuiet } from '../alarms/answers.ts';
import { allowSound, playBurst, soundState } from '../sound/player.ts';
import { ageWords, clockMs, hoursAndMinutes } from '../words/clock.ts';
import { quietUntil, quietWords } from '../words/alarm-words.ts';
import { nextLine } from '../words/next-line.ts';
import { BigViewButton } from '../pans/big-view.tsx';
import { useKey } from './keys.ts';
import { route } from './routes.ts';

/** Also where all that called was seen, and the buttons of the calls are away. */
function QuietButton({ words }: { words: string }): JSX.Element {
  useKey('q', endQuiet);
  return (
    <button type="button" class="sound-quiet" aria-keyshortcuts="Q" onClick={endQuiet}>
      <b>{say('alarms.quiet_end')}</b>
      <small>{words}</small>
    </button>
  );
}

function SoundButton({ now }: { now: Now }): JSX.Element {
  const state = soundState.value;
  const until = quietUntil(now);
  if (state === 'none') return <span class="sound-none">{say('shell.no_sound')}</span>;
  if (state === 'waiting') {
    return (
      <button type="button" class="sound-waiting" onClick={() => void allowSound()}>
        {say('shell.allow_sound')}
      </button>
    );
  }
  if (until !== null) return <QuietButton words={quietWords(now, until)} />;
  return (
    <button type="button" class="quiet-button" onClick={() => playBurst('medium', settings.value.loudness)}>
      {say('shell.try_sound')}
    </button>
  );
}

function Age({ now }: { now: Now }): JSX.Element {
  return <span class={isLost.value ? 'age age-lost' : 'age'}>{ageWords(now, silentSeconds.value)}</span>;
}

export function FirstLine({ now, sound }: { now: Now; sound: Now }): JSX.Element {
  const line = now.mode === 'idle' ? null : nextLine(now, route.value === 'pans');
  return (
    <header class="first">
      <p class="first-what">
        {line === null ? (
          <span>{say('shell.no_boil')}</span>
        ) : (
          <>
            {line.priority !== null && (
              <>
                <AlarmShape priority={line.priority} flashes={false} />{' '}
              </>
            )}
            {line.who !== null && <b>{say('next.who', { who: line.who })} </b>}
            <span>{line.what}</span>
            {line.range !== null && <span class="first-range"> {line.range}</span>}
          </>
        )}
      </p>
      <div class="first-side">
        {now.readings.length > 0 && (route.value === 'pans' || route.value === 'replay') && <BigViewButton />}
        <SoundButton now={sound} />
        <span class="clock">
          {hoursAndMinutes(clockMs(now))}{' '}
          {now.view === 'live' ? <Age now={now} /> : <span class="age">{say('shell.back_then')}</span>}
        </span>
      </div>
    </header>
  );
}
