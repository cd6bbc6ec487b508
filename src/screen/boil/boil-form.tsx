// The form that starts a boil, and the same form that changes a running one: pans join, probes and finishes move.
import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { noteHeard } from '../alarms/sound-check.tsx';
import { ask, saps, settings, tell } from '../client/store.ts';
import type { KeptProbes, Now, ProbeView, Setup } from '../client/types.ts';
import { useRefusal } from '../shell/refusal.tsx';
import { language } from '../language/language.ts';
import { say } from '../language/say.ts';
import { channelsOf, heardProbes } from '../probes/channels.ts';
import { CheckDue } from '../probes/check-due.tsx';
import { calledProbe, kept } from '../probes/kept.ts';
import { PortFinder } from '../probes/port-finder.tsx';
import { goTo } from '../shell/routes.ts';
import { exactStrength, unitSymbols, volume } from '../words/amounts.ts';
import { anotherPan, boilDraft, calledIn, problemInDraft, setupOf } from './boil-draft.ts';
import type { BoilDraft, PanDraft } from './boil-draft.ts';
import { Cautions, SoundCheck } from './cautions.tsx';
import { giveByName, giveProbe, unwatched } from './give-probes.ts';
import { NumberInput } from './inputs.tsx';
import type { Standing } from './limit-fields.tsx';
import { PanFields } from './pan-fields.tsx';
import { plannedSetup } from './planned.ts';
import { withSap, withUsual } from './sap-usual.ts';

interface PanListProps {
  draft: BoilDraft;
  /** The boil that is changed; null for a new one. */
  now: Now | null;
  views: ProbeView[];
  set: (draft: BoilDraft) => void;
  /** A person chose the probe of this pan, or none. */
  chose: (pan: string) => void;
}

function PanList({ draft, now, views, set, chose }: PanListProps): JSX.Element {
  const channels = channelsOf(views, draft.probes, draft.ports);
  const replace = (old: PanDraft, next: PanDraft[]): void =>
    set({ ...draft, pans: draft.pans.flatMap((each) => (each === old ? next : [each])) });
  const standingOf = (id: string): Standing | null => {
    const reading = now?.readings.find((each) => each.pan === id);
    return now === null || reading === undefined ? null : { now, reading };
  };
  const shown = settings.value;
  return (
    <section class="panel" aria-label={say('boil.pans')}>
      <h2>{say('boil.pans')}</h2>
      {draft.pans.map((pan) => (
        <PanFields
          key={pan.before.id}
          pan={pan}
          channels={channels}
          standing={standingOf(pan.before.id)}
          chooseSap={(sap) => replace(pan, [now === null ? withSap(pan, sap, shown) : { ...pan, sap }])}
          change={(next) => replace(pan, [next])}
          chooseProbe={(key) => {
            chose(pan.before.id);
            set(giveProbe(draft, views, pan, key));
          }}
          remove={draft.pans.length > 1 ? () => replace(pan, []) : null}
        />
      ))}
      <button
        type="button"
        onClick={() =>
          set({ ...draft, pans: [...draft.pans, withUsual(anotherPan(draft.pans, shown, saps.value), shown)] })
        }
      >
        {say('boil.another_pan')}
      </button>
    </section>
  );
}

/** A form filled in with the boil that runs, or with the last boil's set-up as soon as the host has told it. */
function useDraft(
  now: Now,
  changing: boolean,
): { draft: BoilDraft; setDraft: (draft: BoilDraft) => void; chose: (pan: string) => void } {
  const fresh = (setup: Setup | null): BoilDraft => {
    const draft = boilDraft(setup, settings.value, saps.value);
    return { ...draft, pans: draft.pans.map((pan) => withUsual(pan, settings.value)) };
  };
  const [draft, setDraft] = useState(() =>
    changing ? boilDraft(now.header, settings.value, saps.value) : fresh(plannedSetup.value),
  );
  const isTouched = useRef(false);
  /** As the last boil was; the height may have been told while probes were set up. */
  async function begin(): Promise<void> {
    const [setup, { place }] = (await Promise.all([ask({ last_setup: true }), ask({ probes_kept: true })])) as [
      Setup | null,
      KeptProbes,
    ];
    // What somebody chose while that was asked is not written over.
    if (isTouched.current) return;
    const site = setup?.site?.altitude_m === undefined ? { altitude_m: place.altitude_m } : setup.site;
    setDraft(fresh({ ...setup, ...(site.altitude_m === undefined ? {} : { site }) }));
  }
  useEffect(() => {
    if (changing || plannedSetup.value !== null) return;
    void begin().catch(() => undefined); // An empty form serves as well.
  }, []);
  const change = (next: BoilDraft): void => {
    isTouched.current = true;
    setDraft(next);
  };
  const chose = useNamedProbes(draft, changing ? null : heardProbes(now), setDraft);
  return { draft, setDraft: change, chose };
}

