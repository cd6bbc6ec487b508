// Boards and probes with their live numbers, and which pan each probe is in.
import type { JSX } from 'preact';
import { settings, tell } from '../client/store.ts';
import type { Header, Now, PortView, ProbeView } from '../client/types.ts';
import { goTo } from '../shell/routes.ts';
import { temperature } from '../words/amounts.ts';
import { lengthOfTime } from '../words/clock.ts';
import { panName, probeWords } from '../words/pan-words.ts';
import { withChannel } from './channels.ts';
import { CheckDue } from './check-due.tsx';
import { HealthPanel } from './health-panel.tsx';
import { LearntPanel } from './learnt-panel.tsx';
import { MovedBoards } from './moved-boards.tsx';
import { PortFinder } from './port-finder.tsx';

const PORT_WORDS: Record<PortView['state'], string> = {
  open: 'Open',
  lost: 'Lost, trying again',
  waiting: 'Waiting for it',
};

function BoardRow({ port }: { port: PortView }): JSX.Element {
  return (
    <li class="port">
      <span>
        <b>{port.path ?? `Board ${port.id}`}</b> {port.state === 'open' ? '✓' : '▲'} {PORT_WORDS[port.state]}
        {port.why !== null && <span class="problem"> {port.why}</span>}
        <small>
          {' '}
          {port.lines} lines, {port.unreadable} that could not be read
        </small>
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
      'Probe moved.',
    );
    return;
  }
  if (pan === null) return;
  const next = withChannel(header.ports ?? [], header.probes ?? [], { ...view, key: view.id }, {});
  const pans = (header.pans ?? []).map((each) => (each.id === pan ? { ...each, probe: next.probe } : each));
  void tell({ set: { ports: next.ports, probes: next.probes, pans } }, 'Probe added.');
}

function PanChoice({ header, view }: { header: Header; view: ProbeView }): JSX.Element {
  return (
    <select
      aria-label={`Pan of ${view.channel}`}
      value={view.pan ?? ''}
      onChange={(event) => moveTo(header, view, event.currentTarget.value === '' ? null : event.currentTarget.value)}
    >
      <option value="">in no pan</option>
      {(header.pans ?? []).map((pan) => (
        <option key={pan.id} value={pan.id}>
          {panName(header, pan.id)}
        </option>
      ))}
    </select>
  );
}

function ProbeRow({ now, view }: { now: Now; view: ProbeView }): JSX.Element {
  const isLive = now.header !== null && !now.ended;
  return (
    <tr>
      <th scope="row">
        {view.channel}
        <small> on {view.port}</small>
      </th>
      <td class="probe-number">{view.celsius === null ? 'no value' : temperature(view.celsius, settings.value)}</td>
      <td>{probeWords(view.state)}</td>
      <td>{view.ageSeconds === null ? 'nothing heard yet' : `${lengthOfTime(view.ageSeconds)} old`}</td>
      <td>{isLive && now.header !== null ? <PanChoice header={now.header} view={view} /> : '–'}</td>
    </tr>
  );
}

export function ProbesView({ now }: { now: Now }): JSX.Element {
  const canListen = now.mode === 'idle' || now.ended;
  return (
    <div class="page">
      <h1>Probes</h1>
      <CheckDue />
      <p>
        <button type="button" class="main-button" onClick={() => goTo('probes', 'setup')}>
          Set probes up
        </button>
      </p>
      {now.ports.length > 0 && (
        <section class="panel">
          <h2>Boards in use</h2>
          {!canListen && <MovedBoards />}
          <ul>
            {now.ports.map((port) => (
              <BoardRow key={port.id} port={port} />
            ))}
          </ul>
        </section>
      )}
      <section class="panel">
        <h2>What they show</h2>
        {now.probes.length === 0 ? (
          <p>No probe is heard. {canListen ? 'Press “Listen” at a board below.' : ''}</p>
        ) : (
          <table class="probes">
            <thead>
              <tr>
                <th>Probe</th>
                <th>Shows</th>
                <th>State</th>
                <th>Age</th>
                <th>Pan</th>
              </tr>
            </thead>
            <tbody>
              {now.probes.map((view) => (
                <ProbeRow key={view.id} now={now} view={view} />
              ))}
            </tbody>
          </table>
        )}
        {canListen && now.probes.length > 0 && (
          <p>
            <button type="button" onClick={() => goTo('start')}>
              Start a boil with these
            </button>
          </p>
        )}
      </section>
      <HealthPanel now={now} />
      <LearntPanel now={now} />
      <section class="panel">
        <h2>{canListen ? 'Boards on this machine' : 'More boards on this machine'}</h2>
        <PortFinder
          inUse={canListen ? [] : now.ports.map((port) => port.path)}
          lost={canListen ? [] : now.ports.filter((port) => port.state === 'lost')}
        />
      </section>
    </div>
  );
}
