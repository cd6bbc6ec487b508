// First step of setting probes up: plug the board in and choose it, by its maker and serial number or by a typed path.
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { findPorts, listed } from '../probes/listening.ts';
import { OwnPorts, partPorts } from '../probes/own-ports.tsx';
import type { PortListing } from '../client/types.ts';
import { boardWords } from '../words/setup-words.ts';
import { chooseBoard } from './setup-draft.ts';
import { say } from '../language/say.ts';
import { hostWords } from '../language/host-words.ts';

function BoardRow({ board }: { board: PortListing }): JSX.Element {
  return (
    <li class="port">
      <span>
        <b>{boardWords(board)}</b> <small>{say('onboarding.on', { path: board.path })}</small>
        {board.note !== null && <small class="setup-note">▲ {hostWords(board.note)}</small>}
      </span>
      <button
        type="button"
        aria-label={say('onboarding.use_board_on', { path: board.path })}
        onClick={() => void chooseBoard(board)}
      >
        {say('onboarding.use_board')}
      </button>
    </li>
  );
}

/** What appeared in the list since this step was opened stands first: that is what was just plugged in. */
export function BoardStep(): JSX.Element {
  const [path, setPath] = useState('');
  useEffect(() => {
    void findPorts();
    const timer = setInterval(() => void findPorts(), 2000);
    return () => clearInterval(timer);
  }, []);
  const list = listed.value;
  const { boards, own } = partPorts(list ?? []);
  const row = (board: PortListing): JSX.Element => <BoardRow key={board.path} board={board} />;
  const typed = path.trim();
  return (
    <>
      <p>{say('onboarding.plug_in')}</p>
      {list === null && <p>{say('onboarding.looking')}</p>}
      {list !== null && boards.length === 0 && <p class="hint">{say('onboarding.no_board')}</p>}
      <ul>{boards.map(row)}</ul>
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
            onInput={(event) => setPath(event.currentTarget.value)}
          />
        </label>
        <button type="submit" disabled={typed === ''}>
          {say('onboarding.use_it')}
        </button>
      </form>
    </>
  );
}
