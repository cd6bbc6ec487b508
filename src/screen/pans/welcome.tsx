// What is shown while no boil runs: one press for the practice boil, another for a real one.
import { say } from '../language/say.ts';
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { toldAltitude, WaterBoils } from '../boil/water-there.tsx';
import { goTo } from '../shell/routes.ts';
import { PracticeButton } from './practice-button.tsx';

export function Welcome(): JSX.Element {
  const [altitudeM, setAltitudeM] = useState<number | undefined>(undefined);
  useEffect(() => {
    void toldAltitude().then(
      (told) => setAltitudeM(told.altitudeM),
      () => undefined, // A link that is down is said elsewhere.
    );
  }, []);
  return (
    <div class="page welcome">
      <h1>{say('welcome.title')}</h1>
      <WaterBoils altitudeM={altitudeM} />
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
