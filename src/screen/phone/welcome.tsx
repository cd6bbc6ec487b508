// The phone's first look: what it is called, and one tap that lets it in and lets it sound.
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
      <h1>Look at the pans from here</h1>
      <form onSubmit={(event) => void enter(event)}>
        <label>
          <span>What this phone is called</span>
          <input
            value={name}
            maxLength={40}
            placeholder="Phone in the kitchen"
            onInput={(event) => setName(event.currentTarget.value)}
          />
        </label>
        <button type="submit" class="main-button">
          Let this phone in
        </button>
      </form>
      {why !== null && (
        <p class="problem" role="alert">
          ✕ {why}
        </p>
      )}
      <p class="hint">
        It can look, and sound while this page is open and in front. It replaces nobody by the pans: a phone sleeps, and
        a network drops.
      </p>
    </main>
  );
}
