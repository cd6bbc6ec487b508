// First step of setting probes up: plug the board in and choose it, by its maker and serial number or by a typed path.
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { boardNameAt, recallProbes } from '../probes/kept.ts';
import { findPorts, heardPorts, listed, listened } from '../probes/listening.ts';
import { OwnPorts, partPorts } from '../probes/own-ports.tsx';
import type { Now, PortFormat, PortListing } from '../client/types.ts';
import { portAt, portNews } from '../words/port-words.ts';
import { boardWords } from '../words/setup-words.ts';
import { change, chooseBoard, draft } from './setup-draft.ts';
import { say } from '../language/say.ts';
import { hostWords } from '../language/host-words.ts';

function UseButton({ board }: { board: Parameters<typeof chooseBoard>[0] }): JSX.Element {
  return (
    <button
      type="button"
      aria-label={say('onboarding.use_board_on', { path: board.path })}
      onClick={() => void chooseBoard(board)}
    >
      {say('onboarding.use_board')}
    </button>
  );
}

function BoardRow({ board }: { board: PortListing }): JSX.Element {
  return (
    <li class="port">
      <span>
        <b>{boardWords(board)}</b> <small>{say('onboarding.on', { path: board.path })}</small>
        {board.note !== null && <small class="setup-note">▲ {hostWords(board.note)}</small>}
      </span>
      <UseButton board={board} />
    </li>
  );
}

/** A board that is heard and not listed: somebody typed where it is, and need not again. */
function HeardRow({ now, path }: { now: Now; path: string }): JSX.Element {
  const before = listened.value.find((each) => each.path === path);
  const format = (before?.format ?? null) as PortFormat | null;
  const known = { baud: typeof before?.baud === 'number' ? before.baud : null, format };
  return (
    <li class="port">
      <span>
        <b>{boardNameAt(path)}</b> <small>{say('onboarding.on', { path })}</small>
        <small class="setup-note">{portNews(portAt(heardPorts(now), path), now.probes).sentence}</small>
      </span>
      <UseButton board={{ path, identity: null, known }} />
    </li>
  );
}

/** What appeared in the list since this step was opened stands first: that is what was just plugged in. */
export function BoardStep({ now }: { now: Now }): JSX.Element {
  const path = draft.value.typed;
  useEffect(() => {
    void findPorts();
    void recallProbes();
    const timer = setInterval(() => void findPorts(), 2000);
    return () => clearInterval(timer);
  }, []);
  const list = listed.value;
  const { boards, own } = partPorts(list ?? []);
  const heard = listened.value.filter((each) => (list ?? []).every((port) => port.path !== each.path));
  const row = (board: PortListing): JSX.Element => <BoardRow key={board.path} board={board} />;
  const typed = path.trim();
  return (
    <>
      <p>{say('onboarding.plug_in')}</p>
      {list === null && <p>{say('onboarding.looking')}</p>}
      {list !== null && boards.length + heard.length === 0 && <p class="hint">{say('onboarding.no_board')}</p>}
      <ul>
        {boards.map(row)}
        {heard.map((each) => (
          <HeardRow key={each.path} now={now} path={each.path} />
        ))}
      </ul>
      <OwnPorts ports={own} row={row} />
      <form
        class="typed typed-port"
        onSubmit={(event) => {
          event.preventDefault();
          if (typed !== '') void chooseBoard({ path: typed, identity: null, known: null });
        }}
      >
        <label>
          <span>{say('probes.not_in_list')}</span>
          <input
            class="wide"
            value={path}
            placeholder={say('probes.path_hint')}
            onInput={(event) => change({ typed: event.currentTarget.value })}
          />
        </label>
        <button type="submit" disabled={typed === ''}>
          {say('onboarding.use_it')}
        </button>
      </form>
    </>
  );
}
