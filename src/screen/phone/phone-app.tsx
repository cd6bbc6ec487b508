// The page for a phone, and for a tablet on the shelf: the next thing, the calls, the pans, and how old all of it is.
import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import { AlarmShape } from '../alarms/alarm-shape.tsx';
import { acknowledge, ownSeconds } from '../alarms/answers.ts';
import { isLost, linkState, live, said, settings, silentSeconds, tell } from '../client/store.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import type { AlarmView, Now } from '../client/types.ts';
import { LostBand } from '../shell/bands.tsx';
import { allowSound, playBurst, soundState } from '../sound/player.ts';
import { alarmKey, calledWords, firstUnseen, inOrder, isAside, quietWords, soundsNow } from '../words/alarm-words.ts';
import { hoursAndMinutes, wallMs } from '../words/clock.ts';
import { nextLine } from '../words/next-line.ts';
import { phone } from './may-answer.ts';
import { PhonePan } from './phone-pan.tsx';

/** Read from five metres: the pans alone, as large as they go. */
const isWall = signal(false);

function Head({ now }: { now: Now }): JSX.Element {
  const line = now.mode === 'idle' ? null : nextLine(now);
  const seconds = Math.floor(silentSeconds.value);
  return (
    <header class="phone-head">
      {now.mode === 'practice' && <p class="phone-practice">{say('phone.practice')}</p>}
      <p class="phone-next">
        {line === null ? (
          say('shell.no_boil')
        ) : (
          <>
            {line.urgent && <span aria-hidden="true">▲ </span>}
            {line.who !== null && <b>{say('next.who', { who: line.who })} </b>}
            {line.what} {line.range !== null && <small>{line.range}</small>}
          </>
        )}
      </p>
      <p class={isLost.value ? 'phone-age phone-age-lost' : 'phone-age'}>
        {hoursAndMinutes(wallMs(now, now.t))} · {seconds < 2 ? say('shell.now') : say('shell.seconds_old', { seconds })}
      </p>
    </header>
  );
}

function Call({ alarm, now }: { alarm: AlarmView; now: Now }): JSX.Element {
  return (
    <li class={`phone-call phone-call-${alarm.priority}`}>
      <AlarmShape priority={alarm.priority} flashes={!alarm.answered} isOver={alarm.condition === 'over'} />
      <div>
        <b>{calledWords(alarm, now.header)}</b>
        <p>{alarm.condition === 'over' ? say('phone.over_unseen') : hostWords(alarm.todo)}</p>
      </div>
    </li>
  );
}

function Answers({ now, first }: { now: Now; first: AlarmView }): JSX.Element {
  const until = now.sound.silencedUntil;
  const isQuiet = until !== null && until > now.t;
  if (phone.value?.mayAnswer !== true) return <p class="hint">{say('phone.only_look')}</p>;
  return (
    <div class="phone-answers">
      <button type="button" class="hurry-seen" onClick={() => acknowledge(first)}>
        {say('alarms.seen')}
      </button>
      <button
        type="button"
        class="hurry-quiet"
        aria-pressed={isQuiet}
        disabled={soundsNow(now) === null && !isQuiet}
        onClick={() => void tell({ answer: { silence: { seconds: ownSeconds(120, now) } } })}
      >
        {isQuiet ? quietWords(now, until) : say('alarms.quiet')}
      </button>
    </div>
  );
}

function Calls({ now }: { now: Now }): JSX.Element | null {
  const calls = inOrder(now.alarms).filter((alarm) => !isAside(alarm) && !alarm.answered);
  const first = firstUnseen(now.alarms);
  return (
    <>
      <div role="alert" class="unseen">
        {first !== null && first.condition === 'active'
          ? say('phone.call', { what: calledWords(first, now.header), todo: hostWords(first.todo) })
          : ''}
      </div>
      {calls.length > 0 && first !== null && (
        <section class="phone-calls" aria-label={say('phone.calls')}>
          <ul>
            {calls.slice(0, 3).map((alarm) => (
              <Call key={alarmKey(alarm)} alarm={alarm} now={now} />
            ))}
          </ul>
          {calls.length > 3 && <p>{say('phone.more_calls', { count: String(calls.length - 3) })}</p>}
          <Answers now={now} first={first} />
        </section>
      )}
    </>
  );
}

const SOUND_WORDS: Record<typeof soundState.value, MessageKey> = {
  waiting: 'phone.sound.waiting',
  ready: 'shell.try_sound',
  none: 'phone.sound.none',
};

function Foot(): JSX.Element {
  const press = (): void => {
    if (soundState.value === 'ready') playBurst('medium', settings.value.loudness);
    else void allowSound();
  };
  return (
    <footer class="phone-foot">
      <button type="button" disabled={soundState.value === 'none'} onClick={press}>
        {say(SOUND_WORDS[soundState.value])}
      </button>
      <button type="button" aria-pressed={isWall.value} onClick={() => (isWall.value = !isWall.value)}>
        {say('phone.wall')}
      </button>
    </footer>
  );
}

export function PhoneApp(): JSX.Element {
  const now = live.value;
  const problem = said.value?.good === false ? said.value.sentence : null;
  return (
    <div class={isWall.value ? 'phone phone-wall' : 'phone'}>
      <LostBand />
      {now === null ? (
        linkState.value.state !== 'refused' && <p class="phone-next">{say('shell.looking')}</p>
      ) : (
        <>
          <Head now={now} />
          <main>
            <h1 class="unseen">{say('phone.pans')}</h1>
            {problem !== null && (
              <p class="problem" role="status">
                ✕ {hostWords(problem)}
              </p>
            )}
            <Calls now={now} />
            <div class="phone-pans">
              {now.readings.map((reading) => (
                <PhonePan key={reading.pan} now={now} reading={reading} />
              ))}
            </div>
          </main>
          <Foot />
        </>
      )}
    </div>
  );
}
