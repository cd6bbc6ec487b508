// The Plan screen: the sap that there is, the pans for it and when, and beside it what they give; while a boil runs, what is left of its plan.
import type { JSX } from 'preact';
import { signal } from '@preact/signals';
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { PlanView as Planned } from '../../protocol/plan-schema.ts';
import { setupOf } from '../boil/boil-draft.ts';
import { plannedSetup } from '../boil/planned.ts';
import { ask, saps, settings } from '../client/store.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import type { Now, Settings, Setup } from '../client/types.ts';
import { goTo } from '../shell/routes.ts';
import { underWayWords } from '../words/plan-words.ts';
import { planDraft, planDraftIn, problemInPlan, requestOf } from './plan-draft.ts';
import type { PlanDraft } from './plan-draft.ts';
import { PlanForm } from './plan-form.tsx';
import { PlanResults } from './plan-results.tsx';

/** What was typed, and in which units, stays while other screens are looked at; null until the screen was opened. */
const typed = signal<Typed | null>(null);

interface Typed {
  draft: PlanDraft;
  units: Settings;
}

/** A plan that was put beside, with what it was typed from. */
const beside = signal<(Typed & { plan: Planned['plan'] }) | null>(null);

function localToday(): string {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
}

/** The draft in the units shown, begun from the last boil's pans as soon as the host has told them. */
function useDraft(): PlanDraft | null {
  useEffect(() => {
    if (typed.value !== null) return;
    const begin = (setup: Setup | null): void => {
      const units = settings.value;
      typed.value ??= { draft: planDraft(setup, units, saps.value, localToday()), units };
    };
    ask({ last_setup: true }).then(
      (setup) => begin(setup as Setup | null),
      () => begin(null),
    );
  }, []);
  const shown = settings.value;
  const now = typed.value;
  return useMemo(() => (now === null ? null : planDraftIn(now.draft, now.units, shown)), [now, shown]);
}

/** A pause after which a field counts as typed, ms. */
const TYPING_MS = 700;

/** The host's answer to the draft as it stands; the last good one stays while something is wrong. */
function usePlan(current: PlanDraft | null): { plan: Planned['plan'] | null; problem: string | null } {
  const [answer, setAnswer] = useState<{ plan: Planned['plan'] | null; problem: string | null }>({
    plan: null,
    problem: null,
  });
  const shown = settings.value;
  useEffect(() => {
    if (current === null) return;
    const problem = problemInPlan(current, shown);
    if (problem !== null) {
      // Nobody is told that 4 is too little for a width while 400 is being typed.
      const timer = setTimeout(() => setAnswer(({ plan }) => ({ plan, problem })), TYPING_MS);
      return () => clearTimeout(timer);
    }
    let isLatest = true;
    ask({ plan: requestOf(current, shown, saps.value) }).then(
      (data) => isLatest && setAnswer({ plan: (data as Planned).plan, problem: null }),
      (error: Error) => isLatest && setAnswer(({ plan }) => ({ plan, problem: hostWords(error.message) })),
    );
    return () => void (isLatest = false);
  }, [current, shown]);
  return answer;
}

/** What is left of the plan of the boil that runs, looked at again every so often. */
function UnderWay({ now }: { now: Now }): JSX.Element | null {
  const [planned, setPlanned] = useState<Planned | null>(null);
  const minute = Math.floor(now.t / 60_000);
  useEffect(() => {
    ask({ plan_now: true }).then(
      (data) => setPlanned(data as Planned | null),
      () => undefined, // The next minute asks again.
    );
  }, [minute, now.boil]);
  if (planned === null || planned.under_way === null) return null;
  const words = underWayWords(planned.under_way, settings.value);
  return (
    <section class="panel plan-under-way" aria-label={say('plan.left')}>
      <h2>{say('plan.runs')}</h2>
      <p class="plan-main">{words.main}</p>
      <p>{words.range}</p>
    </section>
  );
}

export function PlanView({ now }: { now: Now }): JSX.Element {
  const current = useDraft();
  const { plan, problem } = usePlan(current);
  const kept = beside.value;
  const isRunning = now.mode !== 'idle' && !now.ended;
  if (current === null) return <p class="page">{say('plan.looking')}</p>;
  const set = (draft: PlanDraft): void => void (typed.value = { draft, units: settings.value });

  const keptPlan = kept === null ? null : { plan: kept.plan, start: kept.draft.start };

  function keep(plan: Planned['plan']): void {
    beside.value = { draft: current!, units: settings.value, plan };
  }

  /** What stood here is put beside in its place, so that nothing that was tried is lost. */
  function goBack(plan: Planned['plan']): void {
    const back = { draft: kept!.draft, units: kept!.units };
    if (problem === null) keep(plan);
    typed.value = back;
  }

  function begin(): void {
    const request = requestOf(current!, settings.value, saps.value);
    plannedSetup.value = { ...setupOf(current!.boil, settings.value, saps.value), plan: request };
    goTo('start');
  }

  return (
    <div class="page plan-page">
      <h1>{say('plan.title')}</h1>
      {isRunning && <UnderWay now={now} />}
      <div class="plan-columns">
        <form onSubmit={(event) => event.preventDefault()} noValidate>
          <PlanForm current={current} set={set} />
        </form>
        <div>
          {problem !== null && (
            <p class={current.litres === '' ? 'panel plan-ask' : 'problem plan-problem'} role="status">
              {current.litres === '' ? '' : '✕ '}
              {problem}
            </p>
          )}
          {plan !== null && current.litres !== '' && (
            <>
              {problem === null ? (
                <PlanResults plan={plan} start={current.start} beside={keptPlan} />
              ) : (
                <div class="plan-old">
                  <p>{say('plan.before_change')}</p>
                  <PlanResults plan={plan} start={current.start} beside={keptPlan} />
                </div>
              )}
              <p class="row">
                <button type="button" disabled={problem !== null} onClick={() => keep(plan)}>
                  {say('plan.keep')}
                </button>
                {kept !== null && (
                  <>
                    <button type="button" onClick={() => goBack(plan)}>
                      {say('plan.back_to_kept')}
                    </button>
                    <button type="button" onClick={() => (beside.value = null)}>
                      {say('plan.put_away')}
                    </button>
                  </>
                )}
                <button type="button" class="main-button" disabled={isRunning || problem !== null} onClick={begin}>
                  {say('plan.make')}
                </button>
              </p>
              {isRunning && <p class="hint">{say('plan.make_after')}</p>}
              <p class="hint">{say('plan.only_arithmetic')}</p>
            </>
          )}
        </div>
      </div>
    </div>
  );
}
