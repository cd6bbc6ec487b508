// The phone's first look: what it is called, and one tap that lets it in and lets it sound.
import { say } from '../language/say.ts';
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { letIn } from './let-in.ts';

export function Welcome({ token, begin }: { token: string; begin: () => void }): JSX.Element {
  const [name, setName] = useState('');
  const [why, setWhy] = useState<string | null>(null);
  async function enter(event: Event): Promise<void> {
    event.preventDefault();
    const trouble = await letIn(token, name);
    if (trouble === null) begin();
    else setWhy(trouble);
  }
  return (
    <main class="phone-welcome">
      <h1>{say('phone.look_from_here')}</h1>
      <form onSubmit={(event) => void enter(event)}>
        <label>
          <span>{say('phone.called')}</span>
          <input
            value={name}
            maxLength={40}
            placeholder={say('phone.called_hint')}
            onInput={(event) => setName(event.currentTarget.value)}
          />
        </label>
        <button type="submit" class="main-button">
          {say('phone.let_in')}
        </button>
      </form>
      {why !== null && (
        <p class="problem" role="alert">
          ✕ {why}
        </p>
      )}
      <p class="hint">{say('phone.what_it_can')}</p>
    </main>
  );
}
