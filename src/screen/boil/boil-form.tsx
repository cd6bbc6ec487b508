// The form that starts a boil, and the same form that changes a running one: pans join, probes and finishes move.
import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { noteHeard } from '../alarms/sound-check.tsx';
import { ask, saps, settings, tell } from '../client/store.ts';
import type { BoilListing, Now, ProbeView, Setup } from '../client/types.ts';
import { freeName } from './free-name.ts';
import { focusNewest } from '../shell/arrival.tsx';
import { useRefusal } from '../shell/refusal.tsx';
import { language } from '../language/language.ts';
import { say } from '../language/say.ts';
import { channelsOf, heardProbes } from '../probes/channels.ts';
import { CheckDue } from '../probes/check-due.tsx';
import { calledProbe, kept } from '../probes/kept.ts';
import { PortFinder } from '../probes/port-finder.tsx';
import { goTo } from '../shell/routes.ts';
import { metresOf, typedNumber, unitSymbols } from '../words/amounts.ts';
import { anotherPan, boilDraft, calledIn, doubtInDraft, problemInDraft, setupOf } from './boil-draft.ts';
import type { BoilDraft, PanDraft } from './boil-draft.ts';
import { Cautions, CautionsLine, SoundCheck } from './cautions.tsx';
import { FromPlan } from './from-plan.tsx';
import { giveByName, giveChosen, giveProbe, unwatched, withoutUnused } from './give-probes.ts';
import { NumberInput } from './inputs.tsx';
import type { Standing } from './limit-fields.tsx';
import { litOf, typedLit } from './lit.ts';
import { LitField } from './lit-field.tsx';
import { PanFields } from './pan-fields.tsx';
import { emptyPots, plannedSetup } from './planned.ts';
import { withSap, withUsual } from './sap-usual.ts';
import { laidOver, typedBoil, withChoice, withTyped } from './typed-boil.ts';
import { toldAltitude, WaterBoils, withHeight } from './water-there.tsx';

interface PanListProps {
  draft: BoilDraft;
  /** The boil that is changed; null for a new one. */
  now: Now | null;
  views: ProbeView[];
  set: (draft: BoilDraft) => void;
  choose: ChooseProbe;
}

/** A person chose the probe of a pan, or none. */
type ChooseProbe = (pan: PanDraft, key: string) => void;

function PanList({ draft, now, views, set, choose }: PanListProps): JSX.Element {
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
          chooseProbe={(key) => choose(pan, key)}
          remove={draft.pans.length > 1 ? () => replace(pan, []) : null}
        />
      ))}
      <button
        type="button"
        onClick={({ currentTarget }) => {
          set({ ...draft, pans: [...draft.pans, withUsual(anotherPan(draft.pans, shown, saps.value), shown)] });
          focusNewest(currentTarget.parentElement);
        }}
      >
        {say('boil.another_pan')}
      </button>
    </section>
  );
}

interface Form {
  draft: BoilDraft;
  setDraft: (draft: BoilDraft) => void;
  choose: ChooseProbe;
  /** Pans for which a probe was chosen that is not known any more. */
  lost: string[];
  clear: () => void;
}

/**
 * A form filled in with the boil that runs, or with the last boil's set-up as soon as the host has told it; over that
 * lies what a person typed before they looked away.
 */
