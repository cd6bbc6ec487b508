// The list of boards that are plugged in, with a place to type a path that the machine does not list.
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { boardCalled } from '../../protocol/boards.ts';
import { live } from '../client/store.ts';
import { say } from '../language/say.ts';
import type { PortListing, PortView } from '../client/types.ts';
import { typedNumber } from '../words/amounts.ts';
import { portAt, portNews } from '../words/port-words.ts';
import { recallProbes, sensorsAt } from './kept.ts';
import { findPorts, heardPorts, listed, listened, readAt, startListening, stopListening } from './listening.ts';
import { OwnPorts, partPorts } from './own-ports.tsx';
import { boardWords } from '../words/setup-words.ts';

/** Listened to as it was once confirmed, so that nobody has to say it again. */
const startKnown = (path: string, known: PortListing['known']): Promise<void> =>
  startListening({
    path,
    ...(typeof known?.baud === 'number' ? { baud: known.baud } : {}),
    ...(known !== null && known.format !== null ? { format: known.format } : {}),
    sensors: sensorsAt(path),
  });

/** Listening is started and stopped by one press. */
function ListenButton({ path, known = null }: { path: string; known?: PortListing['known'] }): JSX.Element {
  const isOn = listened.value.some((each) => each.path === path);
  return (
    <button
      type="button"
      aria-pressed={isOn}
      onClick={() => void (isOn ? stopListening(path) : startKnown(path, known))}
    >
      {say(isOn ? 'probes.stop_listening' : 'probes.listen')}
    </button>
  );
}

const MARK_OF = { opening: '…', lost: '✕', silent: '▲', hearing: '✓' } as const;

/** What is heard of a port that is listened to. */
function News({ path }: { path: string }): JSX.Element | null {
  const now = live.value;
  if (now === null || !listened.value.some((each) => each.path === path)) return null;
  const news = portNews(portAt(heardPorts(now), path), now.probes);
  return (
    <span class={`port-news port-${news.state}`} role="status">
      {MARK_OF[news.state]} {news.sentence}
    </span>
  );
}

/** A board of the boil that is gone may be here, under a name that tells nothing of it: the person says so. */
function UseButton({ path, lost }: { path: string; lost: PortView }): JSX.Element {
  return (
    <button type="button" onClick={() => readAt(lost.id, path)}>
      {say('probes.this_is_board', { port: boardCalled(live.value?.header ?? null, lost.id) })}
    </button>
  );
}

function ListedPort({
  port,
  isInUse,
  lost,
}: {
  port: PortListing;
  isInUse: boolean;
  lost: readonly PortView[];
}): JSX.Element {
  return (
    <li class="port">
      <span>
        <b>{port.path}</b> {boardWords(port)}
      </span>
      {isInUse && <span>{say('probes.in_use')}</span>}
      {!isInUse && lost.length === 0 && <ListenButton path={port.path} known={port.known} />}
      {!isInUse && lost.map((one) => <UseButton key={one.id} path={port.path} lost={one} />)}
      {!isInUse && <News path={port.path} />}
    </li>
  );
}

function TypedPort(): JSX.Element {
  const [path, setPath] = useState('');
  const [baud, setBaud] = useState('9600');
  const speed = typedNumber(baud);
  const isSpeed = speed !== null && Number.isInteger(speed) && speed > 0;
  const add = (event: Event): void => {
    event.preventDefault();
    if (path.trim() === '' || !isSpeed) return;
    void startListening({ path: path.trim(), baud: speed, sensors: sensorsAt(path.trim()) });
    setPath('');
  };
  return (
    <form class="typed typed-port" onSubmit={add}>
      <label>
        <span>{say('probes.not_in_list')}</span>
        <input
          class="wide"
          value={path}
          placeholder={say('probes.path_hint')}
          onInput={(event) => setPath(event.currentTarget.value)}
        />
      </label>
      <label>
        <span>{say('probes.speed')}</span>
        <input
          class="number"
          inputMode="numeric"
          value={baud}
          onInput={(event) => setBaud(event.currentTarget.value)}
        />
      </label>
      <button type="submit" disabled={path.trim() === '' || !isSpeed}>
        {say('probes.listen')}
      </button>
      {!isSpeed && (
        <p class="problem" role="status">
          ✕ {say('probes.speed_wrong')}
        </p>
      )}
    </form>
  );
}

/** `inUse` are the paths that the running boil holds open, `lost` its boards that are gone. */
export function PortFinder({
  inUse,
  lost = [],
}: {
  inUse: readonly (string | null)[];
  lost?: readonly PortView[];
}): JSX.Element {
  useEffect(() => {
    void findPorts();
    void recallProbes();
  }, []);
  const list = listed.value;
  // A board that is gone may be at any of them, also where nothing tells of itself.
  const isWanted = (path: string): boolean =>
    lost.length > 0 || inUse.includes(path) || listened.value.some((each) => each.path === path);
  const { boards, own } = partPorts(list ?? [], isWanted);
  const row = (port: PortListing): JSX.Element => (
    <ListedPort key={port.path} port={port} isInUse={inUse.includes(port.path)} lost={lost} />
  );
  const typed = listened.value.filter((each) => !(list ?? []).some((port) => port.path === each.path));
  return (
    <div class="port-finder" aria-busy={list === null}>
      {list === null && <p>{say('probes.looking')}</p>}
      {list !== null && boards.length + typed.length === 0 && <p>{say('probes.no_board')}</p>}
      <ul>
        {boards.map(row)}
        {typed.map((each) => (
          <li class="port" key={each.path}>
            <span>
              <b>{each.path}</b>{' '}
              {say('probes.typed', { find: each.baud === 'find' ? 'yes' : 'no', baud: String(each.baud ?? 9600) })}
            </span>
            <ListenButton path={each.path} />
            <News path={each.path} />
          </li>
        ))}
      </ul>
      <OwnPorts ports={own} row={row} />
      <p>
        <button type="button" onClick={() => void findPorts()}>
          {say('probes.look_again')}
        </button>
      </p>
      <TypedPort />
    </div>
  );
}
