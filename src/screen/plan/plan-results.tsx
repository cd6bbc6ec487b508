// What a plan says: its great figures, the day as a picture and in sentences, and each pan's part in it.
import type { JSX } from 'preact';
import { settings } from '../client/store.ts';
import { say, sayDrawn } from '../language/say.ts';
import {
  differenceWords,
  finishWords,
  fuelWords,
  hoursWords,
  jarsFigure,
  longWords,
  onlyUntilWords,
  panSentences,
  shallowEndWords,
  stageSentences,
  stayWords,
  syrupRangeWords,
  syrupWords,
} from '../words/plan-words.ts';
import type { Plan } from '../words/plan-words.ts';
import { PlanTimeline } from './plan-timeline.tsx';

/** `kept` is the same figure of the plan that was put beside; null where there is none, or where it is the same. */
function Figure({ title, main, range, kept }: Saying & { title: string; kept: string | null }): JSX.Element {
  return (
    <div class="plan-figure">
      <h3>{title}</h3>
      <p class="plan-main">{main}</p>
      <p class="hint">{range}</p>
      {kept !== null && kept !== main && <p>{say('plan.kept_figure', { figure: kept })}</p>}
    </div>
  );
}

interface Saying {
  main: string;
  range: string;
}

const timeOf = (plan: Plan, start: string): Saying =>
  hoursWords(plan, start) ?? { main: say('plan.not_known'), range: say('plan.time_how') };

export interface PlanResultsProps {
  plan: Plan;
  /** Local date and time of the fire; '' where nobody said. */
  start: string;
  /** Another plan that was put beside this one, with its own fire; null for none. */
  beside: { plan: Plan; start: string } | null;
}

/** Syrup, time and fuel: what stays in sight while the form beside is typed. */
export function MainFigures({ plan, start, beside }: PlanResultsProps): JSX.Element {
  const shown = settings.value;
  const ofKept = (words: (plan: Plan) => string): string | null => (beside === null ? null : words(beside.plan));
  const onlyUntil = onlyUntilWords(plan, shown);
  const shallow = shallowEndWords(plan);
  return (
    <div class="plan-figures" aria-live="polite">
      {onlyUntil !== null && <p class="plan-only">▲ {onlyUntil}</p>}
      {shallow !== null && <p class="plan-only">✕ {shallow}</p>}
      <Figure
        title={say('plan.syrup')}
        main={syrupWords(plan, shown)}
        range={syrupRangeWords(plan, shown)}
        kept={ofKept((one) => syrupWords(one, shown))}
      />
      <Figure
        title={say('plan.time')}
        {...timeOf(plan, start)}
        kept={beside === null ? null : timeOf(beside.plan, beside.start).main}
      />
      {fuelWords(plan, shown).map((one, index) => (
        <Figure
          key={index}
          title={say('plan.fuel')}
          {...one}
          kept={ofKept((other) => fuelWords(other, shown)[index]?.main ?? say('plan.not_known'))}
        />
      ))}
    </div>
  );
}

/** What the range of a main figure is, once more where the figures that stay in sight have no room for it. */
function MainRanges({ plan, start }: PlanResultsProps): JSX.Element {
  const shown = settings.value;
  const ranges: [string, Saying][] = [
    [say('plan.syrup'), { main: syrupWords(plan, shown), range: syrupRangeWords(plan, shown) }],
    [say('plan.time'), timeOf(plan, start)],
    ...fuelWords(plan, shown).map((one): [string, Saying] => [say('plan.fuel'), one]),
  ];
  return (
    <div class="plan-ranges">
      {ranges.map(([title, { main, range }]) => (
        <p key={main}>
          <b>{title}</b> {main} <span class="hint">{range}</span>
        </p>
      ))}
    </div>
  );
}

export function PlanResults(props: PlanResultsProps): JSX.Element {
  const { plan, start, beside } = props;
  const shown = settings.value;
  const kept = beside?.plan ?? null;
  const stay = stayWords(plan, shown);
  const long = longWords(plan);
  const nameOf = (id: string): string => plan.pans.find(({ pan }) => pan === id)?.name ?? id;
  const changed = kept === null ? [] : differenceWords(plan, kept, shown);
  const ofKept = (words: (plan: Plan) => string): string | null => (kept === null ? null : words(kept));
  return (
    <div class="panel plan-results">
      {beside !== null && (
        <p class="plan-beside">
          {sayDrawn('plan.beside', {
            b: (words) => <b>{words}</b>,
            changes: changed.length === 0 ? say('plan.no_difference') : changed.join(', '),
          })}
        </p>
      )}
      <MainRanges {...props} />
      <div class="plan-figures">
        <Figure
          title={say('plan.done_at')}
          {...finishWords(plan, shown)}
          kept={ofKept((one) => finishWords(one, shown).main)}
        />
        {stay !== null && <Figure title={say('plan.until_you_leave')} {...stay} kept={null} />}
        <Figure
          title={say('plan.jars')}
          {...jarsFigure(plan, shown)}
          kept={ofKept((one) => jarsFigure(one, shown).main)}
        />
      </div>
      {long !== null && <p class="problem">{long}</p>}
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
            {panSentences(pan, plan, shown).map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
          </div>
        ))}
      </div>
    </div>
  );
}
