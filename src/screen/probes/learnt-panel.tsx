// What earlier boils taught of probes, saps and burners, with a way to forget each and a way to begin without all of it.
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { ask, settings, tell, changeSettings } from '../client/store.ts';
import { hostWords } from '../language/host-words.ts';
import { firstButton } from '../shell/arrival.tsx';
import { say } from '../language/say.ts';
import type { LearntListing, Now } from '../client/types.ts';
import { learntOf, learntWords, taughtBy } from '../words/learnt-words.ts';

interface RowProps {
  learnt: LearntListing;
  /** Called when it was forgotten. */
  forgotten: () => void;
}

/** It cannot be had back, so one press asks and another does it. */
function ForgetButton({ learnt, forgotten }: RowProps): JSX.Element {
  const [asking, setAsking] = useState(false);
  const what = learntOf(learnt, settings.value);
  const forget = async (): Promise<void> => {
    if (await tell({ forget: { name: learnt.name } }, say('probes.forgotten', { what }))) forgotten();
  };
  if (!asking) {
    return (
      <button type="button" aria-label={say('probes.forget_what', { what })} onClick={() => setAsking(true)}>
        {say('probes.forget')}
      </button>
    );
  }
  return (
    <span class="confirm" role="group" aria-label={say('probes.forget_asked', { what })} ref={firstButton}>
      <button type="button" onClick={() => setAsking(false)}>
        {say('probes.no_keep')}
      </button>{' '}
      <button type="button" onClick={() => void forget()}>
        {say('probes.yes_forget')}
      </button>
    </span>
  );
}

function LearntRow({ learnt, forgotten }: RowProps): JSX.Element {
  return (
    <li class="port">
      <span>
        {learntWords(learnt, settings.value)} <small>{taughtBy(learnt)}</small>
      </span>
      <ForgetButton learnt={learnt} forgotten={forgotten} />
    </li>
  );
}

/** A boil can be begun without any of it: nothing is forgotten by that. */
function UseLearnt(): JSX.Element {
  const use = settings.value.use_learnt;
  return (
    <label class="check">
      <input
        type="checkbox"
        checked={use}
        onChange={(event) => changeSettings({ use_learnt: event.currentTarget.checked })}
      />{' '}
      {say('probes.begin_with_it')}
    </label>
  );
}

/** Nothing while nothing was learnt yet. */
export function LearntPanel({ now }: { now: Now }): JSX.Element | null {
  const [list, setList] = useState<LearntListing[]>([]);
  const [problem, setProblem] = useState<string | null>(null);
  const load = (): void =>
    void ask({ learnt: true }).then(
      (data) => setList(data as LearntListing[]),
      (error: Error) => setProblem(error.message),
    );
  // A mark may have taught something.
  useEffect(load, [now.boil, now.marks.length]);
  if (problem === null && list.length === 0) return null;
  const isRunning = now.mode === 'live' && !now.ended;
  return (
    <section class="panel">
      <h2>{say('probes.learnt')}</h2>
      <p class="hint">{say('probes.learnt.text', { running: isRunning ? 'yes' : 'no' })}</p>
      <UseLearnt />
      {problem !== null && <p class="problem">✕ {hostWords(problem)}</p>}
      <ul>
        {list.map((learnt) => (
          <LearntRow key={learnt.name} learnt={learnt} forgotten={load} />
        ))}
      </ul>
    </section>
  );
}
