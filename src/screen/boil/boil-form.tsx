// The form that starts a boil, and the same form that changes a running one: pans join, probes and finishes move.
import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { noteHeard } from '../alarms/sound-check.tsx';
import { ask, saps, settings, tell } from '../client/store.ts';
import type { KeptProbe, KeptProbes, Now, PortFormat, ProbeView, Sensor, Setup } from '../client/types.ts';
import { say } from '../language/say.ts';
import { channelsOf, heardProbes, withChannel } from '../probes/channels.ts';
import type { Channel } from '../probes/channels.ts';
import { CheckDue } from '../probes/check-due.tsx';
import { deviceAt, keptAt } from '../probes/kept.ts';
import { listened } from '../probes/listening.ts';
import { PortFinder } from '../probes/port-finder.tsx';
import { goTo } from '../shell/routes.ts';
import { unitSymbols } from '../words/amounts.ts';
import { anotherPan, boilDraft, isUsualName, problemInDraft, setupOf } from './boil-draft.ts';
import type { BoilDraft, PanDraft } from './boil-draft.ts';
import { Cautions, SoundCheck } from './cautions.tsx';
import { NumberInput } from './inputs.tsx';
import type { Standing } from './limit-fields.tsx';
import { PanFields } from './pan-fields.tsx';
import { plannedSetup } from './planned.ts';
import { withSap, withUsual } from './sap-usual.ts';

const keptOf = ({ port, channel }: Channel): KeptProbe | undefined =>
  keptAt(port).find((one) => one.channel === channel);

/** What setting probes up found of a channel and its board, so that nobody has to say it again. */
function toldOf(channel: Channel): Parameters<typeof withChannel>[3] {
  const heard = listened.value.find((each) => each.path === channel.port);
  const sensor = (heard?.sensors?.[channel.channel] as Sensor | undefined) ?? keptOf(channel)?.sensor;
  return {
    baud: typeof heard?.baud === 'number' ? heard.baud : undefined,
    device: deviceAt(channel.port),
    sensor,
  };
}

/** The draft with the pan's probe set to a channel; a channel that is new to the boil joins its probes. */
function giveProbe(draft: BoilDraft, views: ProbeView[], pan: PanDraft, key: string): BoilDraft {
  const channel = channelsOf(views, draft.probes, draft.ports).find((each) => each.key === key);
  const next = channel === undefined ? null : withChannel(draft.ports, draft.probes, channel, toldOf(channel));
  const name = channel === undefined ? '' : (keptOf(channel)?.name ?? '');
  const named = name !== '' && isUsualName(pan.name) ? { ...pan, name } : pan;
  const pans = draft.pans.map((each) => (each === pan ? { ...named, probe: next?.probe ?? key } : each));
  if (next === null) return { ...draft, pans };
  return { ...draft, ports: withFormats(next.ports), probes: next.probes, pans };
}

/** A board whose lines were confirmed is read in the same way in the boil. */
function withFormats(ports: BoilDraft['ports']): BoilDraft['ports'] {
  return ports.map((port) => {
    const format = listened.value.find(({ path }) => path === port.path)?.format;
    return port.format !== undefined || format === undefined ? port : { ...port, format: format as PortFormat };
  });
}

interface PanListProps {
  draft: BoilDraft;
  /** The boil that is changed; null for a new one. */
  now: Now | null;
  views: ProbeView[];
  set: (draft: BoilDraft) => void;
}

function PanList({ draft, now, views, set }: PanListProps): JSX.Element {
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
          chooseProbe={(key) => set(giveProbe(draft, views, pan, key))}
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
function useDraft(now: Now, changing: boolean): [BoilDraft, (draft: BoilDraft) => void] {
  const fresh = (setup: Setup | null): BoilDraft => {
    const draft = boilDraft(setup, settings.value, saps.value);
    return { ...draft, pans: draft.pans.map((pan) => withUsual(pan, settings.value)) };
  };
  const [draft, setDraft] = useState(() =>
    changing ? boilDraft(now.header, settings.value, saps.value) : fresh(null),
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
    if (changing) return;
    if (plannedSetup.value !== null) return setDraft(fresh(plannedSetup.value));
    void begin().catch(() => undefined); // An empty form serves as well.
  }, []);
  const change = (next: BoilDraft): void => {
    isTouched.current = true;
    setDraft(next);
  };
  return [draft, change];
}

export function BoilForm({ now, changing }: { now: Now; changing: boolean }): JSX.Element {
  const [draft, setDraft] = useDraft(now, changing);
  const [heard, setHeard] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  if (changing && now.header === null) return <p class="page">{say('boil.none_runs')}</p>;

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    const wrong = problemInDraft(draft, settings.value);
    setProblem(wrong);
    if (wrong !== null) return;
    const setup = setupOf(draft, settings.value, saps.value);
    const plan = changing ? undefined : plannedSetup.value?.plan;
    const done = await (changing
      ? tell({ set: { ...setup } }, say('boil.changed'))
      : tell({ start: { ...setup, ...(plan === undefined ? {} : { plan }) } }, say('boil.begun')));
    if (done && !changing && heard) await noteHeard('start');
    if (done && !changing) plannedSetup.value = null;
    if (done) goTo('pans');
  }

  return (
    <div class="page">
      <h1>{say(changing ? 'boil.change' : 'boil.start')}</h1>
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
        <PanList
          draft={draft}
          now={changing ? now : null}
          views={changing ? now.probes : heardProbes(now)}
          set={setDraft}
        />
        {!changing && <SoundCheck heard={heard} setHeard={setHeard} />}
        {problem !== null && (
          <p class="problem" role="alert">
            ✕ {problem}
          </p>
        )}
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
