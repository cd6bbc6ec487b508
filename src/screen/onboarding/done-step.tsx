// Last step: each probe with how much it is off, how sure that is, and when it was found; kept at one press.
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { ask, sayDone, settings } from '../client/store.ts';
import type { ProbeError } from '../client/types.ts';
import { goTo } from '../shell/routes.ts';
import { dayAndTime } from '../words/clock.ts';
import { errorWords } from '../words/setup-words.ts';
import { checksOf, draft, forgetDraft, keepAll } from './setup-draft.ts';
import { say } from '../language/say.ts';

function ProbeRow({ channel }: { channel: string }): JSX.Element {
  const [error, setError] = useState<ProbeError | null>(null);
  const checks = checksOf(draft.value, channel);
  const at = checks.map((check) => check.at).at(-1);
  useEffect(() => {
    ask({ probe_error: checks }).then(
      (data) => setError(data as ProbeError | null),
      () => undefined, // It is worked out again when it is kept.
    );
  }, [checks.length]);
  const name = draft.value.names[channel];
  return (
    <li class="port">
      <span>
        <b>{name ? `${name} (${channel})` : channel}</b> {errorWords(error, settings.value)}
        <small>{at === undefined ? '' : say('onboarding.checked', { when: dayAndTime(at) })}</small>
      </span>
    </li>
  );
}

export function DoneStep(): JSX.Element {
  const keep = async (then: 'start' | 'probes'): Promise<void> => {
    if (!(await keepAll(settings.value))) return;
    // What was just set up is what somebody wants to see on.
    await forgetDraft(false);
    sayDone(say('onboarding.set_up'));
    goTo(then);
  };
  const isChecked = Object.values(draft.value.checks).some((one) => Object.keys(one).length > 0);
  return (
    <>
      <p>{say('onboarding.nothing_kept')}</p>
      <ul>
        {Object.keys(draft.value.names).map((channel) => (
          <ProbeRow key={channel} channel={channel} />
        ))}
      </ul>
      {isChecked && <p class="hint">{say('onboarding.put_right')}</p>}
      <p class="row">
        <button type="button" class="main-button" onClick={() => void keep('probes')}>
          {say('onboarding.keep')}
        </button>
        <button type="button" onClick={() => void keep('start')}>
          {say('onboarding.keep_start')}
        </button>
      </p>
    </>
  );
}
