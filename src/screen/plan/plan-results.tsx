// What a plan says: its great figures, the day as a picture and in sentences, and each pan's part in it.
import type { JSX } from 'preact';
import { settings } from '../client/store.ts';
import { say, sayDrawn } from '../language/say.ts';
import {
  differenceWords,
  finishWords,
  fuelWords,
  hoursWords,
  jarsSentence,
  panSentences,
  stageSentences,
  stayWords,
  syrupRangeWords,
  syrupWords,
} from '../words/plan-words.ts';
import type { Plan } from '../words/plan-words.ts';
import { PlanTimeline } from './plan-timeline.tsx';

function Figure({ title, main, range }: { title: string; main: string; range: string }): JSX.Element {
  return (
    <div class="plan-figure">
      <h3>{title}</h3>
      <p class="plan-main">{main}</p>
      <p class="hint">{range}</p>
    </div>
  );
}

export interface PlanResultsProps {
  plan: Plan;
  /** Local date and time of the fire; '' where nobody said. */
  start: string;
  /** Another plan that was put beside this one; null for none. */
  beside: Plan | null;
}

export function PlanResults({ plan, start, beside }: PlanResultsProps): JSX.Element {
  const shown = settings.value;
  const hours = hoursWords(plan, start);
  const stay = stayWords(plan, shown);
  const nameOf = (id: string): string => plan.pans.find(({ pan }) => pan === id)?.name ?? id;
  const changed = beside === null ? [] : differenceWords(plan, beside, shown);
  return (
    <section class="panel plan-results" aria-label={say('plan.expect')} aria-live="polite">
      {beside !== null && (
        <p class="plan-beside">
          {sayDrawn('plan.beside', {
            b: (words) => <b>{words}</b>,
            changes: changed.length === 0 ? say('plan.no_difference') : changed.join(', '),
          })}
        </p>
      )}
      <div class="plan-figures">
        <Figure title={say('plan.syrup')} main={syrupWords(plan, shown)} range={syrupRangeWords(plan, shown)} />
        <Figure
          title={say('plan.time')}
          main={hours?.main ?? say('plan.not_known')}
          range={hours?.range ?? say('plan.time_how')}
        />
        {fuelWords(plan, shown).map((one) => (
          <Figure key={one.main} title={say('plan.fuel')} {...one} />
        ))}
        <Figure title={say('plan.done_at')} {...finishWords(plan, shown)} />
        {stay !== null && <Figure title={say('plan.until_you_leave')} {...stay} />}
        <Figure title={say('plan.jars')} main={jarsSentence(plan, shown)} range={say('plan.jars.range')} />
      </div>
      {plan.ends_shallow && <p class="problem">{say('plan.ends_shallow')}</p>}
      <PlanTimeline plan={plan} start={start} />
      {plan.stages.length > 0 && <p class="hint">{say('plan.legend')}</p>}
      <ol class="plan-steps">
        {stageSentences(plan, start, nameOf, shown).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ol>
      <div class="plan-pans">
        {plan.pans.map((pan) => (
          <div key={pan.pan}>
            <h3>{pan.name}</h3>
            {panSentences(pan, shown).map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
          </div>
        ))}
      </div>
    </section>
  );
}
