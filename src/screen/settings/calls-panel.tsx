// How a person is called beside the sound: spoken words, a tick that says all is watched, notifications, a command of their own.
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Settings } from '../client/types.ts';
import { allowNotifications, notificationState } from '../sound/telling.ts';

interface CallsPanelProps {
  now: Settings;
  change: (part: Partial<Settings>) => void;
}

const NOTIFICATION_WORDS = {
  none: 'This browser has no notifications.',
  allowed: 'Notifications are allowed: a call also comes as one while the page is not in front.',
  refused: 'Notifications are refused for this page; the browser’s own settings change that.',
} as const;

function Notifications(): JSX.Element {
  const [state, setState] = useState(notificationState());
  if (state !== 'ask') return <p class="hint">{NOTIFICATION_WORDS[state]}</p>;
  return (
    <button type="button" onClick={() => void allowNotifications().then(setState)}>
      Allow notifications
    </button>
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
        <span>A command of your own, for a call that nobody answers for a minute or could hear</span>
        <textarea
          class="wide"
          rows={3}
          value={typed}
          placeholder="the program, then each of its arguments on a line of its own"
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      </label>
      <p class="hint">
        It is run on this machine as it stands, with the call as its last argument, and ended after 10 s. Only in a live
        boil. Empty: none.
      </p>
      <button
        type="button"
        disabled={typed === kept}
        onClick={() => change({ second_channel: { command: argumentsIn(typed) } })}
      >
        Keep this command
      </button>
    </div>
  );
}

export function CallsPanel({ now, change }: CallsPanelProps): JSX.Element {
  return (
    <section class="panel calls-panel" aria-labelledby="beside-the-sound">
      <h2 id="beside-the-sound">Beside the sound</h2>
      <label class="check">
        <input
          type="checkbox"
          checked={now.spoken_calls}
          onChange={(event) => change({ spoken_calls: event.currentTarget.checked })}
        />{' '}
        Speak the calls too, after their sound
      </label>
      <label class="check">
        <input
          type="checkbox"
          checked={now.minute_tick}
          onChange={(event) => change({ minute_tick: event.currentTarget.checked })}
        />{' '}
        A quiet tick once a minute while pans are watched: silence then means trouble
      </label>
      <Notifications />
      <OwnCommand now={now} change={change} />
    </section>
  );
}
