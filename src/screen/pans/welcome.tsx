// What is shown while no boil runs: one press for the practice boil, another for a real one.
import type { JSX } from 'preact';
import { goTo } from '../shell/routes.ts';
import { PracticeButton } from './practice-button.tsx';

export function Welcome(): JSX.Element {
  return (
    <div class="page welcome">
      <h1>Panwarden watches your pans and calls you before they burn.</h1>
      <div class="welcome-ways">
        <section>
          <button type="button" class="way" onClick={() => goTo('start')}>
            Start a boil
          </button>
          <p>With your own pans and probes, or with a thermometer that you read by hand.</p>
        </section>
        <section>
          <button type="button" class="way way-plan" onClick={() => goTo('plan')}>
            Plan a boil
          </button>
          <p>How much syrup, how many hours and how much fuel the sap that you have will take.</p>
        </section>
        <section>
          <PracticeButton class="way way-practice" />
          <p>Made-up pans at Tarn Hollow, sixty times as fast as life. Nothing needs to be plugged in.</p>
        </section>
      </div>
    </div>
  );
}
