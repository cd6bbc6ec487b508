// Asks whether a board that came up under another name is the one whose probes hang in these pans, and uses it then.
import type { JSX } from 'preact';
import { boardCalled } from '../../protocol/boards.ts';
import { live } from '../client/store.ts';
import { readAt } from './listening.ts';
import { hostWords } from '../language/host-words.ts';
import { say, sayDrawn } from '../language/say.ts';
import type { MovedPort } from '../client/types.ts';
import { usePolled } from '../onboarding/polled.ts';

function Question({ moved }: { moved: MovedPort }): JSX.Element {
  const { port, to, sentence } = moved;
  return (
    <div class="port" role="status">
      <span>{sayDrawn('probes.moved', { b: (words) => <b>{words}</b>, moved: hostWords(sentence) })}</span>
      <button type="button" class="main-button" onClick={() => readAt(port, to)}>
        {say('probes.yes_read_there', { port: boardCalled(live.value?.header ?? null, port) })}
      </button>
    </div>
  );
}

/** Nothing while there is nothing to ask. */
export function MovedBoards(): JSX.Element | null {
  const moved = usePolled<MovedPort[]>({ ports_moved: true }) ?? [];
  if (moved.length === 0) return null;
  return (
    <>
      {moved.map((one) => (
        <Question key={one.port} moved={one} />
      ))}
    </>
  );
}
