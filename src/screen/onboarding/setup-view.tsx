// Takes a person from a board that is just plugged in to probes with a name, an offset, an uncertainty and a date.
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import type { Now } from '../client/types.ts';
import { goTo } from '../shell/routes.ts';
import { STEP_WORDS } from '../words/setup-words.ts';
import { BoardStep } from './board-step.tsx';
import { CheckStep } from './check-step.tsx';
import { DoneStep } from './done-step.tsx';
import { HandStep } from './hand-step.tsx';
import { LinesStep } from './lines-step.tsx';
import { draft, forgetDraft, isStepDone, pauseSetup, resumeSetup, stepBack, STEPS, type Step } from './setup-draft.ts';
import { say } from '../language/say.ts';

function StepOf({ now, step }: { now: Now; step: Step }): JSX.Element {
  switch (step) {
    case 'board':
      return <BoardStep now={now} />;
    case 'lines':
      return <LinesStep />;
    case 'hand':
      return <HandStep />;
    case 'boil':
      return <CheckStep key="boil" where="boiling" />;
    case 'ice':
      return <CheckStep key="ice" where="ice" />;
    case 'done':
      return <DoneStep />;
  }
}

export function SetupView({ now }: { now: Now }): JSX.Element {
  const { step } = draft.value;
  const place = STEPS.indexOf(step);
  const isRunning = now.mode !== 'idle' && !now.ended;
  // However it is left, by its button or by the way to another view.
  useEffect(() => {
    if (!isRunning) void resumeSetup();
    const pause = (): void => void pauseSetup();
    addEventListener('pagehide', pause);
    return () => {
      removeEventListener('pagehide', pause);
      pause();
    };
  }, [isRunning]);
  const leave = (): void => {
    void forgetDraft();
    goTo('probes');
  };
  return (
    <div class="page setup">
      <h1>{say('onboarding.title')}</h1>
      <ol class="steps" aria-label={say('onboarding.steps')}>
        {STEPS.map((each, n) => {
          const isDone = n < place && isStepDone(each, draft.value);
          return (
            <li key={each} class={isDone ? 'step-done' : ''} aria-current={each === step ? 'step' : undefined}>
              {isDone ? '✓' : `${n + 1}`} {say(STEP_WORDS[each].short)}
            </li>
          );
        })}
      </ol>
      {isRunning ? (
        <p class="panel">{say('onboarding.running')}</p>
      ) : (
        <section class="panel" aria-label={say(STEP_WORDS[step].title)}>
          <h2>{say(STEP_WORDS[step].title)}</h2>
          <StepOf now={now} step={step} />
        </section>
      )}
      <p class="row">
        {place > 0 && !isRunning && (
          <button type="button" onClick={() => void stepBack()}>
            {say('onboarding.back')}
          </button>
        )}
        <button type="button" onClick={leave}>
          {say('onboarding.leave')}
        </button>
      </p>
    </div>
  );
}
