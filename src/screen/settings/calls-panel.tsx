// How a person is called beside the sound: spoken words, a tick that says all is watched, notifications, a command of their own.
import { say } from '../language/say.ts';
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Settings } from '../client/types.ts';
import { priorityWord } from '../words/alarm-words.ts';
import { allowNotifications, notificationState } from '../sound/telling.ts';

interface CallsPanelProps {
  now: Settings;
  change: (part: Partial<Settings>, done?: string) => void;
}

const NOTIFICATION_WORDS = {
  none: 'calls.none',
  allowed: 'calls.allowed',
  refused: 'calls.refused',
} as const;

function Notifications(): JSX.Element {
  const [state, setState] = useState(notificationState());
  const [asked, setAsked] = useState(false);
  const ask = async (): Promise<void> => {
    setState(await allowNotifications());
    setAsked(true);
  };
  return (
    <div role="status">
      {state === 'ask' ? (
        <button type="button" onClick={() => void ask()}>
          {say('calls.allow')}
        </button>
      ) : (
        <p class="hint">{say(NOTIFICATION_WORDS[state])}</p>
      )}
      {state === 'ask' && asked && <p class="problem">✕ {say('calls.not_allowed')}</p>}
    </div>
  );
}

/** One line for each, so that no quoting is needed: there is no shell that would read it. */
function argumentsIn(text: string): string[] {
  return text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
}

function OwnCommand({ now, change }: CallsPanelProps): JSX.Element {
  const kept = now.second_channel.command.join('\n');
  const [typed, setTyped] = useState(kept);
  return (
    <div>
      <label>
        <span>{say('calls.command', { now: priorityWord('high'), soon: priorityWord('medium') })}</span>
        <textarea
          class="wide"
          rows={3}
          value={typed}
          placeholder={say('calls.command.hint')}
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      </label>
      <p class="hint">{say('calls.command.text')}</p>
      <button
        type="button"
        disabled={typed === kept}
        onClick={() => change({ second_channel: { command: argumentsIn(typed) } }, say('calls.command.kept'))}
      >
        {say('calls.command.keep')}
      </button>
    </div>
  );
}

export function CallsPanel({ now, change }: CallsPanelProps): JSX.Element {
  return (
    <section class="panel calls-panel" aria-labelledby="beside-the-sound">
      <h2 id="beside-the-sound">{say('calls.beside')}</h2>
      <label class="check">
        <input
          type="checkbox"
          checked={now.spoken_calls}
          onChange={(event) => change({ spoken_calls: event.currentTarget.checked })}
        />{' '}
        {say('calls.spoken')}
      </label>
      <label class="check">
        <input
          type="checkbox"
          checked={now.minute_tick}
          onChange={(event) => change({ minute_tick: event.currentTarget.checked })}
        />{' '}
        {say('calls.tick')}
      </label>
      <Notifications />
      <OwnCommand now={now} change={change} />
    </section>
  );
}
