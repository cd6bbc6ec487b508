// Says that a board of the boil which was lost is connected again: its call ends without a word, and nobody would know.
import { effect } from '@preact/signals';
import { live, said, sayDone } from '../client/store.ts';
import type { Now } from '../client/types.ts';
import { say } from '../language/say.ts';
import { whereWords } from '../words/alarm-words.ts';

const isRunning = (now: Now): boolean => now.mode === 'live' && !now.ended;

/** Follows the boil that runs; returns the way to stop. */
export function tellBoardsBack(): () => void {
  let lost: { boil: string | null; ports: string[] } = { boil: null, ports: [] };
  let told: { sentence: string; ports: string[] } = { sentence: '', ports: [] };
  return effect(() => {
    const now = live.value;
    // While the host is gone nothing is known of its boards.
    if (now === null) return;
    const before = lost.boil === now.boil && isRunning(now) ? lost.ports : [];
    // A hub that is plugged in again brings several at once.
    const back = now.ports.filter(({ id, state }) => state === 'open' && before.includes(id));
    lost = { boil: now.boil, ports: now.ports.flatMap(({ id, state }) => (state === 'lost' ? [id] : [])) };
    if (back.length === 0) return;
    // One that came back before and is still said stays said, as long as it is there.
    const stillSaid = said.peek()?.sentence === told.sentence ? told.ports : [];
    const ports = [...new Set([...stillSaid, ...back.map(({ id }) => id)])].filter((id) => !lost.ports.includes(id));
    const words = ports.map((id) =>
      say('probes.board_back', { where: whereWords({ pan: null, port: id }, now.header) }),
    );
    told = { sentence: words.join(' '), ports };
    sayDone(told.sentence);
  });
}
