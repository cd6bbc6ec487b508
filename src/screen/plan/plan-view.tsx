// The Plan screen: the sap that there is, the pans for it and when, and beside it what they give; while a boil runs, what is left of its plan.
import type { JSX } from 'preact';
import { useEffect, useMemo, useState } from 'preact/hooks';
import { DAY_MS, HOUR_MS, MINUTE_MS } from '../../core/quantities/time.ts';
import type { PlanView as Planned } from '../../protocol/plan-schema.ts';
import { doubtInDraft, setupOf } from '../boil/boil-draft.ts';
import { plannedSetup } from '../boil/planned.ts';
import { typedLit } from '../boil/lit.ts';
import { toldAltitude, withHeight } from '../boil/water-there.tsx';
import { typedBoil } from '../boil/typed-boil.ts';
import { ask, said, saps, sayDone, settings } from '../client/store.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import type { BoilListing, Now, Setup } from '../client/types.ts';
import { freeName } from '../boil/free-name.ts';
import { goTo } from '../shell/routes.ts';
import { timeOfDay } from '../words/clock.ts';
import { panName } from '../words/pan-words.ts';
import { boiledLitres } from '../words/plan-words.ts';
import { underWayWords } from '../words/under-way-words.ts';
import {
  FIRE_LIT_HOUR,
  planDraft,
  planDraftIn,
  problemInPlan,
  requestIn,
  requestOf,
  sizedBoil,
  unsizedWords,
  withFireLit,
} from './plan-draft.ts';
import type { PlanDraft, PlanProblem } from './plan-draft.ts';
import { PlanForm } from './plan-form.tsx';
import { MainFigures, PlanResults } from './plan-results.tsx';
import { kept, putBy, typed, useRecalled } from './put-by.ts';
import type { Typed } from './put-by.ts';

/** A plan, and what it was made of. */
type Made = Typed & { plan: Planned['plan'] };

/** A moment as a field of date and time has it: local, to the minute. */
const localMinute = (moment: Date): string =>
  new Date(moment.getTime() - moment.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);

/** The local date of the next morning on which a fire can still be lit in time: a boil is planned the evening before. */
function nextMorning(): string {
  const now = new Date();
  const day = now.getHours() < FIRE_LIT_HOUR ? now : new Date(now.getTime() + DAY_MS);
  return localMinute(day).slice(0, 10);
}

/** The minute that it is, as the field of the fire has it. */
function useMinute(): string {
  const [minute, setMinute] = useState(() => localMinute(new Date()));
  useEffect(() => {
    const timer = setInterval(() => setMinute(localMinute(new Date())), 5000);
    return () => clearInterval(timer);
  }, []);
  return minute;
}

/** The draft in the units shown; where nothing is typed yet, with the last boil's pans and the height that was told last, as soon as the host has said them. */
function useDraft(): PlanDraft | null {
  const [begun, setBegun] = useState<Typed | null>(null);
  const isRecalled = useRecalled();
  const isTyped = typed.value !== null;
  useEffect(() => {
    if (isTyped) return;
    const begin = (setup: Setup | null): void => {
      const units = settings.value;
      setBegun({ draft: planDraft(setup, units, saps.value, nextMorning()), units });
    };
    toldAltitude().then(
      ({ setup, altitudeM }) => begin(withHeight(setup, altitudeM)),
      () => begin(null),
    );
  }, [isTyped]);
  const shown = settings.value;
  const now = isRecalled ? (typed.value ?? begun) : null;
  const minute = useMinute();
  const draft = useMemo(() => (now === null ? null : planDraftIn(now.draft, now.units, shown)), [now, shown]);
  const lit = draft === null ? null : withFireLit(draft, minute);
  // The same draft as long as its fire does not move with the clock.
  return useMemo(() => lit, [draft, lit?.start]);
}

const FIVE_MINUTES_MS = 5 * MINUTE_MS;

/** A pause after which a field counts as typed, ms. */
const TYPING_MS = 700;

interface Answer {
  /** The last plan: the draft on the screen may have a key more than the one that it is of. */
  made: Made | null;
  problem: PlanProblem | null;
}

