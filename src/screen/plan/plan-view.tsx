// The Plan screen: the sap that there is, the pans for it and when, and beside it what they give; while a boil runs, what is left of its plan.
import type { JSX } from 'preact';
import { signal } from '@preact/signals';
import { useEffect, useState } from 'preact/hooks';
import type { PlanView as Planned } from '../../protocol/plan-schema.ts';
import { anotherPan, setupOf } from '../boil/boil-draft.ts';
import type { PanDraft } from '../boil/boil-draft.ts';
import { NumberInput, Select, saidOptions } from '../boil/inputs.tsx';
import { plannedSetup } from '../boil/planned.ts';
import { SapFields } from '../boil/sap-fields.tsx';
import { withSap } from '../boil/sap-usual.ts';
import { ask, saps, settings } from '../client/store.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import type { Now, Setup } from '../client/types.ts';
import { goTo } from '../shell/routes.ts';
import { unitSymbols } from '../words/amounts.ts';
import { underWayWords } from '../words/plan-words.ts';
import { planDraft, problemInPlan, requestOf } from './plan-draft.ts';
import type { PlanDraft } from './plan-draft.ts';
import { PlanPanFields } from './plan-pan-fields.tsx';
import { PlanResults } from './plan-results.tsx';

/** What was typed stays while other screens are looked at; null until the screen was opened. */
const draft = signal<PlanDraft | null>(null);

const WHERE: readonly (readonly [PlanDraft['pressureAt'], MessageKey])[] = [
  ['sea-level', 'plan.from_weather_page'],
  ['altimeter', 'plan.from_airfield'],
  ['station', 'plan.from_barometer'],
];

function localToday(): string {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
}

/** The draft, begun from the last boil's pans as soon as the host has told them. */
function useDraft(): PlanDraft | null {
  useEffect(() => {
    if (draft.value !== null) return;
    const begin = (setup: Setup | null): void => {
      draft.value ??= planDraft(setup, settings.value, saps.value, localToday());
    };
    ask({ last_setup: true }).then(
      (setup) => begin(setup as Setup | null),
      () => begin(null),
    );
  }, []);
  return draft.value;
}

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
      setAnswer(({ plan }) => ({ plan, problem }));
      return;
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

interface FormProps {
  current: PlanDraft;
  set: (next: PlanDraft) => void;
}

function SapForm({ current, set }: FormProps): JSX.Element {
  const shown = settings.value;
  const units = unitSymbols(shown);
  const [first] = current.boil.pans;
  const setAll = (change: (pan: PanDraft) => PanDraft): void =>
    set({ ...current, boil: { ...current.boil, pans: current.boil.pans.map(change) } });
  return (
    <section class="panel" aria-label={say('plan.sap')}>
      <h2>{say('plan.sap')}</h2>
      <div class="fields">
        <NumberInput
          label={say('plan.how_much')}
          unit={units.volume}
          value={current.litres}
          set={(litres) => set({ ...current, litres })}
        />
        {first !== undefined && <SapFields sap={first.sap} set={(sap) => setAll((pan) => withSap(pan, sap, shown))} />}
        <NumberInput
          label={say('plan.how_strong')}
          unit={units.strength}
          hint={say('plan.usual')}
          value={current.strength}
          set={(strength) => set({ ...current, strength })}
        />
        <NumberInput
          label={say('plan.how_warm')}
          unit={units.temperature}
          hint={shown.temperature === 'C' ? '5' : '41'}
          value={current.celsius}
          set={(celsius) => set({ ...current, celsius })}
        />
        {first !== undefined && (
          <NumberInput
            label={say('plan.finish_if')}
            unit={units.strength}
            hint={say('plan.usual')}
            value={first.finish === 'strength' ? first.finishAt : ''}
            set={(finishAt) =>
              setAll((pan) => ({ ...pan, finish: finishAt.trim() === '' ? 'usual' : 'strength', finishAt }))
            }
          />
        )}
      </div>
    </section>
  );
}

function DayForm({ current, set }: FormProps): JSX.Element {
  const units = unitSymbols(settings.value);
  return (
    <section class="panel" aria-label={say('plan.day')}>
      <h2>{say('plan.day')}</h2>
      <div class="fields">
        <label>
          <span>{say('plan.fire_lit')}</span>
          <input
            type="datetime-local"
            value={current.start}
            onInput={(event) => set({ ...current, start: event.currentTarget.value })}
          />
        </label>
        <label>
          <span>{say('plan.leave')}</span>
          <input
            type="datetime-local"
            value={current.until}
            onInput={(event) => set({ ...current, until: event.currentTarget.value })}
          />
        </label>
        <NumberInput
          label={say('plan.height')}
          unit={units.height}
          value={current.boil.altitude}
          set={(altitude) => set({ ...current, boil: { ...current.boil, altitude } })}
        />
        <NumberInput
          label={say('plan.pressure')}
          unit={units.pressure}
          hint={say('plan.usual')}
          value={current.pressure}
          set={(pressure) => set({ ...current, pressure })}
        />
        {current.pressure !== '' && (
          <Select
            label={say('plan.figure_is')}
            value={current.pressureAt}
            options={saidOptions(WHERE)}
            set={(pressureAt) => set({ ...current, pressureAt })}
          />
        )}
      </div>
    </section>
  );
}

function PansForm({ current, set }: FormProps): JSX.Element {
  const { boil } = current;
  const setPans = (pans: PanDraft[]): void => set({ ...current, boil: { ...boil, pans } });
  const replace = (old: PanDraft, next: PanDraft[]): void =>
    setPans(boil.pans.flatMap((each) => (each === old ? next : [each])));
  return (
    <section class="panel" aria-label={say('plan.pans')}>
      <h2>{say('plan.pans')}</h2>
      {boil.pans.map((pan) => (
        <PlanPanFields
          key={pan.before.id}
          pan={pan}
          change={(next) => replace(pan, [next])}
          remove={boil.pans.length > 1 ? () => replace(pan, []) : null}
        />
      ))}
      <button type="button" onClick={() => setPans([...boil.pans, anotherPan(boil.pans, settings.value, saps.value)])}>
        {say('boil.another_pan')}
      </button>
    </section>
  );
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
  const [beside, setBeside] = useState<Planned['plan'] | null>(null);
  const isRunning = now.mode !== 'idle' && !now.ended;
  if (current === null) return <p class="page">{say('plan.looking')}</p>;
  const set = (next: PlanDraft): void => void (draft.value = next);

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
          <SapForm current={current} set={set} />
          <DayForm current={current} set={set} />
          <PansForm current={current} set={set} />
        </form>
        <div>
          {problem !== null && (
            <p class={current.litres === '' ? 'panel plan-ask' : 'problem'} role="status">
              {current.litres === '' ? '' : '✕ '}
              {problem}
            </p>
          )}
          {plan !== null && current.litres !== '' && (
            <>
              <PlanResults plan={plan} start={current.start} beside={beside} />
              <p class="row">
                <button type="button" onClick={() => setBeside(plan)}>
                  {say('plan.keep')}
                </button>
                {beside !== null && (
                  <button type="button" onClick={() => setBeside(null)}>
                    {say('plan.put_away')}
                  </button>
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
