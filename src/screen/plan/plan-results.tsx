// What a plan says: its great figures, the day as a picture and in sentences, and each pan's part in it.
import type { JSX } from 'preact';
import { settings } from '../client/store.ts';
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
    <section class="panel plan-results" aria-label="What to expect" aria-live="polite">
      {beside !== null && (
        <p class="plan-beside">
          <b>Beside the plan you kept:</b> {changed.length === 0 ? 'no difference' : changed.join(', ')}.
        </p>
      )}
      <div class="plan-figures">
        <Figure title="Syrup" main={syrupWords(plan, shown)} range={syrupRangeWords(plan, shown)} />
        <Figure
          title="Time"
          main={hours?.main ?? 'Not known'}
          range={hours?.range ?? 'Give the pans a burner’s power, or their size.'}
        />
        {fuelWords(plan, shown).map((one) => (
          <Figure key={one.main} title="Fuel" {...one} />
        ))}
        <Figure title="Done at" {...finishWords(plan, shown)} />
        {stay !== null && <Figure title="Until you leave" {...stay} />}
        <Figure
          title="Jars"
          main={jarsSentence(plan, shown)}
          range="if all of one size; filled hot, with a little room"
        />
      </div>
      {plan.ends_shallow && (
        <p class="problem">
          ✕ At the end the syrup stands too shallow in the smallest of these pans: finish in a smaller pot.
        </p>
      )}
      <PlanTimeline plan={plan} start={start} />
      {plan.stages.length > 0 && (
        <p class="hint">▼ cold sap wanted · ▶ poured together · ◆ finish; the pale band is the range of the finish.</p>
      )}
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