/** The host's answer to the draft as it stands; the last good one stays while there is none of what was typed since. */
function usePlan(current: PlanDraft | null): Answer {
  const [answer, setAnswer] = useState<Answer>({ made: null, problem: null });
  const shown = settings.value;
  useEffect(() => {
    if (current === null) return;
    const problem = problemInPlan(current, shown);
    if (problem !== null) {
      // Nobody is told that 4 is too little for a width while 400 is being typed.
      const timer = setTimeout(() => setAnswer(({ made }) => ({ made, problem })), TYPING_MS);
      return () => clearTimeout(timer);
    }
    let isLatest = true;
    const refused = (why: string): PlanProblem => ({ sentence: hostWords(why), isMissing: false });
    ask({ plan: requestOf(current, shown, saps.value) }).then(
      (data) =>
        isLatest && setAnswer({ made: { draft: current, units: shown, plan: (data as Planned).plan }, problem: null }),
      (error: Error) => isLatest && setAnswer(({ made }) => ({ made, problem: refused(error.message) })),
    );
    return () => void (isLatest = false);
  }, [current, shown]);
  return answer;
}

/** What the plan that was kept comes to, worked out anew: earlier boils may show more of its fires by now; null until it is. */
function useKept(): Planned['plan'] | null {
  const [answer, setAnswer] = useState<Made | null>(null);
  const [one, shown] = [kept.value, settings.value];
  useEffect(() => {
    if (one === null) return;
    let isLatest = true;
    ask({ plan: requestIn(one.draft, one.units, shown, saps.value) }).then(
      (data) => isLatest && setAnswer({ ...one, plan: (data as Planned).plan }),
      () => undefined, // A link that is down is said elsewhere.
    );
    return () => void (isLatest = false);
  }, [one, shown]);
  return answer?.draft === one?.draft ? (answer?.plan ?? null) : null;
}

/** Why there is no plan: quietly while something is still being typed, as an error once it is left wrong. */
function Problem({ problem, isTyping }: { problem: PlanProblem; isTyping: boolean }): JSX.Element {
  const isQuiet = problem.isMissing || isTyping;
  return (
    <p class={isQuiet ? 'panel plan-ask' : 'problem plan-problem'} role="status">
      {isQuiet ? '' : '✕ '}
      {problem.sentence}
    </p>
  );
}

/** The time of day at `at`, ms of boil time, to five minutes: a plan knows no more. */
function aboutClock(now: Now, at: number): string {
  const started = Date.parse(now.header?.started ?? '') || 0;
  return timeOfDay(now, Math.round((started + at) / FIVE_MINUTES_MS) * FIVE_MINUTES_MS - started);
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
  const { hours } = planned.under_way;
  const clocks = {
    seen: hours === null ? null : aboutClock(now, now.t + hours * HOUR_MS),
    made: planned.plan.hours === null ? null : aboutClock(now, planned.plan.hours * HOUR_MS),
  };
  const words = underWayWords(planned.under_way, (pan) => panName(now.header, pan), settings.value, clocks);
  return (
    <section class="panel plan-under-way" aria-label={say('plan.left')}>
      <h2>{say('plan.runs')}</h2>
      <p class="plan-main">{words.main}</p>
      <p>{words.range}</p>
      {words.made !== null && <p class="hint">{words.made}</p>}
    </section>
  );
}