function useDraft(now: Now, changing: boolean): Form {
  const views = changing ? now.probes : heardProbes(now);
  const fresh = (setup: Setup | null): BoilDraft => {
    const draft = boilDraft(setup, settings.value, saps.value);
    return { ...draft, pans: draft.pans.map((pan) => withUsual(pan, settings.value)) };
  };
  const told = useRef<BoilDraft | null>(null);
  const [lost, setLost] = useState<string[]>([]);
  const lookedAt = useRef(views);
  lookedAt.current = views;
  /** With what was typed over it, as it now stands: also what was typed while the host was asked. */
  function filledIn(from: BoilDraft): BoilDraft {
    told.current = from;
    const typed = typedBoil.value;
    if (changing || typed === null) return from;
    const given = giveChosen(laidOver(from, typed, settings.value), lookedAt.current, typed.probes);
    if (given.lost.length > 0) {
      typedBoil.value = { ...typed, probes: given.known };
      setLost(given.lost); // It stays said when the host's answer fills the form in once more.
    }
    return given.draft;
  }
  const [draft, setDraft] = useState(() =>
    changing ? filledIn(boilDraft(now.header, settings.value, saps.value)) : filledIn(fresh(plannedSetup.value)),
  );
  /** As the last boil was; the height may have been told while probes were set up. */
  async function begin(): Promise<void> {
    const [{ setup, altitudeM }, boils] = await Promise.all([
      toldAltitude(),
      ask({ boils: true }) as Promise<BoilListing[]>,
    ]);
    const name = freeName(
      setup?.name ?? '',
      boils.map((boil) => boil.name),
    );
    setDraft(filledIn(fresh({ ...withHeight(setup, altitudeM), ...(name === '' ? {} : { name }) })));
  }
  useEffect(() => {
    if (changing || plannedSetup.value !== null) return;
    void begin().catch(() => undefined); // An empty form serves as well.
  }, []);
  const change = (next: BoilDraft): void => {
    if (!changing) typedBoil.value = withTyped(typedBoil.value, draft, next, settings.value);
    setDraft(next);
  };
  function choose(pan: PanDraft, key: string): void {
    const channel = channelsOf(views, draft.probes, draft.ports).find((each) => each.key === key);
    const choice = channel === undefined ? null : { path: channel.path, channel: channel.channel };
    const { id } = pan.before;
    if (!changing && key !== 'many') typedBoil.value = withChoice(typedBoil.value, draft, settings.value, [id, choice]);
    setLost([]);
    setDraft(withoutUnused(giveProbe(draft, views, pan, key), told.current));
  }
  function clear(): void {
    typedBoil.value = typedLit.value = null;
    setLost([]);
    setDraft(told.current ?? fresh(null));
  }
  useNamedProbes(draft, changing ? null : views, setDraft);
  return { draft, setDraft: change, choose, lost, clear };
}