/** Probes named after a pan of a new boil are given to it as soon as they are heard; what tells of a choice by hand. */
function useNamedProbes(
  draft: BoilDraft,
  views: ProbeView[] | null,
  set: (draft: BoilDraft) => void,
): (pan: string) => void {
  const chosen = useRef(new Set<string>());
  const heard = views?.flatMap(({ id, celsius }) => (celsius === null ? [] : [id])).join('\n');
  useEffect(() => {
    if (views === null) return;
    const next = giveByName(draft, views, chosen.current);
    if (next !== draft) set(next);
  }, [heard, kept.value, draft]);
  return (pan) => void chosen.current.add(pan);
}

/** Pans that nobody watches though probes are heard: a tired person takes "hearing T1, T2" for "they are watched". */
function Unwatched({ draft, views }: { draft: BoilDraft; views: ProbeView[] }): JSX.Element | null {
  const found = unwatched(draft, views);
  if (found === null) return null;
  const list = (names: string[]): string => new Intl.ListFormat(language.value, { type: 'conjunction' }).format(names);
  const pans = list(found.pans.map(calledIn));
  const free = found.free.map(calledProbe);
  return (
    <p class="check-due" role="status">
      ▲{' '}
      {free.length === 0
        ? say('boil.unwatched', { pans, count: found.pans.length })
        : say('boil.unwatched_free', { pans, count: found.pans.length, probes: list(free), free: free.length })}
    </p>
  );
}

/** What the plan that this boil begins from says of the sap: it stands in no field here. */
function FromPlan(): JSX.Element | null {
  const plan = plannedSetup.value?.plan;
  if (plan === undefined) return null;
  const amount = volume(plan.litres, settings.value);
  const words =
    plan.brix === undefined
      ? say('boil.from_plan', { amount })
      : say('boil.from_plan_at', { amount, strength: exactStrength(plan.brix, settings.value) });
  return (
    <p class="panel row">
      <span>{words}</span>
      <button type="button" onClick={() => (plannedSetup.value = null)}>
        {say('boil.without_plan')}
      </button>
    </p>
  );
}

export function BoilForm({ now, changing }: { now: Now; changing: boolean }): JSX.Element {
  const { draft, setDraft, chose } = useDraft(now, changing);
  const views = changing ? now.probes : heardProbes(now);
  const [heard, setHeard] = useState(false);
  const { refuse, sentence } = useRefusal();
  if (changing && now.header === null) return <p class="page">{say('boil.none_runs')}</p>;

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const wrong = problemInDraft(draft, settings.value);
    refuse(wrong);
    if (wrong !== null) return;
    const setup = setupOf(draft, settings.value, saps.value);
    const plan = changing ? undefined : plannedSetup.value?.plan;
    const done = await (changing
      ? tell({ set: { ...setup } }, say('boil.changed'))
      : tell(
          { start: { name: say('boil.unnamed'), ...setup, ...(plan === undefined ? {} : { plan }) } },
          say('boil.begun'),
        ));
    if (done && !changing && heard) await noteHeard('start');
    if (done && !changing) plannedSetup.value = null;
    if (done) goTo('pans');
  }

  return (
    <div class="page">
      <h1>{say(changing ? 'boil.change' : 'boil.start')}</h1>
      {!changing && <FromPlan />}
      {!changing && <Cautions />}
      {!changing && (
        <section class="panel" aria-label={say('boil.boards')}>
          <h2>{say('boil.boards')}</h2>
          <p class="hint">{say('boil.boards.text')}</p>
          <CheckDue />
          <PortFinder inUse={[]} />
        </section>
      )}
      <form onSubmit={(event) => void submit(event)} noValidate>
        <section class="panel" aria-label={say('boil.the_boil')}>
          <div class="fields">
            <label>
              <span>{say('boil.name')}</span>
              <input
                value={draft.name}
                maxLength={80}
                placeholder={say('boil.name_hint')}
                onInput={(event) => setDraft({ ...draft, name: event.currentTarget.value })}
              />
            </label>
            <NumberInput
              label={say('boil.height')}
              unit={unitSymbols(settings.value).height}
              value={draft.altitude}
              set={(altitude) => setDraft({ ...draft, altitude })}
            />
          </div>
          <p class="hint">{say('boil.height.text')}</p>
        </section>
        <PanList draft={draft} now={changing ? now : null} views={views} set={setDraft} chose={chose} />
        {!changing && <SoundCheck heard={heard} setHeard={setHeard} />}
        {sentence}
        <Unwatched draft={draft} views={views} />
        {!changing && !heard && <p class="hint">{say('boil.not_heard')}</p>}
        <p class="row">
          <button type="submit" class="main-button">
            {say(changing ? 'boil.save' : 'boil.start_it')}
          </button>
          <a class="button" href="#/pans">
            {say('boil.leave')}
          </a>
        </p>
      </form>
    </div>
  );
}