export function PlanView({ now }: { now: Now }): JSX.Element {
  const current = useDraft();
  const { made, problem } = usePlan(current);
  const [isTyping, setTyping] = useState(false);
  const isKept = kept.value !== null;
  const ofKept = useKept();
  const isRunning = now.mode !== 'idle' && !now.ended;
  // What is planned for another day would tell other times beside those of the boil that runs.
  const isPlanned = isRunning && now.header !== null && 'plan' in now.header;
  if (current === null) return <p class="page">{say('plan.looking')}</p>;
  const doubt = problem === null && !isTyping ? doubtInDraft(current.boil, settings.value) : null;
  const set = (draft: PlanDraft): void => void putBy({ typed: { draft, units: settings.value } });

  const keptPlan = kept.value === null || ofKept === null ? null : { plan: ofKept, start: kept.value.draft.start };
  const unsized = current.litres === '' ? null : unsizedWords(current, made?.plan.hours ?? null);
  const results =
    made === null || current.litres === '' ? null : { plan: made.plan, start: made.draft.start, beside: keptPlan };

  async function keep({ draft, units }: Made): Promise<void> {
    const why = await putBy({ kept: { draft, units } });
    if (why === null) sayDone(say('plan.kept_now'));
    else said.value = { good: false, sentence: why };
  }

  /** What stood here is put beside in its place, so that nothing that was tried is lost. */
  function goBack(made: Made): void {
    putBy({ typed: kept.value, ...(problem === null ? { kept: made } : {}) });
  }

  function clear(): void {
    const before = typed.value;
    putBy({ typed: null });
    sayDone(say('plan.cleared'), () => {
      putBy({ typed: before });
      said.value = null;
    });
  }

  async function begin(): Promise<void> {
    const request = requestOf(current!, settings.value, saps.value);
    const setup = setupOf(sizedBoil(current!), settings.value, saps.value);
    // Asked anew: what is shown may still be of what stood there before the last key.
    const told =
      problemInPlan(current!, settings.value) === null ? await ask({ plan: request }).catch(() => null) : null;
    if (told === null) return; // Why not is said above.
    const boils = (await ask({ boils: true }).catch(() => [])) as BoilListing[];
    const name = freeName(
      setup.name ?? '',
      boils.map((boil) => boil.name),
    );
    // What has to be left for another day is no sap of this boil.
    const { stay } = (told as Planned).plan;
    const litres = stay === null ? request.litres : boiledLitres(stay, settings.value);
    // A pot that this batch does not need would stand there as one that still waits for it.
    const isUsed = ({ id }: { id: string }): boolean => (told as Planned).plan.end_unused?.pans.includes(id) !== true;
    plannedSetup.value = {
      ...setup,
      pans: (setup.pans ?? []).filter(isUsed),
      ...(name === '' ? {} : { name }),
      plan: { ...request, litres, pans: request.pans.filter(isUsed) },
    };
    typedBoil.value = typedLit.value = null;
    goTo('start');
  }

  const make = (
    <button
      type="button"
      class="main-button plan-make"
      disabled={isRunning || problem !== null}
      onClick={() => void begin()}
    >
      {say('plan.make')}
    </button>
  );
  const columns = (
    <div class="plan-columns">
      <form
        onSubmit={(event) => event.preventDefault()}
        onInput={() => setTyping(true)}
        onFocusOut={() => setTyping(false)}
        noValidate
      >
        <PlanForm current={current} set={set} />
        {typed.value !== null && (
          <button type="button" onClick={clear}>
            {say('plan.clear')}
          </button>
        )}
      </form>
      <section class="plan-side" aria-label={say('plan.expect')}>
        <div class="plan-top foot-bar">
          {problem !== null && <Problem problem={problem} isTyping={isTyping} />}
          {problem === null && unsized !== null && (
            <Problem problem={{ sentence: unsized, isMissing: true }} isTyping={isTyping} />
          )}
          {doubt !== null && (
            <p class="problem plan-problem" role="status">
              ▲ {doubt}
            </p>
          )}
          {results !== null && (
            <div class={problem === null ? 'panel' : 'panel plan-old'}>
              {problem !== null && <p>{say('plan.before_change')}</p>}
              <MainFigures {...results} />
              {make}
            </div>
          )}
        </div>
        {made !== null && results !== null && (
          <div class="plan-rest">
            <div class={problem === null ? '' : 'plan-old'}>
              {problem !== null && <p>{say('plan.before_change')}</p>}
              <PlanResults {...results} />
            </div>
            <p class="row plan-end">
              <button type="button" disabled={problem !== null} onClick={() => void keep(made)}>
                {say(isKept ? 'plan.keep_instead' : 'plan.keep')}
              </button>
              {isKept && (
                <>
                  <button type="button" onClick={() => goBack(made)}>
                    {say('plan.back_to_kept')}
                  </button>
                  <button type="button" onClick={() => putBy({ kept: null })}>
                    {say('plan.put_away')}
                  </button>
                </>
              )}
              {make}
            </p>
            {isRunning && <p class="hint">{say('plan.make_after')}</p>}
            <p class="hint">{say('plan.only_arithmetic')}</p>
          </div>
        )}
      </section>
    </div>
  );
  return (
    <div class="page plan-page">
      <h1>{say('plan.title')}</h1>
      {isRunning && <UnderWay now={now} />}
      {isPlanned ? (
        <details class="panel">
          <summary>{say('plan.another')}</summary>
          {columns}
        </details>
      ) : (
        columns
      )}
    </div>
  );
}
