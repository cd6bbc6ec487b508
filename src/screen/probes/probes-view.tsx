// Boards and probes with their live numbers, and which pan each probe is in.
import { lengthOfTime } from '../../core/quantities/time.ts';
import type { JSX } from 'preact';
import { boardCalled } from '../../protocol/boards.ts';
import { settings, tell } from '../client/store.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import type { Header, Now, PortView, ProbeView } from '../client/types.ts';
import { goTo } from '../shell/routes.ts';
import { temperature } from '../words/amounts.ts';
import { panName, probeStateWords } from '../words/pan-words.ts';
import { heardProbes, withChannel } from './channels.ts';
import { CheckDue } from './check-due.tsx';
import { boardNameAt, calledProbe, pathOf, putRight } from './kept.ts';
import { heardPorts } from './listening.ts';
import { HealthPanel } from './health-panel.tsx';
import { LearntPanel } from './learnt-panel.tsx';
import { MovedBoards } from './moved-boards.tsx';
import { PortFinder } from './port-finder.tsx';

/** Only what sent something once can be lost. */
function portWords({ state, lines }: PortView): MessageKey {
  if (state === 'open') return 'probes.port.open';
  if (state === 'waiting') return 'probes.port.waiting';
  return lines === 0 ? 'probes.port.not_seen' : 'probes.port.lost';
}

/** Outside of a boil the list of boards beneath says why a port is not to be had. */
function BoardRow({
  header,
  port,
  isInBoil,
}: {
  header: Header | null;
  port: PortView;
  isInBoil: boolean;
}): JSX.Element {
  const called = port.id === port.path ? boardNameAt(port.path) : boardCalled(header, port.id);
  return (
    <li class="port">
      <span>
        <b>{called}</b> {port.path !== null && say('probes.on_port', { port: port.path })}{' '}
        {port.state === 'open' ? '✓' : '▲'} {say(portWords(port))}
        {isInBoil && port.why !== null && <span class="problem"> {hostWords(port.why)}</span>}
        {port.lines > 0 && <small> {say('probes.lines', { lines: port.lines, unreadable: port.unreadable })}</small>}
      </span>
    </li>
  );
}

/** Gives a channel to a pan: a mark for a probe of the boil, a changed header for a channel that has no probe yet. */
function moveTo(header: Header, view: ProbeView, pan: string | null): void {
  const isProbe = (header.probes ?? []).some((probe) => probe.id === view.id);
  if (isProbe) {
    void tell(
      { mark: { kind: 'move-probe', probe: view.id, pan, id: `screen-${crypto.randomUUID()}` } },
      say('probes.probe_moved'),
    );
    return;
  }
  if (pan === null) return;
  const next = withChannel(header.ports ?? [], header.probes ?? [], { ...view, key: view.id }, {});
  const pans = (header.pans ?? []).map((each) => (each.id === pan ? { ...each, probe: next.probe } : each));
  void tell({ set: { ports: next.ports, probes: next.probes, pans } }, say('probes.probe_added'));
}

function PanChoice({ header, view }: { header: Header; view: ProbeView }): JSX.Element {
  return (
    <select
      aria-label={say('probes.pan_of', { channel: view.channel })}
      value={view.pan ?? ''}
      onChange={(event) => moveTo(header, view, event.currentTarget.value === '' ? null : event.currentTarget.value)}
    >
      <option value="">{say('probes.in_no_pan')}</option>
      {(header.pans ?? []).map((pan) => (
        <option key={pan.id} value={pan.id}>
          {panName(header, pan.id)}
        </option>
      ))}
    </select>
  );
}

/** The number that every view shows, and beneath it the bare one where the two are not the same. */
function Shows({ view, path }: { view: ProbeView; path: string }): JSX.Element {
  const right = putRight(view, { path, channel: view.channel });
  if (view.celsius === null || right === null) return <>{say('probes.no_value')}</>;
  const [bare, shown] = [view.celsius, right].map((celsius) => temperature(celsius, settings.value));
  return (
    <>
      {shown}
      {bare !== shown && <small class="as-it-comes">{say('probes.as_it_comes', { shown: bare ?? '' })}</small>}
    </>
  );
}

function ProbeRow({ now, view }: { now: Now; view: ProbeView }): JSX.Element {
  const isLive = now.header !== null && !now.ended;
  const path = pathOf(now, view.port);
  return (
    <tr>
      <th scope="row">
        {calledProbe({ path, channel: view.channel })}
        <small> {say('probes.on_port', { port: path })}</small>
      </th>
      <td class="probe-number">
        <Shows view={view} path={path} />
      </td>
      <td>{probeStateWords(view)}</td>
      <td>
        {view.ageSeconds === null
          ? say('probes.nothing_heard')
          : say('probes.old', { length: lengthOfTime(view.ageSeconds) })}
      </td>
      <td>{isLive && now.header !== null ? <PanChoice header={now.header} view={view} /> : '–'}</td>
    </tr>
  );
}

export function ProbesView({ now }: { now: Now }): JSX.Element {
  const canListen = now.mode === 'idle' || now.ended;
  // What an ended boil heard last is nothing that its boards show now.
  const probes = canListen ? heardProbes(now) : now.probes;
  const ports = canListen ? heardPorts(now) : now.ports;
  return (
    <div class="page">
      <h1>{say('probes.title')}</h1>
      <CheckDue />
      <p>
        <button type="button" class="main-button" onClick={() => goTo('probes', 'setup')}>
          {say('probes.set_up')}
        </button>
      </p>
      {canListen && probes.length === 0 && <p class="hint">{say('probes.set_up.text')}</p>}
      {ports.length > 0 && (
        <section class="panel">
          <h2>{say('probes.boards_in_use')}</h2>
          {!canListen && <MovedBoards />}
          <ul>
            {ports.map((port) => (
              <BoardRow key={port.id} header={now.header} port={port} isInBoil={!canListen} />
            ))}
          </ul>
        </section>
      )}
      <section class="panel">
        <h2>{say('probes.what_they_show')}</h2>
        {probes.length === 0 ? (
          <p>{say('probes.none_heard', { listen: !canListen ? 'no' : ports.length > 0 ? 'listening' : 'yes' })}</p>
        ) : (
          <table class="probes">
            <thead>
              <tr>
                <th>{say('probes.column.probe')}</th>
                <th>{say('probes.column.shows')}</th>
                <th>{say('probes.column.state')}</th>
                <th>{say('probes.column.age')}</th>
                <th>{say('probes.column.pan')}</th>
              </tr>
            </thead>
            <tbody>
              {probes.map((view) => (
                <ProbeRow key={view.id} now={now} view={view} />
              ))}
            </tbody>
          </table>
        )}
        {canListen && probes.length > 0 && (
          <p class="row">
            <button type="button" onClick={() => goTo('start')}>
              {say('probes.start_with_these')}
            </button>
          </p>
        )}
      </section>
      <HealthPanel now={now} />
      <LearntPanel now={now} />
      <section class="panel">
        <h2>{say(canListen ? 'probes.boards_here' : 'probes.more_boards_here')}</h2>
        <PortFinder
          inUse={canListen ? [] : now.ports.map((port) => port.path)}
          lost={canListen ? [] : now.ports.filter((port) => port.state === 'lost')}
        />
      </section>
    </div>
  );
}