/** Probes named after a pan of a new boil are given to it as soon as they are heard, unless a person chose for it. */
function useNamedProbes(draft: BoilDraft, views: ProbeView[] | null, set: (draft: BoilDraft) => void): void {
  const heard = views?.flatMap(({ id, celsius }) => (celsius === null ? [] : [id])).join('\n');
  useEffect(() => {
    if (views === null) return;
    const next = giveByName(draft, views, new Set(Object.keys(typedBoil.value?.probes ?? {})));
    if (next !== draft) set(next);
  }, [heard, kept.value, draft]);
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

/** Where the boil is: what water boils at there. */
function PlaceFields({ draft, setDraft }: Pick<Form, 'draft' | 'setDraft'>): JSX.Element {
  const typed = typedNumber(draft.altitude);
  return (
    <section class="panel" aria-label={say('boil.place')}>
      <h2>{say('boil.place')}</h2>
      <div class="fields">
        <NumberInput
          label={say('boil.height')}
          unit={unitSymbols(settings.value).height}
          value={draft.altitude}
          set={(altitude) => setDraft({ ...draft, altitude })}
        />
      </div>
      <WaterBoils altitudeM={typed === null ? undefined : metresOf(typed, settings.value)} />
      <p class="hint">{say('boil.height.text')}</p>
    </section>
  );
}

const FORM = 'boil-form';

export function BoilForm({ now, changing }: { now: Now; changing: boolean }): JSX.Element {
  const { draft, setDraft, choose, lost, clear } = useDraft(now, changing);
  const views = changing ? now.probes : heardProbes(now);
  const [heard, setHeard] = useState(false);
  const { refuse, sentence } = useRefusal();
  // What was asked about already.
  const [asked, setAsked] = useState<string | null>(null);
  const button = changing ? 'boil.save' : 'boil.start_it';
  if (changing && now.header === null) return <p class="page">{say('boil.none_runs')}</p>;
  const lit = litOf(changing ? null : typedLit.value, now);
  const wrong = problemInDraft(draft, settings.value) ?? ('wrong' in lit ? lit.wrong : null);

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const doubt = wrong === null ? doubtInDraft(draft, settings.value) : null;
    const isNew = doubt !== null && doubt !== asked;
    setAsked(doubt);
    refuse(wrong ?? (isNew ? `${doubt} ${say('boil.doubt.again', { button: say(button) })}` : null));
    if (wrong !== null || isNew) return;
    const view = location.hash;
    const setup = setupOf(draft, settings.value, saps.value);
    const plan = changing ? undefined : plannedSetup.value?.plan;
    const done = await (changing
      ? tell({ set: { ...setup } }, say('boil.changed'))
      : tell(
          { start: { name: say('boil.unnamed'), ...setup, ...(plan === undefined ? {} : { plan }) }, ...lit },
          say('boil.begun'),
        ));
    if (done && plan?.pressure !== undefined)
      await tell({ mark: { kind: 'pressure', ...plan.pressure } }, say('boil.begun'));
    const empty = done && plan !== undefined ? emptyPots(plan) : [];
    for (const { id } of empty.filter((one) => setup.pans?.some((pan) => pan.id === one.id)))
      await tell({ mark: { kind: 'depth', pan: id, mm: 0 } }, say('boil.begun'));
    if (done && !changing && heard) await noteHeard('start');
    if (done && !changing) plannedSetup.value = typedBoil.value = typedLit.value = null;
    // Somebody who went to another view meanwhile stays there.
    if (done && location.hash === view) goTo('pans');
  }

  return (
    <div class="page">
      <h1>{say(changing ? 'boil.change' : 'boil.start')}</h1>
      {!changing && <CautionsLine />}
      {!changing && <FromPlan />}
      <form id={FORM} onSubmit={(event) => void submit(event)} noValidate>
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
            {!changing && <LitField now={now} />}
          </div>
          {!changing && typedLit.value !== null && <p class="hint">{say('boil.lit.text')}</p>}
        </section>
        <PanList draft={draft} now={changing ? now : null} views={views} set={setDraft} choose={choose} />
      </form>
      {!changing && (
        <section class="panel" aria-label={say('boil.boards')}>
          <h2>{say('boil.boards')}</h2>
          <p class="hint">{say('boil.boards.text')}</p>
          <CheckDue />
          <PortFinder inUse={[]} />
        </section>
      )}
      <PlaceFields draft={draft} setDraft={setDraft} />
      {!changing && <Cautions />}
      {!changing && <SoundCheck heard={heard} setHeard={setHeard} />}
      <div class={changing ? '' : 'start-bar foot-bar'}>
        <div class="start-wants">
          {wrong === null ? asked !== null && sentence : (sentence ?? <p class="hint">{wrong}</p>)}
          {lost.map((pan) => (
            <p key={pan} class="check-due" role="status">
              ▲ {say('boil.probe_gone', { pan })}
            </p>
          ))}
          <Unwatched draft={draft} views={views} />
          {!changing && !heard && <p class="hint">{say('boil.not_heard')}</p>}
        </div>
        <p class="row">
          <button type="submit" form={FORM} class="main-button">
            {say(button)}
          </button>
          <a class="button" href="#/pans" onClick={() => void (changing || (typedBoil.value = typedLit.value = null))}>
            {say('boil.leave')}
          </a>
          {!changing && (typedBoil.value !== null || typedLit.value !== null) && (
            <button type="button" onClick={clear}>
              {say('boil.clear')}
            </button>
          )}
        </p>
      </div>
    </div>
  );
}
