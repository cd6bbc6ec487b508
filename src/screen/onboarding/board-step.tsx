// First step of setting probes up: plug the board in and choose it, by its maker and serial number or by a typed path.
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { findPorts, listed } from '../probes/listening.ts';
import type { PortListing } from '../client/types.ts';
import { boardWords } from '../words/setup-words.ts';
import { chooseBoard } from './setup-draft.ts';

function BoardRow({ board }: { board: PortListing }): JSX.Element {
  return (
    <li class="port">
      <span>
        <b>{boardWords(board)}</b> <small>on {board.path}</small>
        {board.note !== null && <small class="setup-note">▲ {board.note}</small>}
      </span>
      <button type="button" aria-label={`Use the board on ${board.path}`} onClick={() => void chooseBoard(board)}>
        Use this board
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
  const typed = path.trim();
  return (
    <>
      <p>Plug the board in. It comes up in this list within a few seconds.</p>
      {list === null && <p>Looking …</p>}
      {list?.length === 0 && <p class="hint">▲ No board is listed yet.</p>}
      <ul>
        {(list ?? []).map((board) => (
          <BoardRow key={board.path} board={board} />
        ))}
      </ul>
      <form
        class="typed typed-port"
        onSubmit={(event) => {
          event.preventDefault();
          if (typed !== '') void chooseBoard({ path: typed, identity: null, known: null });
        }}
      >
        <label>
          <span>Not in the list? Type where the board is</span>
          <input
            class="wide"
            value={path}
            placeholder="/dev/ttyUSB0 or COM3"
            onInput={(event) => setPath(event.currentTarget.value)}
          />
        </label>
        <button type="submit" disabled={typed === ''}>
          Use it
        </button>
      </form>
    </>
  );
}
