// What is shown while no boil runs: one press for the practice boil, another for a real one.
import { say } from '../language/say.ts';
import type { JSX } from 'preact';
import { goTo } from '../shell/routes.ts';
import { PracticeButton } from './practice-button.tsx';

export function Welcome(): JSX.Element {
  return (
    <div class="page welcome">
      <h1>{say('welcome.title')}</h1>
      <div class="welcome-ways">
        <section>
          <button type="button" class="way" onClick={() => goTo('start')}>
            {say('pans.start')}
          </button>
          <p>{say('welcome.start.text')}</p>
        </section>
        <section>
          <button type="button" class="way way-plan" onClick={() => goTo('plan')}>
            {say('welcome.plan')}
          </button>
          <p>{say('welcome.plan.text')}</p>
        </section>
        <section>
          <PracticeButton class="way way-practice" />
          <p>{say('welcome.practice.text')}</p>
        </section>
      </div>
    </div>
  );
}
