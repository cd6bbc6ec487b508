// Third step: warm one tip after the other in the hand, and give the one that rises its name.
import type { JSX } from 'preact';
import { settings } from '../client/store.ts';
import type { ProbeWatch } from '../client/types.ts';
import { temperature } from '../words/amounts.ts';
import { risenWords, risingWords } from '../words/setup-words.ts';
import { usePolled } from './polled.ts';
import { change, draft, nameChannel, nameTwice } from './setup-draft.ts';
import { say } from '../language/say.ts';

function ChannelRow({ one, rises }: { one: ProbeWatch['channels'][number]; rises: boolean }): JSX.Element {
  const name = draft.value.names[one.channel] ?? '';
  return (
    <li class={rises ? 'channel channel-rises' : 'channel'}>
      <b>
        {rises ? '▲ ' : ''}
        {one.channel}
      </b>
      <span class="probe-number">
        {one.celsius === null ? say('probes.no_value') : temperature(one.celsius, settings.value)}
      </span>
      <span>{risenWords(one.risenC, rises, settings.value)}</span>
      <label>
        <span>{say('onboarding.name_of', { channel: one.channel })}</span>
        <input
          value={name}
          maxLength={40}
          placeholder={say('onboarding.name_like')}
          onInput={(event) => nameChannel(one.channel, event.currentTarget.value)}
        />
      </label>
    </li>
  );
}

export function HandStep(): JSX.Element {
  const { path, names } = draft.value;
  const watch = usePolled<ProbeWatch>({ probe_watch: { path: path ?? '' } });
  const twice = nameTwice(names);
  const channels = (watch?.channels ?? []).filter(({ channel }) => channel in names);
  return (
    <>
      <p>{say('onboarding.hand_how')}</p>
      <p class="setup-verdict" role="status">
        {watch === null ? say('onboarding.listening') : risingWords(watch)}
      </p>
      <ul class="channels">
        {channels.map((one) => (
          <ChannelRow key={one.channel} one={one} rises={watch?.rises === one.channel} />
        ))}
      </ul>
      {twice !== null && (
        <p class="problem" role="alert">
          ✕ {say('onboarding.name_twice', { name: twice.trim() })}
        </p>
      )}
      <button
        type="button"
        class="main-button"
        disabled={channels.length === 0 || twice !== null}
        onClick={() => change({ step: 'boil' })}
      >
        {say('onboarding.on_to_boil')}
      </button>
    </>
  );
}
